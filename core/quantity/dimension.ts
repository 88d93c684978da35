import type { Dimension } from './types.ts';

type Exponents = Dimension['exponents'];

interface Held {
  readonly dimension: Dimension;
  readonly products: Map<Dimension, Dimension>;
}

const interned = new Map<string, Held>();
const held = new Map<Dimension, Held>();

/** The dimension with these integer exponents; equal exponents give the same object, so `===` compares. */
export function dimension(
  length: number,
  mass: number,
  time: number,
  current: number,
  temperature: number,
  turn: number,
): Dimension {
  return intern([length, mass, time, current, temperature, turn]);
}

/** The dimension of a product. */
export function times(a: Dimension, b: Dimension): Dimension {
  if (b === plain) return a;
  if (a === plain) return b;
  const products = held.get(a)?.products;
  const known = products?.get(b);
  if (known !== undefined) return known;
  const product = intern(combine(a.exponents, b.exponents, 1));
  products?.set(b, product);
  return product;
}

/** The dimension of a quotient. */
export function over(a: Dimension, b: Dimension): Dimension {
  if (b === plain) return a;
  if (a === b) return plain;
  return intern(combine(a.exponents, b.exponents, -1));
}

/** The dimension of an integer power. */
export function power(of: Dimension, exponent: number): Dimension {
  if (exponent === 1) return of;
  return intern(combine(plain.exponents, of.exponents, exponent));
}

/** The dimension of the n-th root; undefined when an exponent would not be an integer. */
export function root(of: Dimension, degree: number): Dimension | undefined {
  if (of === plain) return plain;
  if (!Number.isInteger(degree) || degree === 0) return undefined;
  for (const exponent of of.exponents) if (exponent % degree !== 0) return undefined;
  return intern(combine(plain.exponents, of.exponents, 1 / degree));
}

function combine(a: Exponents, b: Exponents, by: number): Exponents {
  return [
    a[0] + by * b[0],
    a[1] + by * b[1],
    a[2] + by * b[2],
    a[3] + by * b[3],
    a[4] + by * b[4],
    a[5] + by * b[5],
  ];
}

function intern(raw: Exponents, name?: string): Dimension {
  const key = raw.join();
  const known = interned.get(key);
  if (known !== undefined) return known.dimension;
  // `+ 0` turns -0 into 0, so that exponents compare as written.
  const exponents = raw.map((each) => each + 0) as unknown as Exponents;
  const made: Dimension = { exponents, name: name ?? spell(exponents) };
  const entry = { dimension: made, products: new Map() };
  interned.set(key, entry);
  held.set(made, entry);
  return made;
}

const bases = ['m', 'kg', 's', 'A', 'K', 'turn'];

function spell(exponents: readonly number[]): string {
  const parts: string[] = [];
  exponents.forEach((exponent, at) => {
    if (exponent !== 0) parts.push(exponent === 1 ? `${bases[at]}` : `${bases[at]}^${exponent}`);
  });
  return parts.join('·');
}

/** Numbers, percent and parts per million. */
export const plain = intern([0, 0, 0, 0, 0, 0], 'plain number');
export const length = intern([1, 0, 0, 0, 0, 0], 'length');
export const mass = intern([0, 1, 0, 0, 0, 0], 'mass');
export const time = intern([0, 0, 1, 0, 0, 0], 'time');
export const current = intern([0, 0, 0, 1, 0, 0], 'current');
export const temperature = intern([0, 0, 0, 0, 1, 0], 'temperature');
/** Angles are counted in turns, so that engine speed is no frequency. */
export const turn = intern([0, 0, 0, 0, 0, 1], 'angle');
export const area = intern([2, 0, 0, 0, 0, 0], 'area');
export const volume = intern([3, 0, 0, 0, 0, 0], 'volume');
export const speed = intern([1, 0, -1, 0, 0, 0], 'speed');
export const acceleration = intern([1, 0, -2, 0, 0, 0], 'acceleration');
export const frequency = intern([0, 0, -1, 0, 0, 0], 'frequency');
export const turnRate = intern([0, 0, -1, 0, 0, 1], 'rotational speed');
export const force = intern([1, 1, -2, 0, 0, 0], 'force');
export const pressure = intern([-1, 1, -2, 0, 0, 0], 'pressure');
/** Torque has the same dimension. */
export const energy = intern([2, 1, -2, 0, 0, 0], 'energy or torque');
/** Watts; called so because `power` is what raises a dimension. */
export const energyRate = intern([2, 1, -3, 0, 0, 0], 'power');
export const density = intern([-3, 1, 0, 0, 0, 0], 'density');
export const massFlow = intern([0, 1, -1, 0, 0, 0], 'mass flow');
export const volumeFlow = intern([3, 0, -1, 0, 0, 0], 'volume flow');
export const charge = intern([0, 0, 1, 1, 0, 0], 'charge');
export const voltage = intern([2, 1, -3, -1, 0, 0], 'voltage');
export const resistance = intern([2, 1, -3, -2, 0, 0], 'resistance');
export const conductance = intern([-2, -1, 3, 2, 0, 0], 'conductance');
export const capacitance = intern([-2, -1, 4, 2, 0, 0], 'capacitance');
export const inductance = intern([2, 1, -2, -2, 0, 0], 'inductance');

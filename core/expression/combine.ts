import { limits } from '../casefile/limits.ts';
import { add, divide, multiply, scale, subtract } from '../quantity/amount.ts';
import type { Amount, QuantityType, SourceId } from '../quantity/types.ts';
import { absentOf, cannotCompute, notMeasured } from './absent.ts';
import { aligned } from './series.ts';
import { isTooMany, isTooManySampled, tooManySources } from './tooManySources.ts';
import type { Absent, Members, One, Series, Value } from './value.ts';

export type Operator = '+' | '-' | '*' | '/';

/** Two values by an operator: one by one, member by member, sample by sample. */
export function combine(operator: Operator, a: Value, b: Value, type: QuantityType): Value {
  if (a.kind === 'one' && b.kind === 'one') {
    if (a.amount.spread.length + b.amount.spread.length > limits.sources) return tooManySources;
    return one(amounts(operator, a.amount, b.amount), type);
  }
  const absent = absentOf([a, b]);
  if (absent !== undefined) return absent;
  if (!isNumbers(a) || !isNumbers(b)) return cannotCompute('it is no number');
  if (a.kind === 'series' || b.kind === 'series') {
    if (a.kind === 'members' || b.kind === 'members') return cannotCompute('members and samples do not pair');
    return ofSeries(operator, a, b, type);
  }
  return isTooMany([a, b]) ? tooManySources : ofMembers(operator, a, b, type);
}

function isNumbers(value: Value): value is One | Members | Series {
  return value.kind === 'one' || value.kind === 'members' || value.kind === 'series';
}

function one(amount: Amount | Absent, type: QuantityType): One | Absent {
  return 'si' in amount ? { kind: 'one', type, amount } : amount;
}

function amounts(operator: Operator, a: Amount, b: Amount): Amount | Absent {
  switch (operator) {
    case '+':
      return finite(add(a, b));
    case '-':
      return finite(subtract(a, b));
    case '*':
      return finite(multiply(a, b));
    case '/':
      return b.si === 0 ? cannotCompute('it is divided by 0') : finite(divide(a, b));
  }
}

/** An amount that can be computed with further: neither it nor its uncertainty is beyond what squares of it can hold. */
export function finite(amount: Amount): Amount | Absent {
  const { si, spread } = amount;
  if (isWithin(si) && spread.every(({ by }) => isWithin(by))) return amount;
  return cannotCompute('the result is beyond any number');
}

/** Not for NaN. */
const isWithin = (si: number): boolean => Math.abs(si) < mostSi;

const mostSi = 1e150;

function ofMembers(operator: Operator, a: One | Members, b: One | Members, type: QuantityType): Value {
  const shape = a.kind === 'members' ? a : b;
  if (shape.kind !== 'members') return cannotCompute('it has no members');
  const members = new Map<string, Amount | Absent>();
  const names = new Set(a.kind === 'members' ? a.members.keys() : []);
  if (b.kind === 'members') for (const name of b.members.keys()) names.add(name);
  for (const name of names) {
    const left = a.kind === 'one' ? a.amount : memberOf(a, name);
    const right = b.kind === 'one' ? b.amount : memberOf(b, name);
    if (!('si' in left)) members.set(name, left);
    else members.set(name, 'si' in right ? amounts(operator, left, right) : right);
  }
  return { kind: 'members', by: shape.by, type, members };
}

/** A member's amount, or why it is not there. */
export function memberOf(value: Members, name: string): Amount | Absent {
  return value.members.get(name) ?? notMeasured(`there is no ${sayMember(value.by, name)}`);
}

export function sayMember(by: Members['by'], name: string): string {
  return by === 'cylinder' ? `cylinder ${name}` : by === 'label' ? `"${name}"` : `state ${name}`;
}

function ofSeries(operator: Operator, a: One | Series, b: One | Series, type: QuantityType): Series | Absent {
  const [left, right] = a.kind === 'series' && b.kind === 'series' ? aligned(a, b) : [a, b];
  const shape = left.kind === 'series' ? left : right.kind === 'series' ? right : undefined;
  const count = shape?.samples.length ?? 0;
  if (isTooManySampled([left, right], count)) return tooManySources;
  const x = reader(left);
  const y = reader(right);
  const samples = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const value = numbers(operator, x(i), y(i));
    samples[i] = isWithin(value) ? value : Number.NaN;
  }
  return {
    kind: 'series',
    type,
    capture: shape?.capture ?? '',
    time: shape?.time ?? new Float64Array(),
    samples,
    spread: seriesSpread(operator, left, right, count, x, y),
  };
}

type At = (index: number) => number;

function reader(value: One | Series): At {
  if (value.kind === 'one') return () => value.amount.si;
  return (index) => value.samples[index] ?? Number.NaN;
}

function numbers(operator: Operator, x: number, y: number): number {
  switch (operator) {
    case '+':
      return x + y;
    case '-':
      return x - y;
    case '*':
      return x * y;
    case '/':
      return x / y;
  }
}

/** The sensitivity to the left and to the right operand. */
function slope(operator: Operator, side: 'left' | 'right', x: number, y: number): number {
  switch (operator) {
    case '+':
      return 1;
    case '-':
      return side === 'left' ? 1 : -1;
    case '*':
      return side === 'left' ? y : x;
    case '/':
      return side === 'left' ? 1 / y : -x / (y * y);
  }
}

function seriesSpread(
  operator: Operator,
  left: One | Series,
  right: One | Series,
  count: number,
  x: At,
  y: At,
): Series['spread'] {
  const a = sources(left);
  const b = sources(right);
  if (a.size === 0 && b.size === 0) return [];
  const all = [...new Set([...a.keys(), ...b.keys()])].sort();
  const sums = operator === '+' || operator === '-';
  return all.map((source) => {
    const byLeft = a.get(source) ?? 0;
    const byRight = b.get(source) ?? 0;
    if (sums && typeof byLeft === 'number' && typeof byRight === 'number') {
      return { source, by: byLeft + slope(operator, 'right', 0, 0) * byRight };
    }
    const by = new Float64Array(count);
    for (let i = 0; i < count; i++) {
      const u = typeof byLeft === 'number' ? byLeft : (byLeft[i] ?? 0);
      const v = typeof byRight === 'number' ? byRight : (byRight[i] ?? 0);
      by[i] = slope(operator, 'left', x(i), y(i)) * u + slope(operator, 'right', x(i), y(i)) * v;
    }
    return { source, by };
  });
}

function sources(value: One | Series): ReadonlyMap<SourceId, number | Float64Array> {
  const spread = value.kind === 'one' ? value.amount.spread : value.spread;
  return new Map(spread.map(({ source, by }) => [source, by]));
}

/** Each number by a function of it and its slope: a sign, a power. */
export function mapAmounts(
  value: Value,
  type: QuantityType,
  amount: (of: Amount) => Amount | Absent,
  slopeAt: (si: number) => number,
): Value {
  switch (value.kind) {
    case 'one':
      return one(amount(value.amount), type);
    case 'members': {
      const members = new Map<string, Amount | Absent>();
      for (const [name, member] of value.members) members.set(name, 'si' in member ? amount(member) : member);
      return { ...value, type, members };
    }
    case 'series': {
      const samples = value.samples.map((sample) => {
        const got = amount({ si: sample, spread: [] });
        return 'si' in got ? got.si : Number.NaN;
      });
      const spread = value.spread.map(({ source, by }) => ({
        source,
        by: value.samples.map((sample, i) => slopeAt(sample) * (typeof by === 'number' ? by : (by[i] ?? 0))),
      }));
      return { ...value, type, samples, spread };
    }
    case 'absent':
      return value;
    default:
      return cannotCompute('it is no number');
  }
}

export function negative(value: Value, type: QuantityType): Value {
  return mapAmounts(
    value,
    type,
    (of) => scale(of, -1),
    () => -1,
  );
}

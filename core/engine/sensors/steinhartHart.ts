import type { PlainCurve } from '../../expression/functionRow.ts';
import { type Answer, noAnswer } from '../answer.ts';
import { sayNumber } from '../sayValue.ts';
import { turningPoint } from './turningPoint.ts';

/** 1/T = a + b·ln R + c·(ln R)³, T in K and R in Ω. */
export interface Coefficients {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/**
 * The temperature, K, of a thermistor of this resistance, Ω: 1/T = a + b·ln R + c·(ln R)³
 * (Steinhart and Hart, Deep-Sea Research 15 (1968) 497, value from memory).
 */
export function steinhartHart(resistance: number, { a, b, c }: Coefficients): Answer {
  if (!(resistance > 0)) {
    return noAnswer(
      `A sensor of ${sayNumber(resistance)} Ω is a short, which has no temperature. Look for the short before the sensor.`,
    );
  }
  const ln = Math.log(resistance);
  const inverse = a + b * ln + c * ln ** 3;
  if (!(inverse > 0)) {
    return noAnswer('These coefficients give no temperature for this resistance. Check their powers of ten.');
  }
  return 1 / inverse;
}

/**
 * The coefficients that go through three points of a table (temperatures in K, resistances in Ω), or nearest
 * to more than three by least squares in 1/T. A sentence where the points do not make a curve.
 */
export function fitCoefficients({ x: temperatures, y: resistances }: PlainCurve): Coefficients | string {
  if (temperatures.length < 3) return 'The fit needs at least three points, cold, warm and hot.';
  if (!resistances.every((each) => each > 0) || !temperatures.every((each) => each > 0)) {
    return 'Every resistance in the table must be above 0, and every temperature above absolute zero.';
  }
  const logs = resistances.map(Math.log);
  const middle = logs.reduce((sum, each) => sum + each, 0) / logs.length;
  // Counted from the middle, so that the columns of the equations are not nearly alike.
  const columns = logs.map((ln) => [1, ln - middle, ln ** 3 - middle ** 3] as const);
  const solved = leastSquares(
    columns,
    temperatures.map((each) => 1 / each),
  );
  if (solved === undefined)
    return 'The points do not differ enough in resistance to fit a curve through them.';
  const turn = turningPoint(resistances);
  if (turn !== undefined) return turn;
  const [at, b, c] = solved;
  return { a: at - b * middle - c * middle ** 3, b, c };
}

type Three = readonly [number, number, number];

/** The three numbers that come nearest to rows · numbers = right, by orthogonal columns (Gram and Schmidt, twice for exactness). */
function leastSquares(rows: readonly Three[], right: readonly number[]): Three | undefined {
  const dot = (u: readonly number[], v: readonly number[]): number =>
    u.reduce((sum, each, at) => sum + each * (v[at] ?? Number.NaN), 0);
  const columns = [0, 1, 2].map((at) => rows.map((row) => row[at] ?? Number.NaN));
  const basis: number[][] = [];
  const upper: number[][] = [];
  for (const column of columns) {
    let rest = [...column];
    const shares = [0, 0, 0];
    for (let turn = 0; turn < 2; turn++) {
      for (const [at, base] of basis.entries()) {
        const share = dot(base, rest);
        shares[at] = (shares[at] ?? 0) + share;
        rest = rest.map((each, row) => each - share * (base[row] ?? Number.NaN));
      }
    }
    const size = Math.sqrt(dot(rest, rest));
    if (!(size > 1e-9 * Math.sqrt(dot(column, column)))) return undefined;
    shares[basis.length] = size;
    upper.push(shares);
    basis.push(rest.map((each) => each / size));
  }
  const projected = basis.map((base) => dot(base, right));
  const solved = [0, 0, 0];
  for (let at = 2; at >= 0; at--) {
    let value = projected[at] ?? Number.NaN;
    for (let later = at + 1; later < 3; later++)
      value -= (upper[later]?.[at] ?? Number.NaN) * (solved[later] ?? Number.NaN);
    solved[at] = value / (upper[at]?.[at] ?? Number.NaN);
  }
  const [first = Number.NaN, second = Number.NaN, third = Number.NaN] = solved;
  return [first, second, third];
}

/** The temperature, K, by the curve fitted to a table's points; nothing is computed outside the table. */
export function thermistorFit(resistance: number, table: PlainCurve): Answer {
  const fitted = fittedOnce(table);
  if (typeof fitted === 'string') return noAnswer(fitted);
  const low = Math.min(...table.y);
  const high = Math.max(...table.y);
  if (resistance > 0 && !(resistance >= low && resistance <= high)) {
    return noAnswer(
      `The resistance of ${sayNumber(resistance)} Ω is outside the points, which run from ${sayNumber(low)} Ω to ${sayNumber(high)} Ω; beyond its ends a fit is a guess.`,
    );
  }
  return steinhartHart(resistance, fitted);
}

/** A log asks for the same table at every sample. */
const fits = new WeakMap<PlainCurve, Coefficients | string>();

function fittedOnce(table: PlainCurve): Coefficients | string {
  let fitted = fits.get(table);
  if (fitted === undefined) {
    fitted = fitCoefficients(table);
    fits.set(table, fitted);
  }
  return fitted;
}

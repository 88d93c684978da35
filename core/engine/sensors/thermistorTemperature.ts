import type { PlainCurve } from '../../expression/functionRow.ts';
import { type Answer, noAnswer } from '../answer.ts';
import { sayNumber, sayTemperature } from '../sayValue.ts';
import { monotoneCurve } from './monotoneCurve.ts';
import { turningPoint } from './turningPoint.ts';

/**
 * The temperature, K, at which a thermistor has this resistance, Ω, from its table of temperatures (K, ascending) and resistances.
 *
 * Between the points 1/T is a smooth function of ln R, nearly a straight line (Steinhart and Hart, Deep-Sea Research 15 (1968) 497),
 * so a monotone cubic through the points in these coordinates is followed: it meets every point, never turns back,
 * and a misprinted row spoils its neighbourhood only. Two points make the straight line of a single B (IEC 60539-1).
 * Resistance may fall with temperature (NTC) or rise, but one way only. Nothing is computed outside the table.
 */
export function thermistorTemperature(resistance: number, table: PlainCurve): Answer {
  if (!(resistance > 0)) {
    return noAnswer(
      `A sensor of ${sayNumber(resistance)} Ω is a short, which has no temperature. Look for the short before the sensor.`,
    );
  }
  const curve = curveOf(table);
  if (typeof curve === 'string') return noAnswer(curve);
  const inverse = curve.at(Math.log(resistance));
  if (inverse === undefined) return noAnswer(outside(resistance, table));
  return 1 / inverse;
}

/**
 * The resistance, Ω, that a thermistor has at a temperature, K, by the same curve, found by halving:
 * what an ohmmeter should show. Nothing is computed outside the table.
 */
export function thermistorResistance(temperature: number, table: PlainCurve): Answer {
  const curve = curveOf(table);
  if (typeof curve === 'string') return noAnswer(curve);
  const first = table.x[0] ?? Number.NaN;
  const last = table.x[table.x.length - 1] ?? Number.NaN;
  if (!(temperature >= first && temperature <= last)) {
    return noAnswer(
      `A temperature of ${sayTemperature(temperature)} is outside the table, which runs from ${sayTemperature(first)} to ${sayTemperature(last)}; beyond its ends nothing is known.`,
    );
  }
  let cold = Math.log(table.y[0] ?? Number.NaN);
  let hot = Math.log(table.y[table.y.length - 1] ?? Number.NaN);
  // Sixty halvings take the widest table below a double's last digit.
  for (let turn = 0; turn < 60; turn++) {
    const middle = (cold + hot) / 2;
    if ((curve.at(middle) ?? Number.NaN) > 1 / temperature) cold = middle;
    else hot = middle;
  }
  return Math.exp((cold + hot) / 2);
}

type TableCurve = ReturnType<typeof monotoneCurve>;

/** Prepared once for each table: a log asks for the same one at every sample. */
const prepared = new WeakMap<PlainCurve, TableCurve | string>();

function curveOf(table: PlainCurve): TableCurve | string {
  let curve = prepared.get(table);
  if (curve === undefined) {
    curve = prepare(table);
    prepared.set(table, curve);
  }
  return curve;
}

function prepare({ x: temperatures, y: resistances }: PlainCurve): TableCurve | string {
  if (temperatures.length < 2) return 'The table needs at least two points.';
  if (!resistances.every((each) => each > 0) || !temperatures.every((each) => each > 0)) {
    return 'Every resistance in the table must be above 0, and every temperature above absolute zero.';
  }
  const turn = turningPoint(resistances);
  if (turn !== undefined) return turn;
  const points = temperatures.map((each, at) => [Math.log(resistances[at] ?? 1), 1 / each] as const);
  points.sort(([a], [b]) => a - b);
  return monotoneCurve(
    points.map(([ln]) => ln),
    points.map(([, inverse]) => inverse),
  );
}

function outside(resistance: number, { y }: PlainCurve): string {
  const low = Math.min(...y);
  const high = Math.max(...y);
  return `The resistance of ${sayNumber(resistance)} Ω is outside the table, which runs from ${sayNumber(low)} Ω to ${sayNumber(high)} Ω; beyond its ends nothing is known.`;
}

import type { Absent, Curve, Members, One, Series, Value } from '../../expression/value.ts';
import { linear } from '../../quantity/amount.ts';
import { fromSi } from '../../quantity/convert.ts';
import type { Amount, QuantityType } from '../../quantity/types.ts';
import { sayNumber } from '../sayValue.ts';
import { curveAt } from './curve.ts';

/**
 * A reading turned into another quantity by a transfer curve, straight between its points:
 * one value, member by member, or sample by sample. The result has the curve's second quantity;
 * the reading's uncertainty is multiplied by the curve's slope. The curve itself counts as exact.
 * Outside the curve's ends, or when the reading is not what the curve is entered with, it cannot be computed.
 */
export function interpolate(curve: Value | undefined, x: Value | undefined): Value {
  if (curve === undefined || x === undefined) return absent('A curve and a value are needed.');
  if (curve.kind === 'absent') return curve;
  if (x.kind === 'absent') return x;
  if (curve.kind !== 'curve')
    return absent('The first value is no curve: a curve is a list of pairs in a reference.');
  if (x.kind !== 'one' && x.kind !== 'members' && x.kind !== 'series') {
    return absent('A curve is entered with a number.');
  }
  const misfit = unfit(curve, x.type);
  if (misfit !== undefined) return absent(misfit);
  switch (x.kind) {
    case 'one':
      return ofOne(curve, x);
    case 'members':
      return ofMembers(curve, x);
    case 'series':
      return ofSeries(curve, x);
  }
}

function ofOne(curve: Curve, x: One): One | Absent {
  const amount = ofAmount(curve, x.amount, x.type);
  return 'si' in amount ? { kind: 'one', type: curve.yType, amount } : amount;
}

function ofMembers(curve: Curve, x: Members): Members {
  const members = new Map<string, Amount | Absent>();
  for (const [name, amount] of x.members) {
    members.set(name, 'si' in amount ? ofAmount(curve, amount, x.type) : amount);
  }
  return { kind: 'members', by: x.by, type: curve.yType, members };
}

function ofSeries(curve: Curve, x: Series): Series | Absent {
  const count = x.samples.length;
  const samples = new Float64Array(count);
  const slopes = new Float64Array(count);
  for (let at = 0; at < count; at++) {
    const sample = x.samples[at] ?? Number.NaN;
    if (Number.isNaN(sample)) {
      samples[at] = Number.NaN;
      continue;
    }
    const place = curveAt(curve, sample);
    if (place === undefined) {
      return absent(
        `At ${sayNumber(x.time[at] ?? 0)} s, ${outside(curve, sample, x.type)} Keep the samples inside with \`where\`.`,
      );
    }
    samples[at] = place.y;
    slopes[at] = place.slope;
  }
  const spread = x.spread.map(({ source, by }) => ({
    source,
    by: slopes.map((slope, at) => slope * (typeof by === 'number' ? by : (by[at] ?? 0))),
  }));
  return { kind: 'series', type: curve.yType, capture: x.capture, time: x.time, samples, spread };
}

function ofAmount(curve: Curve, amount: Amount, type: QuantityType): Amount | Absent {
  const place = curveAt(curve, amount.si);
  return place === undefined
    ? absent(outside(curve, amount.si, type))
    : linear(place.y, [[place.slope, amount]]);
}

/** Names the ends in the unit that the curve was written in. */
function outside(curve: Curve, x: number, type: QuantityType): string {
  const first = curve.x[0];
  const last = curve.x[curve.x.length - 1];
  if (first === undefined || last === undefined || curve.x.length < 2)
    return 'The curve needs at least two points.';
  return `${say(x, { ...type, unit: curve.xType.unit })} is outside the curve, which runs from ${say(first, curve.xType)} to ${say(last, curve.xType)}; beyond its ends nothing is known.`;
}

function say(si: number, { unit, kind }: QuantityType): string {
  const value = sayNumber(fromSi(si, unit, kind));
  return unit.symbol === '1' ? value : `${value} ${unit.symbol}`;
}

function unfit({ xType }: Curve, type: QuantityType): string | undefined {
  if (type.dimension !== xType.dimension) {
    return `The curve is entered with ${xType.dimension.name} (${xType.unit.symbol}), and the value is ${type.dimension.name} (${type.unit.symbol}).`;
  }
  if (type.kind !== xType.kind && type.kind !== 'open' && xType.kind !== 'open') {
    return `The curve is entered with ${xType.kind} values, and this one is ${type.kind}.`;
  }
  return undefined;
}

function absent(why: string): Absent {
  return { kind: 'absent', status: 'cannot compute', why };
}

import { diagnose, type Fix } from '../diagnostics/diagnostic.ts';
import { fromSi, toSi } from '../quantity/convert.ts';
import { formatNumber, formatRange, otherUnit } from '../quantity/format.ts';
import type { Unit } from '../quantity/types.ts';
import { unitOf } from '../quantity/unit.ts';
import type { Interval } from '../signals/ranges.ts';
import { stillTurns } from './engineStands.ts';
import { failureOf } from './failedValue.ts';
import { type Measured, writtenAs } from './measured.ts';
import { rewritten } from './rewritten.ts';
import type { ReadingRule } from './rule.ts';

/**
 * The number is right and the unit is not: impossible as it is written, possible and better still usual in another unit.
 * What is impossible in every unit is `impossible-value`'s, the end of a sensor's scale `failed-value`'s.
 */
export const unitSlip: ReadingRule = {
  code: 'unit-slip',
  odd: 'impossible',
  checkReading: (one, { read, measured }) => {
    const { possible } = one.limits;
    if (possible === undefined || failureOf(one, measured) !== undefined) return undefined;
    const offers = slipsOf(one, possible, measured);
    if (offers.length === 0) return undefined;
    const number = formatNumber(fromSi(one.si, one.type.unit, one.type.kind));
    const facts = {
      name: one.name,
      written: writtenAs(one),
      limit: formatRange(possible.low, possible.high, one.type),
      offers: offers.map((unit) => `${number} ${unit.symbol}`),
    };
    const fixes: Fix[] = offers.flatMap((unit) => rewritten(read, one.reading, one.type.unit, unit));
    return diagnose('unit-slip', one.reading.valueSpan, facts, fixes);
  },
};

/**
 * The units in which the same number would be possible, at most two of the likeliest:
 * those that the signal is mostly read in come first, before them a dial's unit in which alone the number would be usual in its state;
 * then the others in which it would be usual there, then in any state. Merely possible is only enough where nothing is known to be usual: 126 V is no 126 mV.
 */
export function slipsOf(one: Measured, limit: Interval, measured: readonly Measured[]): readonly Unit[] {
  // Bytes have no unit to slip.
  if (one.reading.bytes !== undefined) return [];
  // What is impossible at this state alone is right of another one, where a speed beside it says that the engine turned.
  if (limit !== one.limits.ranges.physical && isTurning(one, measured)) return [];
  const { unit, kind, dimension } = one.type;
  const value = fromSi(one.si, unit, kind);
  const state = one.reading.state?.name;
  if (isOfVehicleSupply(one, limit)) return [];
  const { usual } = one.limits.ranges;
  const own = unitOf(one.unit);
  const commonest = [own?.symbol, own === undefined ? undefined : otherUnit(own, kind)?.symbol];
  const rank = (candidate: Unit): number => {
    const si = toSi(value, candidate, kind);
    if (si < limit.low || si > limit.high) return 0;
    const inState = usual.filter((each) => si >= each.range.low && si <= each.range.high);
    const isUsual = inState.some((each) => each.state === state);
    if (commonest.includes(candidate.symbol)) return isUsual ? 5 : 3;
    if (isUsual) return gaugeUnits.has(candidate.symbol) ? 4 : 2;
    return inState.length > 0 || usual.length === 0 ? 1 : 0;
  };
  const ranked = tradeUnits
    .map((symbol) => unitOf(symbol))
    .filter((candidate) => candidate !== undefined)
    .filter((candidate) => candidate.dimension === dimension && candidate.symbol !== unit.symbol)
    .filter(({ symbol }) => !plainShares.has(symbol) || symbol === one.unit)
    .map((candidate) => ({ candidate, rank: rank(candidate) }))
    .filter((each) => each.rank > 0);
  const best = Math.max(...ranked.map((each) => each.rank));
  return ranked
    .filter((each) => each.rank === best)
    .slice(0, 2)
    .map((each) => each.candidate);
}

/**
 * Volts of a sensor's signal that are more than its own supply gives, and no more than the vehicle's: a wire or a meter that has
 * battery voltage, and no millivolts.
 */
export function isOfVehicleSupply({ si, type, limits }: Measured, limit: Interval): boolean {
  if (limits.unit !== 'V' || type.unit.symbol !== 'V') return false;
  return limit.high >= sensorSupply && limit.high <= mostOfSensor && si > limit.high && si <= vehicleSupply;
}

/** V: what sensors hang on, the highest end of what their signals can be, and a 24 V vehicle that charges (common practice). */
const sensorSupply = 5;
const mostOfSensor = 8;
const vehicleSupply = 32;

function isTurning({ reading: { state, column } }: Measured, measured: readonly Measured[]): boolean {
  if (state?.known?.engine !== 'off') return false;
  return measured.some(
    (each) => each.name === 'rpm' && each.reading.column === column && each.si > stillTurns,
  );
}

/**
 * The unit of the other system, when the same number would be usual in it.
 * What is usual from nothing on holds any number once its unit is small enough: that tells no slip from a fault.
 */
export function likelierUnit(one: Measured, usual: Interval): Unit | undefined {
  if (one.reading.bytes !== undefined || usual.low <= 0) return undefined;
  const { unit, kind } = one.type;
  const other = otherUnit(unit, kind);
  if (other === undefined) return undefined;
  const si = toSi(fromSi(one.si, unit, kind), other, kind);
  return si >= usual.low && si <= usual.high ? other : undefined;
}

/** Nobody writes a percentage as parts in a million by mistake. */
const plainShares: ReadonlySet<string> = new Set(['%', 'ppm']);

/** What most dials show beside: 14.7 is a barometer in psi. */
const gaugeUnits: ReadonlySet<string> = new Set(['psi', 'bar']);

/** Units that instruments of the trade show, the commoner first. */
const tradeUnits = [
  ...['kPa', 'inHg', 'psi', 'bar', 'mbar', 'mmHg', 'inH2O', 'MPa'],
  ...['°C', '°F'],
  ...['g/s', 'lb/min', 'kg/h'],
  ...['V', 'mV', 'A', 'mA', 'Ω', 'kΩ', 'MΩ'],
  ...['s', 'ms', 'µs', 'min', 'h'],
  ...['Hz', 'kHz'],
  ...['km/h', 'mph', 'km', 'mi'],
  ...['L', 'cc', '%', 'ppm'],
];

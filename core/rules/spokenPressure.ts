import { fromSi } from '../quantity/convert.ts';
import { formatNumber } from '../quantity/format.ts';
import type { Measured } from './measured.ts';
import type { Known } from './pressure/site.ts';

/** An absolute pressure in the unit that a reading is written in, to three digits: "29.5 inHg". */
export function spokenPressure(si: number, { type }: Pick<Measured, 'type'>): string {
  return `${formatNumber(Number(fromSi(si, type.unit, 'absolute').toPrecision(3)))} ${type.unit.symbol}`;
}

/** A barometer as a pressure like that: "at most 31.3 inHg" where it is only known how high one can be. */
export function spokenBarometer({ si, bound }: Known, like: Pick<Measured, 'type'>): string {
  const spoken = spokenPressure(si, like);
  return bound === undefined ? spoken : `${bound} ${spoken}`;
}

/** A difference of pressures in the same unit, to two digits. */
export function spokenDifference(si: number, { type }: Pick<Measured, 'type'>): string {
  return `${formatNumber(Number(fromSi(si, type.unit, 'difference').toPrecision(2)))} ${type.unit.symbol}`;
}

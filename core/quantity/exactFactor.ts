import type { UnitRow } from './unitTable.ts';

/**
 * The factor of a joined unit, rounded once: kgf/cm² is 98066.5 Pa and not 98066.49999999999.
 * Computed in whole numbers from the rows' exact decimals and ratios.
 */
export function exactFactor(parts: Iterable<readonly [UnitRow, number]>): number {
  let above = 1n;
  let below = 1n;
  for (const [row, power] of parts) {
    const [top, bottom] = row.ratio ?? [String(row.factor), '1'];
    const [a, b] = fraction(top, bottom);
    const times = BigInt(Math.abs(power));
    above *= (power > 0 ? a : b) ** times;
    below *= (power > 0 ? b : a) ** times;
  }
  // 40 digits are more than twice what a double holds.
  const shift = Math.max(0, 40 - String(above).length + String(below).length);
  return Number(`${(above * 10n ** BigInt(shift)) / below}e-${shift}`);
}

/** Two decimals as a fraction of whole numbers. */
function fraction(top: string, bottom: string): readonly [bigint, bigint] {
  const [a, aPlaces] = decimal(top);
  const [b, bPlaces] = decimal(bottom);
  return [a * 10n ** BigInt(bPlaces), b * 10n ** BigInt(aPlaces)];
}

/** The digits as a whole number, and how many of them stand behind the point. */
function decimal(text: string): readonly [bigint, number] {
  const [digits = '', exponent = '0'] = text.split('e');
  const [whole = '', behind = ''] = digits.split('.');
  const places = behind.length - Number(exponent);
  const value = BigInt(whole + behind);
  return places >= 0 ? [value, places] : [value * 10n ** BigInt(-places), 0];
}

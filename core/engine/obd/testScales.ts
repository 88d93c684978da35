/** How the numbers of a test of service 06 are scaled. */
export interface TestScale {
  readonly step: number;
  readonly plus: number;
  readonly unit: string;
  /** What a pressure is counted from is not the scale's to say. */
  readonly kind: 'none' | 'point' | 'open';
  /** A count of things: its step is no uncertainty. */
  readonly counts: boolean;
}

/** From 80 on a scale's raw numbers are two's complement. */
export const isSigned = (id: number): boolean => id >= 0x80;

/**
 * The scale of a number between 01 and FE; from 81 on two's complement. Undefined for one that is not known here.
 * All are values from memory of SAE J1979, appendix E.
 */
export function testScale(id: number): TestScale | undefined {
  const row = scales[id] ?? (isSigned(id) ? signedAlike[id] : undefined);
  if (row === undefined) return undefined;
  const [step, unit, more] = row;
  return {
    step,
    unit,
    plus: more === '-40' ? -40 : 0,
    kind: unit === '°C' ? 'point' : unit === 'kPa' || unit === 'Pa' ? 'open' : 'none',
    counts: more === 'counts',
  };
}

/** The scales that are known here. */
export function testScaleIds(): readonly number[] {
  return [...Object.keys(scales), ...Object.keys(signedAlike)].map(Number);
}

type Row = readonly [step: number, unit: string, more?: 'counts' | '-40'];

const scales: Readonly<Record<number, Row>> = {
  1: [1, '1', 'counts'],
  2: [0.1, '1'],
  3: [0.01, '1'],
  4: [0.001, '1'],
  5: [1 / 32768, '1'],
  6: [10 / 32768, '1'],
  7: [0.25, 'rpm'],
  8: [0.01, 'km/h'],
  9: [1, 'km/h'],
  10: [0.122, 'mV'],
  11: [1, 'mV'],
  12: [10, 'mV'],
  13: [0.00390625, 'mA'],
  14: [1, 'mA'],
  15: [10, 'mA'],
  16: [1, 'ms'],
  17: [100, 'ms'],
  18: [1, 's'],
  19: [0.001, 'Ω'],
  20: [1, 'Ω'],
  21: [1000, 'Ω'],
  22: [0.1, '°C', '-40'],
  23: [0.01, 'kPa'],
  26: [1, 'kPa'],
  27: [10, 'kPa'],
  28: [0.01, '°'],
  29: [0.5, '°'],
  30: [2 / 65536, '1'],
  32: [1 / 256, '1'],
  33: [0.001, 'Hz'],
  34: [1, 'Hz'],
  35: [1000, 'Hz'],
  36: [1, '1', 'counts'],
  37: [1, 'km'],
  39: [0.01, 'g/s'],
  40: [1, 'g/s'],
  47: [0.01, '%'],
  48: [100 / 65536, '%'],
  52: [1, 'min'],
  53: [10, 'ms'],
};

/** The same scale with a sign. */
const signedAlike: Readonly<Record<number, Row>> = {
  129: [1, '1', 'counts'],
  130: [0.1, '1'],
  131: [0.01, '1'],
  132: [0.001, '1'],
  133: [1 / 32768, '1'],
  134: [10 / 32768, '1'],
  138: [0.122, 'mV'],
  139: [1, 'mV'],
  140: [10, 'mV'],
  141: [0.00390625, 'mA'],
  142: [1, 'mA'],
  144: [1, 'ms'],
  150: [0.1, '°C'],
  156: [0.01, '°'],
  157: [0.5, '°'],
  168: [1, 'g/s'],
  175: [0.01, '%'],
  176: [100 / 32768, '%'],
  252: [0.01, 'kPa'],
  253: [0.001, 'kPa'],
  254: [0.25, 'Pa'],
};

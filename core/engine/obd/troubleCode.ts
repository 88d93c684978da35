/*
 * Trouble codes as SAE J2012 / ISO 15031-6 structure them: two bits for the system, two for the first digit, three
 * hexadecimal digits.
 */

const systems = 'PCBU';
const digits = '0123456789ABCDEF';

/** Two bytes of 0: no code (SAE J2012). */
export const noCode = 'none';

/** `P0171` of its two bytes. */
export function codeOfBytes(high: number, low: number): string {
  return `${systems[high >> 6]}${(high >> 4) & 3}${digits[high & 15]}${digits[low >> 4]}${digits[low & 15]}`;
}

/** The two bytes of a code; undefined for a text that is none. Capitals do not count. */
export function bytesOfCode(code: string): readonly [number, number] | undefined {
  if (!isCode(code)) return undefined;
  const system = systems.indexOf(code.charAt(0).toUpperCase());
  const rest = Number.parseInt(code.slice(1), 16);
  return [(system << 6) | (rest >> 8), rest & 255];
}

/** A letter of P, C, B, U; a digit of 0 to 3; three hexadecimal digits. */
export function isCode(text: string): boolean {
  return /^[PCBU][0-3][0-9A-F]{3}$/i.test(text);
}

/** What a code's own letters and digits say. */
export interface CodeStructure {
  readonly code: string;
  readonly system: string;
  /** Who defined it. */
  readonly definedBy: 'the standard' | 'the maker' | 'the standard, reserved';
  /** What the group of the code is about; undefined where the maker numbers as he likes. */
  readonly area: string | undefined;
}

/** The code without the failure type that newer controllers add (`U0100-87`); undefined for a text that is no code. */
export function plainCode(text: string): string | undefined {
  const code = text.toUpperCase().replace(/[-:][0-9A-F]{2}$/, '');
  return isCode(code) ? code : undefined;
}

/** Explains a code's structure; undefined for a text that is no code. The areas are from memory of SAE J2012. */
export function structureOf(text: string): CodeStructure | undefined {
  const code = plainCode(text);
  if (code === undefined) return undefined;
  const definedBy = definer(code);
  return {
    code,
    system: systemWords[code.charAt(0)] ?? '',
    definedBy,
    area: definedBy === 'the standard' ? areaOf(code) : undefined,
  };
}

const systemWords: Readonly<Record<string, string>> = {
  P: 'engine and transmission (powertrain)',
  C: 'chassis: brakes, steering, suspension',
  B: 'body: comfort, restraint, lighting',
  U: 'network and the modules that share it',
};

/** P0 and P2, P34 and above, and the 0 of the others are the standard's; 3 of the others is reserved; the rest is the maker's. */
function definer(code: string): CodeStructure['definedBy'] {
  const [letter, first, second = ''] = code;
  if (first === '0') return 'the standard';
  if (letter === 'P') {
    if (first === '2') return 'the standard';
    return first === '3' && second >= '4' ? 'the standard' : 'the maker';
  }
  if (first === '3') return letter === 'U' ? 'the standard' : 'the standard, reserved';
  return 'the maker';
}

const areas: readonly (readonly [pattern: RegExp, area: string])[] = [
  [/^P00/, 'fuel and air metering, and emission controls beside them'],
  [/^P0[12]/, 'fuel and air metering'],
  [/^P03/, 'ignition and misfire'],
  [/^P04/, 'emission controls beside fuel: recirculation, secondary air, catalyst, tank vapour'],
  [/^P05/, 'vehicle speed, idle control and further inputs'],
  [/^P06/, 'the control module itself and its outputs'],
  [/^P0[7-9]/, 'transmission'],
  [/^P0[A-C]/, 'hybrid and electric drive'],
  [/^P2[0-2]/, 'fuel and air metering, and emission controls beside them'],
  [/^P23/, 'ignition and misfire'],
  [/^P24/, 'emission controls beside fuel'],
  [/^P25/, 'further inputs'],
  [/^P26/, 'the control module itself and its outputs'],
  [/^P27/, 'transmission'],
  [/^P2A/, 'fuel and air metering, and emission controls beside them'],
  [/^P34/, 'cylinders that are switched off'],
  [/^U00/, 'the network’s wires and signals'],
  [/^U0[12]/, 'a module that no longer answers'],
  [/^U03/, 'software of modules that do not fit each other'],
  [/^U0[45]/, 'data from another module that cannot be right'],
];

function areaOf(code: string): string | undefined {
  return areas.find(([pattern]) => pattern.test(code))?.[1];
}

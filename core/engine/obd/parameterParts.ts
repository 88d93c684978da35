import type { Kind } from '../../quantity/types.ts';
import type { NumberPart, WordPart } from './parameter.ts';

/*
 * The scalings that parameters share, so that a row of the table says in one word what its bytes mean.
 */

type More = Partial<
  Pick<
    NumberPart,
    'at' | 'ifBit' | 'member' | 'signed' | 'most' | 'counts' | 'none' | 'mask' | 'scaledBy' | 'plus'
  >
>;

/** A number of `size` bytes: raw × times / over + plus. */
export function number(
  meaning: string,
  signal: string | undefined,
  size: number,
  scale: readonly [times: number, over: number, plus?: number],
  unit: string,
  kind: Kind,
  more: More = {},
): NumberPart {
  const [times, over, plus = 0] = scale;
  return {
    holds: 'number',
    meaning,
    signal,
    at: 0,
    size,
    times,
    over,
    plus,
    unit,
    kind,
    signed: false,
    ...more,
  };
}

/** One byte for 0 to 100 %. */
export function percent(meaning: string, signal: string | undefined, more?: More): NumberPart {
  return number(meaning, signal, 1, [100, 255], '%', 'none', more);
}

/** One byte for −100 to 99.2 %, zero at 128. */
export function signedPercent(meaning: string, signal: string | undefined, more?: More): NumberPart {
  return number(meaning, signal, 1, [100, 128, -100], '%', 'none', more);
}

/** One byte for −40 to 215 °C. */
export function celsius(meaning: string, signal: string | undefined, more?: More): NumberPart {
  return number(meaning, signal, 1, [1, 1, -40], '°C', 'point', more);
}

/** Two bytes for −40 to 6513.5 °C. */
export function exhaustCelsius(meaning: string, signal: string | undefined, more?: More): NumberPart {
  return number(meaning, signal, 2, [1, 10, -40], '°C', 'point', more);
}

/** One byte in kPa. */
export function kilopascal(meaning: string, signal: string | undefined, more?: More): NumberPart {
  return number(meaning, signal, 1, [1, 1], 'kPa', 'absolute', more);
}

/** Two bytes as they are. */
export function plainly(meaning: string, signal: string | undefined, unit: string, more?: More): NumberPart {
  return number(meaning, signal, 2, [1, 1], unit, 'none', more);
}

/** Two bytes for a lambda of 0 to just under 2. */
export function lambda(meaning: string, signal: string | undefined, more?: More): NumberPart {
  return number(meaning, signal, 2, [2, 65536], '1', 'none', more);
}

/** One byte that is one of a few numbers. */
export function word(
  meaning: string,
  signal: string | undefined,
  words: readonly (readonly [number, string])[],
  more: Partial<Pick<WordPart, 'at' | 'none' | 'mask'>> = {},
): WordPart {
  return { holds: 'word', meaning, signal, at: 0, size: 1, words: new Map(words), ...more };
}

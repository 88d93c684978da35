/*
 * The check digit of a vehicle identification number: 49 CFR 565.15(c). Each character has a value and each position
 * a weight; the sum's remainder by 11 stands in position 9, X for 10.
 */

/** I, O and Q are not used: they look like 1 and 0. */
const values: Readonly<Record<string, number>> = {
  ...{ A: 1, B: 2, C: 3, D: 4, E: 5, F: 6, G: 7, H: 8 },
  ...{ J: 1, K: 2, L: 3, M: 4, N: 5, P: 7, R: 9 },
  ...{ S: 2, T: 3, U: 4, V: 5, W: 6, X: 7, Y: 8, Z: 9 },
};

const weights = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2];

export type VinProblem =
  | { readonly kind: 'length'; readonly length: number }
  /** A character that no number has; `at` counts from 0. */
  | { readonly kind: 'character'; readonly character: string; readonly at: number }
  | { readonly kind: 'check digit'; readonly is: string; readonly due: string };

/**
 * What is wrong with a number of 17 characters; undefined when nothing is.
 * The check digit is the law in North America only: elsewhere position 9 may hold anything.
 * Two characters of one value (A, J and 1) can be exchanged without being noticed.
 */
export function vinProblem(vin: string): VinProblem | undefined {
  if (vin.length !== 17) return { kind: 'length', length: vin.length };
  for (let at = 0; at < 17; at++) {
    const character = vin.charAt(at);
    if (characterValue(character) === undefined) return { kind: 'character', character, at };
  }
  const due = checkDigit(vin);
  const is = vin.charAt(8);
  return is === due ? undefined : { kind: 'check digit', is, due };
}

/** The digit that position 9 should hold, from the other 16. */
export function checkDigit(vin: string): string {
  let sum = 0;
  for (let at = 0; at < 17; at++) sum += (characterValue(vin.charAt(at)) ?? 0) * (weights[at] ?? 0);
  const rest = sum % 11;
  return rest === 10 ? 'X' : String(rest);
}

function characterValue(character: string): number | undefined {
  if (/^[0-9]$/.test(character)) return Number(character);
  return Object.hasOwn(values, character) ? values[character] : undefined;
}

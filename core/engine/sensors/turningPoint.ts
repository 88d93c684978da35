import { sayNumber } from '../sayValue.ts';

/**
 * Why a table of resistances (Ω, by rising temperature) is no thermistor's: a sentence with the row where it turns back.
 * It should run the way that its ends say. Undefined where it never turns.
 */
export function turningPoint(resistances: readonly number[]): string | undefined {
  const falls = (resistances.at(-1) ?? 0) < (resistances[0] ?? 0);
  const turn = resistances.find((each, at) => {
    const before = resistances[at - 1];
    return before !== undefined && (falls ? each >= before : each <= before);
  });
  return turn === undefined
    ? undefined
    : `The table turns back at ${sayNumber(turn)} Ω, so that a resistance has more than one temperature. Check that row and the one before it.`;
}

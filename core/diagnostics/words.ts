import type { Code, Diagnostic, Facts } from './diagnostic.ts';
import type { Row } from './row.ts';
import { catalogue } from './rows.ts';

/** What is wrong and what to do about it, in a sentence or two. */
export function message(diagnostic: Diagnostic): string {
  const row = catalogue[diagnostic.code] as Row<unknown>;
  return row.say(diagnostic.facts);
}

/** All that is said about a kind of finding. */
export function rowOf<C extends Code>(code: C): Row<Facts[C]> {
  return catalogue[code];
}

/** All codes, in the catalogue's order. */
export function allCodes(): Code[] {
  return Object.keys(catalogue) as Code[];
}

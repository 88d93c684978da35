import type { Code } from './diagnostic.ts';
import type { Row } from './row.ts';
import { catalogue } from './rows.ts';

/** What is said about a kind of finding as such; `words.ts` words the single one. */
export function rowOf(code: Code): Omit<Row<never>, 'say'> {
  return catalogue[code];
}

/** All codes, in the catalogue's order. */
export function allCodes(): Code[] {
  return Object.keys(catalogue) as Code[];
}

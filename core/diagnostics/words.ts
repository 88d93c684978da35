import type { Diagnostic } from './diagnostic.ts';
import type { Row } from './row.ts';
import { catalogue } from './rows.ts';

/** What is wrong and what to do about it, in a sentence or two. */
export function message(diagnostic: Diagnostic): string {
  const row: Pick<Row<unknown>, 'say'> = catalogue[diagnostic.code] as Row<unknown>;
  return row.say(diagnostic.facts);
}

import type { Diagnostic } from './diagnostic.ts';
import type { Row } from './row.ts';
import { catalogue } from './rows.ts';

/** The sentence of a finding that is none of the rules'. */
export function otherMessage(diagnostic: Diagnostic): string {
  const row: Pick<Row<unknown>, 'say'> = catalogue[diagnostic.code] as Row<unknown>;
  return row.say(diagnostic.facts);
}

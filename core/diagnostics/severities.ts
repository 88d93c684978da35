import type { Code } from './diagnostic.ts';
import type { Row, Severity } from './row.ts';
import { catalogue } from './rows.ts';

/** How much a finding matters, without its words: the command line's build puts a table in the place of this file. */
export function severityOf(code: Code): Severity {
  const row: Pick<Row<never>, 'severity'> = catalogue[code];
  return row.severity;
}

import { rulesRows } from './catalogue/rules.ts';
import type { Diagnostic } from './diagnostic.ts';
import type { Row } from './row.ts';

/** The sentence of a finding of the rules; undefined for any other. */
export function ruleMessage({ code, facts }: Diagnostic): string | undefined {
  const rows: { readonly [code: string]: Pick<Row<never>, 'say'> } = rulesRows;
  return Object.hasOwn(rows, code) ? rows[code]?.say(facts as never) : undefined;
}

import { diagnose } from '../../diagnostics/diagnostic.ts';
import type { Finding } from '../../study/types.ts';
import type { CaseRule, RuledCase } from '../rule.ts';

/**
 * The vehicle identification numbers that controllers gave, against the header's, or without one against the first that was
 * given. One of another form is told by `vin-form`, and is not compared.
 */
export const vinDiffers: CaseRule = {
  code: 'vin-differs',
  check: (ruled) => {
    if (ruled.given.length === 0) return [];
    const given = ruled.given.flatMap(({ cell, givenVins }) => givenVins.map((each) => ({ cell, ...each })));
    const written = writtenIn(ruled);
    const expected = written ?? given[0]?.vin;
    const told = new Set<string>();
    return given.flatMap(({ cell, id, vin, span }): Finding[] => {
      if (vin === expected || expected === undefined || told.has(vin)) return [];
      told.add(vin);
      const facts = { vin, sender: id, expected, isWritten: written !== undefined };
      return [{ cell, diagnostic: diagnose('vin-differs', span, facts) }];
    });
  },
};

function writtenIn({ read }: RuledCase): string | undefined {
  const header = read(0)?.cell;
  const vin = header?.kind === 'diag' ? header.vehicle?.vin?.text.trim().toUpperCase() : undefined;
  return vin?.length === 17 ? vin : undefined;
}

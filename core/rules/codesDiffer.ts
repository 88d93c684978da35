import type { HeaderCell } from '../casefile/cell.ts';
import { diagnose } from '../diagnostics/diagnostic.ts';
import { plainCode } from '../engine/obd/troubleCode.ts';
import type { Finding } from '../study/types.ts';
import type { CaseRule, RuledCase } from './rule.ts';

/** Codes that controllers gave in a recording, and those that the header lists: one that only the vehicle gives. */
export const codeNotListed: CaseRule = {
  code: 'obd-code-not-listed',
  check: (ruled) => {
    const header = headerOf(ruled);
    if (header === undefined) return [];
    const listed = new Set((header.codes ?? []).map(({ code }) => plainCode(code.text.trim())));
    const told = new Set<string>();
    return givenBefore(ruled).flatMap(({ cell, codes }) =>
      codes.flatMap(({ code, status, span }): Finding[] => {
        if (listed.has(code) || told.has(code)) return [];
        told.add(code);
        return [{ cell, diagnostic: diagnose('obd-code-not-listed', span, { code, status }) }];
      }),
    );
  },
};

/** One that only the header has, where the vehicle was asked for codes of its sort. */
export const codeNotStored: CaseRule = {
  code: 'obd-code-not-stored',
  check: (ruled) => {
    const answers = givenBefore(ruled);
    if (answers.length === 0) return [];
    const given = new Set(answers.flatMap(({ codes }) => codes.map(({ code }) => code)));
    const asked = (status: string): boolean =>
      answers.some((each) =>
        status === 'pending' ? each.pending : status === 'permanent' ? each.permanent : each.stored,
      );
    return (headerOf(ruled)?.codes ?? []).flatMap(({ code, status }): Finding[] => {
      const name = plainCode(code.text.trim());
      const sort = status?.text.trim() ?? 'stored';
      if (name === undefined || given.has(name) || sort === 'history' || !asked(sort)) return [];
      return [{ cell: 0, diagnostic: diagnose('obd-code-not-stored', code.span, { code: name }) }];
    });
  },
};

function headerOf({ read }: RuledCase): HeaderCell | undefined {
  const cell = read(0)?.cell;
  return cell?.kind === 'diag' ? cell : undefined;
}

/** What was recorded before the repair: after it codes are meant to be gone. */
function givenBefore({ given, read }: RuledCase) {
  return given.flatMap(({ cell, givenCodes }) => {
    const asked = read(cell)?.cell;
    const when = asked?.kind === 'readings' ? asked.when?.text.trim() : undefined;
    return givenCodes === undefined || when === 'after' || when === 'known good'
      ? []
      : [{ cell, ...givenCodes }];
  });
}

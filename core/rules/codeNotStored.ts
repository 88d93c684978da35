import { diagnose } from '../diagnostics/diagnostic.ts';
import { plainCode } from '../engine/obd/troubleCode.ts';
import type { Finding } from '../study/types.ts';
import { givenBefore, headerOf } from './codesCompared.ts';
import type { CaseRule } from './rule.ts';

/** A code that only the header has, where the vehicle was asked for codes of its sort. */
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

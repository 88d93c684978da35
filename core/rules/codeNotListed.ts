import { diagnose } from '../diagnostics/diagnostic.ts';
import { plainCode } from '../engine/obd/troubleCode.ts';
import type { Finding } from '../study/types.ts';
import { givenBefore, headerOf } from './codesCompared.ts';
import type { CaseRule } from './rule.ts';

/** A code that a controller gave in a recording and the header does not list. */
export const codeNotListed: CaseRule = {
  code: 'obd-code-not-listed',
  check: (ruled) => {
    const header = ruled.given.length === 0 ? undefined : headerOf(ruled);
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

import { diagnose } from '../../diagnostics/diagnostic.ts';
import { plainCode } from '../../engine/obd/troubleCode.ts';
import type { Finding } from '../../study/types.ts';
import { headerOf } from '../codesCompared.ts';
import type { CaseRule, RuledCase } from '../rule.ts';
import { steadyStates } from '../steadyStates.ts';
import { bothBanks } from './banksApart.ts';
import { writtenTrim } from './totalTrim.ts';

/** A code says that one bank is lean or rich, and the trims say it of the other bank alone. */
export const codeOfOtherBank: CaseRule = {
  code: 'code-of-other-bank',
  of: ['stft_b2', 'ltft_b2'],
  at: steadyStates,
  check: (ruled) => {
    const listed = (headerOf(ruled)?.codes ?? []).map(({ code, status }) => ({
      code: plainCode(code.text.trim()) ?? '',
      isOld: status?.text.trim() === 'history',
      span: code.span,
    }));
    return listed.flatMap(({ code, isOld, span }): Finding[] => {
      const named = mixtureCodes.get(code);
      if (named === undefined || isOld || listed.some((each) => each.code === named.other)) return [];
      const against = contradicting(ruled, named);
      if (against === undefined) return [];
      const facts = { code, bank: named.bank, meant: named.other, ...against };
      return [{ cell: 0, diagnostic: diagnose('code-of-other-bank', span, facts) }];
    });
  },
};

interface Named {
  readonly bank: 1 | 2;
  /** 1 where fuel is added. */
  readonly sign: 1 | -1;
  /** The same of the other bank. */
  readonly other: string;
}

/** SAE J2012. */
const mixtureCodes: ReadonlyMap<string, Named> = new Map<string, Named>([
  ['P0171', { bank: 1, sign: 1, other: 'P0174' }],
  ['P0174', { bank: 2, sign: 1, other: 'P0171' }],
  ['P0172', { bank: 1, sign: -1, other: 'P0175' }],
  ['P0175', { bank: 2, sign: -1, other: 'P0172' }],
]);

/** Shares: a trim that means something, and one that means nothing (common practice). */
const much = 0.1;
const little = 0.05;

/** The moment with the other bank furthest off; none where the code's own bank is off at any, or none is. After a repair nothing counts. */
function contradicting(ruled: RuledCase, { bank, sign }: Named) {
  const taken = ruled.moments
    .filter(({ when }) => when !== 'after' && when !== 'known good')
    .flatMap((moment) => {
      const both = bothBanks(moment);
      if (both === undefined) return [];
      const [own, other] = bank === 1 ? [both.one, both.other] : [both.other, both.one];
      return [{ moment, own, other }];
    });
  if (taken.some(({ own }) => sign * own.share >= little)) return undefined;
  const [worst] = taken.sort((a, b) => sign * (b.other.share - a.other.share));
  if (worst === undefined || sign * worst.other.share < much) return undefined;
  return {
    own: writtenTrim(worst.own),
    other: writtenTrim(worst.other),
    state: worst.moment.state?.name ?? '',
  };
}

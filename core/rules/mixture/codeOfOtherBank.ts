import { diagnose } from '../../diagnostics/diagnostic.ts';
import { plainCode } from '../../engine/obd/troubleCode.ts';
import type { Finding } from '../../study/types.ts';
import { headerOf } from '../codesCompared.ts';
import type { Moment } from '../moments.ts';
import type { CaseRule, RuledCase } from '../rule.ts';
import { steadyStates } from '../steadyStates.ts';
import { bothBanks } from './banksApart.ts';
import { type TotalTrim, writtenTrim } from './totalTrim.ts';

/** A code says that one bank is lean or rich, and the trims say it of the other bank alone. */
export const codeOfOtherBank: CaseRule = {
  code: 'code-of-other-bank',
  of: ['stft_b2', 'ltft_b2'],
  at: steadyStates,
  check: (ruled) => {
    const found: Finding[] = [];
    const codes = headerOf(ruled)?.codes ?? [];
    for (const { code, status } of codes) {
      const named = mixtureCodes.get(plainOf(code));
      if (named === undefined || status?.text.trim() === 'history') continue;
      if (codes.some((each) => plainOf(each.code) === named.other)) continue;
      const against = contradicting(ruled, named);
      if (against === undefined) continue;
      const facts = { code: plainOf(code), bank: named.bank, meant: named.other, ...against };
      found.push({ cell: 0, diagnostic: diagnose('code-of-other-bank', code.span, facts) });
    }
    return found;
  },
};

/** Nearly all stand there plainly. */
function plainOf({ text }: { readonly text: string }): string {
  const code = text.trim();
  return mixtureCodes.has(code) ? code : (plainCode(code) ?? '');
}

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
  let worst: { readonly moment: Moment; readonly own: TotalTrim; readonly other: TotalTrim } | undefined;
  for (const moment of ruled.moments) {
    const both = moment.when === 'after' || moment.when === 'known good' ? undefined : bothBanks(moment);
    if (both === undefined) continue;
    const [own, other] = bank === 1 ? [both.one, both.other] : [both.other, both.one];
    if (sign * own.share >= little) return undefined;
    if (worst === undefined || sign * (other.share - worst.other.share) > 0) worst = { moment, own, other };
  }
  if (worst === undefined || sign * worst.other.share < much) return undefined;
  return {
    own: writtenTrim(worst.own),
    other: writtenTrim(worst.other),
    state: worst.moment.state?.name ?? '',
  };
}

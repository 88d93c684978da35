import { diagnose } from '../../diagnostics/diagnostic.ts';
import type { Moment } from '../moments.ts';
import type { CellRule } from '../rule.ts';
import { steadyStates } from '../steadyStates.ts';
import { bothBanks } from './banksApart.ts';
import { trimShare, writtenTrim } from './totalTrim.ts';
import { patternOf } from './trimByLoad.ts';

/** Both banks far out on one side: a cause that both share. Where the loads of a cell show a pattern, that says more. */
export const banksTogether: CellRule = {
  code: 'banks-together',
  of: ['stft_b2', 'ltft_b2'],
  at: steadyStates,
  checkCell: ({ moments, car }) => {
    const found = moments.find(isFarOut);
    const both = found === undefined ? undefined : bothBanks(found);
    if (both === undefined) return [];
    if (patternOf(moments, 1) !== undefined || patternOf(moments, 2) !== undefined) return [];
    const { moment, one, other } = both;
    const facts = {
      state: moment.state?.name ?? '',
      first: writtenTrim(one),
      second: writtenTrim(other),
      sign: one.share > 0 ? ('adds' as const) : ('takes' as const),
      metering: car.metering,
    };
    return [diagnose('banks-together', one.at.reading.valueSpan, facts)];
  },
};

function isFarOut(moment: Moment): boolean {
  const one = trimShare(moment, 1);
  const other = trimShare(moment, 2);
  return (
    one !== undefined &&
    other !== undefined &&
    Math.abs(one) >= much &&
    Math.abs(other) >= much &&
    Math.abs(one - other) <= together
  );
}

/** Shares: from where on a trim means something, and how near two banks are to each other that share a cause (common practice). */
const much = 0.1;
const together = 0.08;

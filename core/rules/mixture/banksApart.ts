import { diagnose } from '../../diagnostics/diagnostic.ts';
import type { Moment } from '../moments.ts';
import type { CellRule } from '../rule.ts';
import { steadyStates } from '../steadyStates.ts';
import { type TotalTrim, totalTrim, writtenTrim } from './totalTrim.ts';

/** One bank is trimmed otherwise than the other: what both share is not the cause. */
export const banksApart: CellRule = {
  code: 'banks-apart',
  of: ['stft_b2', 'ltft_b2'],
  at: steadyStates,
  checkCell: ({ moments }) => {
    let [worst, most]: [Banks | undefined, number] = [undefined, 0];
    for (const moment of moments) {
      const both = bothBanks(moment);
      const far = both === undefined ? 0 : Math.abs(both.one.share - both.other.share);
      if (far >= apart && far > most) [worst, most] = [both, far];
    }
    if (worst === undefined) return [];
    const { moment, one, other } = worst;
    const far = Math.abs(one.share) >= Math.abs(other.share) ? one : other;
    const facts = {
      state: moment.state?.name ?? '',
      first: writtenTrim(one),
      second: writtenTrim(other),
      bank: far.bank,
      sign: far.share > 0 ? ('adds' as const) : ('takes' as const),
    };
    return [diagnose('banks-apart', far.at.reading.valueSpan, facts)];
  },
};

/** A share: banks of a sound engine are within a few percent of each other (common practice). */
const apart = 0.1;

/** Whether both banks were taken, and are so far from each other that what both share is not the cause. */
export function areApart(moment: Moment): boolean {
  const both = bothBanks(moment);
  return both !== undefined && Math.abs(both.one.share - both.other.share) >= apart;
}

interface Banks {
  readonly moment: Moment;
  readonly one: TotalTrim;
  readonly other: TotalTrim;
}

/** Both banks' trims of a moment, where both were taken. */
export function bothBanks(moment: Moment): Banks | undefined {
  const one = totalTrim(moment, 1);
  const other = one === undefined ? undefined : totalTrim(moment, 2);
  return one === undefined || other === undefined ? undefined : { moment, one, other };
}

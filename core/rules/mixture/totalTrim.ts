import { fromSi } from '../../quantity/convert.ts';
import { formatNumber } from '../../quantity/format.ts';
import type { Measured } from '../measured.ts';
import { type Moment, stateName } from '../moments.ts';
import { steadyStates } from '../steadyStates.ts';

/** Both trims of a bank together, as the trade adds them. */
export interface TotalTrim {
  readonly bank: 1 | 2;
  /** A share: 0.25 is +25 %. */
  readonly share: number;
  /** Where to point: the long trim, or the short one where it stands alone. */
  readonly at: Measured;
}

/** The total trims of a moment in closed loop, bank by bank; of one trim alone where the other was not taken. */
export function totalTrims(moment: Moment): readonly TotalTrim[] {
  const first = totalTrim(moment, 1);
  const second = totalTrim(moment, 2);
  if (first === undefined) return second === undefined ? none : [second];
  return second === undefined ? [first] : [first, second];
}

const none: readonly TotalTrim[] = [];

export function totalTrim(moment: Moment, bank: 1 | 2): TotalTrim | undefined {
  const { stft_b1, ltft_b1, stft_b2, ltft_b2 } = moment.values;
  const at = bank === 1 ? (ltft_b1 ?? stft_b1) : (ltft_b2 ?? stft_b2);
  if (at === undefined || !isClosedLoop(moment)) return undefined;
  return { bank, share: sumOf(moment, bank), at };
}

/** The share of the total trim alone; undefined where there is none, or the loop is open. */
export function trimShare(moment: Moment, bank: 1 | 2): number | undefined {
  return hasTrim(moment, bank) && isClosedLoop(moment) ? sumOf(moment, bank) : undefined;
}

export function hasTrim({ values }: Moment, bank: 1 | 2): boolean {
  return bank === 1
    ? values.ltft_b1 !== undefined || values.stft_b1 !== undefined
    : values.ltft_b2 !== undefined || values.stft_b2 !== undefined;
}

function sumOf({ values }: Moment, bank: 1 | 2): number {
  return bank === 1
    ? (values.stft_b1?.si ?? 0) + (values.ltft_b1?.si ?? 0)
    : (values.stft_b2?.si ?? 0) + (values.ltft_b2?.si ?? 0);
}

/** "+25 %" */
export function writtenTrim({ share, at: { type } }: TotalTrim): string {
  // Without its sign, so that what takes is rounded as what adds.
  const size = Math.round(Math.abs(fromSi(share, type.unit, type.kind)) * 10) / 10;
  const sign = size === 0 ? '' : share > 0 ? '+' : '-';
  return `${sign}${formatNumber(size)} ${type.unit.symbol}`;
}

/** Steady states in which fuel control follows its sensor, unless the case says that it did not. */
function isClosedLoop(moment: Moment): boolean {
  const { loop = moment.state?.more.get('loop') } = moment;
  if (loop !== undefined && loop !== 'closed') return false;
  return steady.has(stateName(moment) ?? '');
}

const steady: ReadonlySet<string> = new Set(steadyStates);

import { fromSi } from '../../quantity/convert.ts';
import { formatNumber } from '../../quantity/format.ts';
import type { Measured } from '../measured.ts';
import { type Moment, stateName } from '../moments.ts';

/** Both trims of a bank together, as the trade adds them. */
export interface TotalTrim {
  readonly bank: 1 | 2;
  /** A share: 0.25 is +25 %. */
  readonly share: number;
  /** "+25 %" */
  readonly written: string;
  /** Where to point: the long trim, or the short one where it stands alone. */
  readonly at: Measured;
}

/** The total trims of a moment in closed loop, bank by bank; of one trim alone where the other was not taken. */
export function totalTrims(moment: Moment): readonly TotalTrim[] {
  if (!isClosedLoop(moment)) return [];
  return ([1, 2] as const).flatMap((bank) => {
    const short = moment.values.get(`stft_b${bank}`);
    const long = moment.values.get(`ltft_b${bank}`);
    const at = long ?? short;
    if (at === undefined) return [];
    const share = (short?.si ?? 0) + (long?.si ?? 0);
    return [{ bank, share, written: signed(share, at), at }];
  });
}

function signed(share: number, { type }: Measured): string {
  const number = Number(fromSi(share, type.unit, type.kind).toFixed(1));
  return `${number > 0 ? '+' : ''}${formatNumber(number)} ${type.unit.symbol}`;
}

/** Steady states in which fuel control follows its sensor, unless the case says that it did not. */
function isClosedLoop(moment: Moment): boolean {
  const loop = moment.words.get('loop') ?? moment.state?.more.get('loop');
  if (loop !== undefined && loop !== 'closed') return false;
  return steady.has(stateName(moment) ?? '');
}

const steady: ReadonlySet<string> = new Set([
  'warm idle',
  'idle in gear',
  '1500 rpm no load',
  '2500 rpm no load',
  'light cruise',
  'cruise',
  'heavy load',
]);

import { fromSi } from '../../quantity/convert.ts';
import { formatNumber } from '../../quantity/format.ts';
import type { Measured } from '../measured.ts';
import { type Moment, stateName } from '../moments.ts';

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
  if (!isClosedLoop(moment)) return none;
  const { values } = moment;
  const first = ofBank(1, values.get('stft_b1'), values.get('ltft_b1'));
  const second = ofBank(2, values.get('stft_b2'), values.get('ltft_b2'));
  if (first === undefined) return second === undefined ? none : [second];
  return second === undefined ? [first] : [first, second];
}

const none: readonly TotalTrim[] = [];

function ofBank(bank: 1 | 2, short: Measured | undefined, long: Measured | undefined): TotalTrim | undefined {
  const at = long ?? short;
  return at === undefined ? undefined : { bank, share: (short?.si ?? 0) + (long?.si ?? 0), at };
}

/** "+25 %" */
export function writtenTrim({ share, at: { type } }: TotalTrim): string {
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

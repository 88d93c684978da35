import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import type { Series } from '../../expression/value.ts';
import type { Reading } from '../../study/types.ts';
import { mirroringOf } from '../../waveform/oxygen/mirroring.ts';
import { isRecorded, recorded, swingOf } from '../../waveform/recorded.ts';
import { headerWord } from '../headerWords.ts';
import type { CellRule } from '../rule.ts';

/**
 * The sensor behind the catalyst swings nearly as far as the one before it, and in its rhythm: the catalyst stores no oxygen, or does not work.
 * Behind a wide-range sensor volts say nothing of the kind.
 */
export const rearCopiesFront: CellRule = {
  code: 'rear-copies-front',
  in: ['capture'],
  checkCell: ({ readings, header }) =>
    (headerWord(header, 'engine.front_sensor') === 'wideband' ? [] : ([1, 2] as const)).flatMap(
      (bank): readonly Diagnostic[] => {
        const front = channelOf(readings, `o2_b${bank}s1`);
        const rear = channelOf(readings, `o2_b${bank}s2`);
        if (front === undefined || rear === undefined || !isSteady(rear.reading)) return [];
        const [before, behind] = [widthOf(front.series), widthOf(rear.series)];
        if (before < switching || behind / before < copied) return [];
        const alike = alikeness(front.series, rear.series);
        if (alike === undefined || alike.correlation < follows) return [];
        const facts = {
          bank,
          front: front.reading.key,
          rear: rear.reading.key,
          frontSwing: `${before.toFixed(2)} V`,
          rearSwing: `${behind.toFixed(2)} V`,
          ratio: (behind / before).toFixed(2),
          later: `${alike.lag.toFixed(2)} s`,
          correlation: alike.correlation.toFixed(2),
        };
        return [diagnose('rear-copies-front', rear.reading.keySpan, facts)];
      },
    ),
};

/** V: a front sensor that switches swings further. The ratio is an example of a limit (SAE 900062 and 910561 give the method; limits are the maker's): common practice. */
const switching = 0.3;
const copied = 0.7;
/** Pearson's coefficient from which on the rear moves as the front does, when it is moved back by its delay: common practice. */
const follows = 0.7;

function channelOf(
  readings: readonly Reading[],
  signal: string,
): { readonly reading: Reading; readonly series: Series } | undefined {
  for (const reading of readings) {
    const { from, value, form } = reading;
    if (from !== 'capture' || reading.signal?.name !== signal || form?.unit !== 'V') continue;
    if (value.kind === 'series' && value.samples.length >= 20) return { reading, series: value };
  }
  return undefined;
}

/** Running, in a state of a warm catalyst and closed loop, or in none that is known. */
function isSteady({ state }: Reading): boolean {
  const name = state?.known?.name;
  return name === undefined ? state !== undefined : steady.has(name);
}

const steady: ReadonlySet<string> = new Set([
  'warm idle',
  'idle in gear',
  '1500 rpm no load',
  '2500 rpm no load',
  'light cruise',
  'cruise',
]);

function widthOf({ samples }: Series): number {
  const { low, high } = swingOf(samples);
  return high - low;
}

function alikeness(front: Series, rear: Series) {
  const [before, behind] = [recorded(front), recorded(rear)];
  if (!isRecorded(before) || !isRecorded(behind)) return undefined;
  const alike = mirroringOf(before, behind);
  return 'kind' in alike ? undefined : alike;
}

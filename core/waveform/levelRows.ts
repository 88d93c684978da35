import { cannotCompute } from '../expression/absent.ts';
import type { FunctionRow, Parameter, Result } from '../expression/functionRow.ts';
import type { Series, Value } from '../expression/value.ts';
import { samplesOfX } from './arguments.ts';
import { baseline } from './baseline.ts';
import { smooth } from './smooth.ts';

const ofX: Result = {
  kind: 'computed',
  says: 'samples of the same sort',
  typeOf: ([x]) => (x?.kind === 'series' ? { type: x } : { wrong: 0, takes: 'samples of a capture' }),
};

const window: Parameter = {
  name: 'window',
  takes: { what: 'quantity', unit: 's' },
  meaning: 'how long',
  within: { above: '0 s' },
};

/** What a signal looks like without its noise, and what it stands on. */
export const levelRows: readonly FunctionRow[] = [
  {
    form: 'whole',
    name: 'smooth',
    family: 'series',
    summary: 'The samples without what changes faster than a window of time.',
    parameters: [samplesOfX, { ...window, meaning: 'the time over which is averaged' }],
    result: ofX,
    formula:
      'mean of the samples within window/2 before and after each; narrower, on both sides alike, at the ends',
    range: 'nothing is shifted in time; a pulse shorter than the window becomes lower',
    errors: ['There are no samples.', 'The window is not above 0.'],
    source: 'moving average',
    example: { expression: 'at(smooth(log.map, 2 s), 1 s)', result: '36 kPa' },
    evaluate: ([x, over]) =>
      eachLevel(x, over, (series, seconds, samples) => smooth(series.time, samples, seconds)),
  },
  {
    form: 'whole',
    name: 'baseline',
    family: 'series',
    summary: 'The level that the samples stand on, whatever pulses rise from it.',
    parameters: [
      samplesOfX,
      {
        ...window,
        meaning: 'the time for which a level is taken; the whole record when left out',
        optional: true,
      },
      {
        name: 'share',
        takes: { what: 'quantity', unit: '%' },
        meaning: 'the share of the samples that lie below: 50 % is the median',
        otherwise: '50 %',
        within: { from: '0 %', to: '100 %' },
      },
    ],
    result: ofX,
    formula: 'the share’s quantile of each window, straight between the windows’ middles',
    range: 'pulses that last less than their share of a window do not lift it',
    errors: ['There are no samples.', 'The window is not above 0.', 'The share is outside 0 to 100 %.'],
    source: 'Hyndman and Fan, The American Statistician 50 (1996) 361–365, definition 7',
    example: { expression: 'max(baseline(purge.drive, share = 25 %))', result: '0 V' },
    evaluate: ([x, over, share]) => {
      if (share?.kind !== 'one' || !(share.amount.si >= 0 && share.amount.si <= 1))
        return cannotCompute('a share lies between 0 % and 100 %');
      const part = share.amount.si;
      return eachLevel(x, over, (series, seconds, samples) => baseline(series.time, samples, seconds, part));
    },
  },
];

/** Samples of the same moments, and what each source contributes to them: by half of what moving it up and down does. */
function eachLevel(
  x: Value | undefined,
  over: Value | undefined,
  read: (series: Series, seconds: number, samples: Float64Array) => Float64Array,
): Value {
  if (x?.kind !== 'series' || x.samples.length === 0) return cannotCompute('there are no samples in it');
  const whole = (x.time[x.time.length - 1] ?? 0) - (x.time[0] ?? 0);
  const seconds = over?.kind === 'one' ? over.amount.si : whole > 0 ? whole : 1;
  if (!(seconds > 0)) return cannotCompute('a window must be longer than 0 s');
  for (let i = 1; i < x.time.length; i++) {
    if ((x.time[i] ?? 0) < (x.time[i - 1] ?? 0)) return cannotCompute('the time runs backwards');
  }
  const spread = x.spread.map(({ source, by }) => {
    if (typeof by === 'number') return { source, by };
    const moved = (sign: 1 | -1) =>
      read(
        x,
        seconds,
        x.samples.map((each, i) => each + sign * (by[i] ?? 0)),
      );
    const [up, down] = [moved(1), moved(-1)];
    return { source, by: up.map((each, i) => (each - (down[i] ?? Number.NaN)) / 2) };
  });
  return { ...x, samples: read(x, seconds, x.samples), spread };
}

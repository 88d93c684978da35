import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  deviationOfSamples,
  firstSample,
  greatestSample,
  lastSample,
  leastSample,
  meanOfSamples,
  medianOfSamples,
  type OfSamples,
  spreadOfSamples,
} from '../../core/expression/functions/samplesStatistics.ts';
import {
  greatest,
  least,
  mean,
  median,
  spreadOf,
  standardDeviation,
} from '../../core/expression/functions/statistics.ts';
import { sampleAt } from '../../core/expression/series.ts';
import type { Absent, Series } from '../../core/expression/value.ts';
import { exact, halfWidth } from '../../core/quantity/amount.ts';
import { voltage } from '../../core/quantity/dimension.ts';
import type { Amount } from '../../core/quantity/types.ts';
import { plainUnit, unitOf } from '../../core/quantity/unit.ts';

const type = { dimension: voltage, kind: 'none', unit: unitOf('V') ?? plainUnit } as const;

const pairs: readonly (readonly [string, OfSamples, (amounts: readonly Amount[]) => Amount | Absent])[] = [
  ['min', leastSample, least],
  ['max', greatestSample, greatest],
  ['mean', meanOfSamples, mean],
  ['median', medianOfSamples, median],
  ['spread', spreadOfSamples, spreadOf],
  ['stdev', deviationOfSamples, standardDeviation],
  ['first', firstSample, (amounts) => amounts[0] ?? exact(Number.NaN)],
  ['last', lastSample, (amounts) => amounts.at(-1) ?? exact(Number.NaN)],
];

const sample = fc.oneof(
  { weight: 8, arbitrary: fc.double({ min: -1000, max: 1000, noNaN: true }) },
  { weight: 2, arbitrary: fc.constantFrom(0, -0, 0.45, 0.45, 12.5) },
  { weight: 1, arbitrary: fc.constant(Number.NaN) },
);
const series = fc
  .tuple(fc.array(sample, { minLength: 1, maxLength: 30 }), fc.boolean(), fc.constantFrom(0, 1, 2))
  .map(([list, isCommon, sources]): Series => {
    const samples = Float64Array.from(list);
    const by = isCommon ? 0.02 : samples.map((each) => Math.abs(each) / 50);
    const spread = ['a.front', 'b.front'].slice(0, sources).map((source) => ({ source, by }));
    return { kind: 'series', type, capture: 'log', time: samples.map((_, i) => i), samples, spread };
  });

describe('statistics of samples are those of the same values one by one', () => {
  it.each(pairs)('%s', (_, ofSamples, ofAmounts) => {
    fc.assert(
      fc.property(series, (given) => {
        const amounts = Array.from(given.samples, (_, i) => sampleAt(given, i)).filter(
          ({ si }) => !Number.isNaN(si),
        );
        const now = ofSamples(given);
        if (amounts.length === 0) {
          expect(now).toEqual({ kind: 'absent', status: 'cannot compute', why: 'there are no values in it' });
          return;
        }
        const due = ofAmounts(amounts);
        if (!('si' in due)) {
          expect(now).toEqual(due);
          return;
        }
        if (!('si' in now)) throw new Error(now.why);
        expect(now.si + 0).toBe(due.si + 0);
        expect(halfWidth(now)).toBeCloseTo(halfWidth(due), 9);
      }),
    );
  });
});

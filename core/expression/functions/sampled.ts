import { exact, linear } from '../../quantity/amount.ts';
import type { Amount } from '../../quantity/types.ts';
import { cannotCompute } from '../absent.ts';
import { finite } from '../combine.ts';
import { atLeast, atMost, firstAtOrAfter, sampleAt } from '../series.ts';
import type { Absent, Series, Value } from '../value.ts';
import { amountsIn } from './numbers.ts';

/** The value at a moment (seconds), straight between the neighbouring samples; nothing beyond the ends. */
export function valueAt([series, time]: readonly (Value | undefined)[]): Value {
  if (series?.kind !== 'series' || time?.kind !== 'one') return cannotCompute('it has no samples');
  const amount = between(series, time.amount);
  return 'si' in amount ? { kind: 'one', type: series.type, amount } : amount;
}

function between(series: Series, time: Amount): Amount | Absent {
  const at = time.si;
  const after = firstAtOrAfter(series.time, atLeast(at));
  const end = series.time[after];
  if (end === undefined) return cannotCompute('the moment is after the last sample');
  const here = sampleAt(series, after);
  if (end <= atMost(at)) {
    return there(
      linear(here.si, [
        [1, here],
        [slopeAt(series, after), time],
      ]),
    );
  }
  if (after === 0) return cannotCompute('the moment is before the first sample');
  const start = series.time[after - 1] ?? Number.NaN;
  const share = (at - start) / (end - start);
  const before = sampleAt(series, after - 1);
  const slope = (here.si - before.si) / (end - start);
  return there(
    linear(before.si + share * (here.si - before.si), [
      [1 - share, before],
      [share, here],
      [slope, time],
    ]),
  );
}

/** How fast it changes at a sample: from neighbour to neighbour, as `rate` says it; past what is missing. */
function slopeAt({ time, samples }: Series, at: number): number {
  const has = (index: number): boolean => Number.isFinite(samples[index] ?? Number.NaN);
  const from = has(at - 1) ? at - 1 : at;
  const to = has(at + 1) ? at + 1 : at;
  const apart = (time[to] ?? Number.NaN) - (time[from] ?? Number.NaN);
  return apart > 0 ? ((samples[to] ?? Number.NaN) - (samples[from] ?? Number.NaN)) / apart : 0;
}

function there(amount: Amount): Amount | Absent {
  return Number.isNaN(amount.si) ? cannotCompute('a sample is missing there') : finite(amount);
}

/**
 * The value below which a share of the values lies: linear between the order statistics at 1 + (n − 1)·p
 * (definition 7 of Hyndman and Fan, The American Statistician 50 (1996) 361–365; what spreadsheets compute).
 */
export function percentile([values, share]: readonly (Value | undefined)[]): Value {
  if (share?.kind !== 'one') return cannotCompute('it is no percentage');
  const p = share.amount.si;
  if (!(p >= 0 && p <= 1)) return cannotCompute('a percentile lies between 0 % and 100 %');
  const amounts = amountsIn([values]);
  if (!Array.isArray(amounts)) return amounts;
  if (values?.kind !== 'series' && values?.kind !== 'members' && values?.kind !== 'one') {
    return cannotCompute('there are no values in it');
  }
  const ordered = amounts.sort((a, b) => a.si - b.si);
  const place = (ordered.length - 1) * p;
  const low = Math.floor(place);
  const part = place - low;
  const below = ordered[low] ?? exact(Number.NaN);
  const above = ordered[low + 1];
  const amount =
    above === undefined || part === 0
      ? below
      : linear(below.si + part * (above.si - below.si), [
          [1 - part, below],
          [part, above],
        ]);
  return { kind: 'one', type: values.type, amount };
}

/**
 * How fast a series changes, per second, at each sample: the slope through its two neighbours,
 * at the ends through the nearest two. What is common to all samples cancels.
 */
export function rate([series]: readonly (Value | undefined)[]): Value {
  if (series?.kind !== 'series') return cannotCompute('it has no samples');
  const { time } = series;
  if (time.length < 2) return cannotCompute('a rate needs at least two samples');
  const slopes = (of: Float64Array): Float64Array => {
    const out = new Float64Array(time.length);
    for (let i = 0; i < time.length; i++) {
      const a = Math.max(0, i - 1);
      const b = Math.min(time.length - 1, i + 1);
      const slope =
        ((of[b] ?? Number.NaN) - (of[a] ?? Number.NaN)) / ((time[b] ?? Number.NaN) - (time[a] ?? Number.NaN));
      out[i] = Number.isFinite(slope) ? slope : Number.NaN;
    }
    return out;
  };
  const spread: { source: string; by: Float64Array }[] = [];
  for (const { source, by } of series.spread) {
    if (typeof by !== 'number') spread.push({ source, by: slopes(by) });
  }
  return { ...series, samples: slopes(series.samples), spread };
}

import { cannotCompute } from '../expression/absent.ts';
import { firstAtOrAfter } from '../expression/series.ts';
import type { Absent, Series } from '../expression/value.ts';
import { isRecorded, recorded } from './recorded.ts';

/**
 * The samples of x at the moments of another capture, straight between the neighbours, where both were recorded.
 * Both clocks count from the same moment. Nothing is filled in across a gap of x: those moments are missing.
 */
export function resample(x: Series, like: Series): Series | Absent {
  const from = recorded(x);
  if (!isRecorded(from)) return from;
  const first = from.time[0] ?? 0;
  const last = from.time[from.time.length - 1] ?? 0;
  const start = firstAtOrAfter(like.time, first);
  let end = firstAtOrAfter(like.time, last);
  while (end < like.time.length && like.time[end] === last) end++;
  if (end <= start) return cannotCompute('the captures do not overlap in time');
  const time = like.time.subarray(start, end);
  const gaps = new Set(from.starts);
  const valuesOf = (values: Float64Array): Float64Array => along(from.time, values, gaps, time);
  const samples = valuesOf(from.samples);
  const spread = x.spread.map(({ source, by }) => ({
    source,
    by: typeof by === 'number' ? by : valuesOf(there(by, x)),
  }));
  return { kind: 'series', type: x.type, capture: like.capture, time, samples, spread };
}

/** The contributions of the samples that are there. */
function there(by: Float64Array, { time, samples }: Series): Float64Array {
  return by.filter(
    (_, i) => Number.isFinite(samples[i] ?? Number.NaN) && !Number.isNaN(time[i] ?? Number.NaN),
  );
}

/** Values at ascending moments, in one walk along both; NaN inside a gap. */
export function along(
  time: Float64Array,
  values: Float64Array,
  gaps: ReadonlySet<number>,
  moments: Float64Array,
): Float64Array {
  const out = new Float64Array(moments.length);
  let after = 0;
  for (let i = 0; i < moments.length; i++) {
    const at = moments[i] ?? Number.NaN;
    while (after < time.length && (time[after] ?? 0) < at) after++;
    const end = time[after];
    if (end === at) out[i] = values[after] ?? Number.NaN;
    else if (end === undefined || after === 0 || gaps.has(after)) out[i] = Number.NaN;
    else {
      const start = time[after - 1] ?? 0;
      const share = (at - start) / (end - start);
      out[i] = (values[after - 1] ?? Number.NaN) * (1 - share) + (values[after] ?? Number.NaN) * share;
    }
  }
  return out;
}

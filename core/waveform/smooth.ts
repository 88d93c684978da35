/**
 * The mean of what lies within half a window (s) before and after each sample. Towards the ends the window narrows
 * on both sides alike, so that a straight line stays one and nothing is shifted in time. A missing sample stays
 * missing and counts in no mean. One pass. `time` ascends; the window is above 0.
 */
export function smooth(time: Float64Array, samples: Float64Array, window: number): Float64Array {
  const count = samples.length;
  const out = new Float64Array(count).fill(Number.NaN);
  const first = time[0] ?? 0;
  const last = time[count - 1] ?? 0;
  // Moments that are equal but for rounding stand on both edges or on none.
  const grain = 1e-9 * window;
  let from = 0;
  let to = 0;
  let sum = 0;
  let there = 0;
  // The first sample as zero keeps the digits of a small ripple on a large value.
  const zero = samples.find(Number.isFinite) ?? 0;
  for (let i = 0; i < count; i++) {
    const now = time[i] ?? Number.NaN;
    const half = Math.min(window / 2, now - first, last - now) + grain;
    for (; to < count && (time[to] ?? Number.NaN) <= now + half; to++) {
      const sample = samples[to] ?? Number.NaN;
      if (!Number.isFinite(sample)) continue;
      sum += sample - zero;
      there++;
    }
    for (; from < to && (time[from] ?? Number.NaN) < now - half; from++) {
      const sample = samples[from] ?? Number.NaN;
      if (!Number.isFinite(sample)) continue;
      sum -= sample - zero;
      there--;
    }
    if (there > 0 && Number.isFinite(samples[i] ?? Number.NaN)) out[i] = zero + sum / there;
  }
  return out;
}

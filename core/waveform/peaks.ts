import { swingOf } from './recorded.ts';

/** How far a peak must stand out when nobody says, as a share of the whole swing. */
const usual = 0.1;

/**
 * The places of the peaks: samples from which the signal falls by at least `prominence` on both sides before it is higher again,
 * or ends. Of a flat top the middle. The record's ends are no peaks. Missing samples (NaN) are passed over. One pass.
 * Ascending; the prominence is in the samples' unit, a tenth of the swing when left out.
 */
export function peaksOf(samples: Float64Array, prominence?: number): Int32Array {
  const { low, high } = swingOf(samples);
  const least = prominence ?? usual * (high - low);
  const peaks: number[] = [];
  if (!(high > low && least > 0)) return Int32Array.from(peaks);
  const at = (i: number): number => samples[i] ?? Number.NaN;
  const end = samples.length;
  let i = 0;
  let bottom = Number.POSITIVE_INFINITY;
  // Until it has risen: what it falls from at the beginning is no peak.
  for (; i < end && !(at(i) >= bottom + least); i++) if (at(i) < bottom) bottom = at(i);
  while (i < end) {
    let top = at(i);
    let topAt = i;
    let topEnd = i;
    let floor = top - least;
    for (i++; i < end && !(at(i) <= floor); i++) {
      if (at(i) < top) continue;
      if (at(i) > top) {
        top = at(i);
        floor = top - least;
        topAt = i;
        topEnd = i;
      } else if (at(i) === top && topEnd === i - 1) topEnd = i;
    }
    if (i >= end) break;
    peaks.push((topAt + topEnd) >> 1);
    bottom = at(i);
    for (i++; i < end && !(at(i) >= bottom + least); i++) if (at(i) < bottom) bottom = at(i);
  }
  return Int32Array.from(peaks);
}

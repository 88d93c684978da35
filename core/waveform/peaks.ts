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
  let climbing = false;
  let known = false;
  let top = Number.NEGATIVE_INFINITY;
  let bottom = Number.POSITIVE_INFINITY;
  let topAt = 0;
  let topEnd = 0;
  for (let i = 0; i < samples.length; i++) {
    const sample = samples[i] ?? Number.NaN;
    if (sample > top) {
      top = sample;
      topAt = i;
      topEnd = i;
    } else if (sample === top && topEnd === i - 1) topEnd = i;
    if (sample < bottom) bottom = sample;
    if ((climbing || !known) && sample <= top - least) {
      // Before anything is known, a fall from the first samples is no peak: nothing rose to it.
      if (known) peaks.push((topAt + topEnd) >> 1);
      known = true;
      climbing = false;
      bottom = sample;
    } else if (!climbing && sample >= bottom + least) {
      known = true;
      climbing = true;
      top = sample;
      topAt = i;
      topEnd = i;
    }
  }
  return Int32Array.from(peaks);
}

/**
 * The way that a voltage goes up and down, V: the sum of its swings. A turn back of less than `noise` is passed over,
 * which keeps a fast, noisy record from counting its noise. Missing samples (NaN) are passed over. One pass.
 */
export function arcLength(samples: Float64Array, noise: number): number {
  let way = 0;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let rising: boolean | undefined;
  const count = samples.length;
  for (let i = 0; i < count; i++) {
    const sample = samples[i] ?? Number.NaN;
    if (rising === undefined) {
      if (sample < low) low = sample;
      if (sample > high) high = sample;
      if (high > low && high - low >= noise) rising = sample === high;
    } else if (rising) {
      if (sample > high) high = sample;
      else if (high - sample >= noise && sample < high) {
        way += high - low;
        low = sample;
        rising = false;
      }
    } else if (sample < low) low = sample;
    else if (sample - low >= noise && sample > low) {
      way += high - low;
      high = sample;
      rising = true;
    }
  }
  return rising === undefined ? 0 : way + (high - low);
}

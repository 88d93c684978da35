/** Samples to draw: few, and every extreme among them. */
export interface Decimated {
  readonly time: Float64Array;
  readonly samples: Float64Array;
}

/**
 * The first, least, greatest and last sample of each of `columns` equal spans of time, in the order of time,
 * so that a line through them covers the same pixels as a line through all of them
 * (Jugel et al., M4, Proceedings of the VLDB Endowment 7 (2014) 797–808).
 * Time ascends. A span with nothing but missing samples keeps one of them (NaN), which breaks the line.
 * A record that is short already is given back as it is.
 */
export function decimate(time: Float64Array, samples: Float64Array, columns: number): Decimated {
  const count = samples.length;
  if (!(columns >= 1) || count <= 4 * columns) return { time, samples };
  const first = time[0] ?? 0;
  const wide = ((time[count - 1] ?? 0) - first) / columns;
  const keptTime = new Float64Array(4 * columns);
  const keptSamples = new Float64Array(4 * columns);
  let kept = 0;
  let start = 0;
  for (let column = 1; column <= columns; column++) {
    const end = column === columns ? count : placeAfter(time, first + column * wide, start, count / columns);
    if (end === start) continue;
    let lowAt = -1;
    let highAt = -1;
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (let i = start; i < end; i++) {
      const sample = samples[i] ?? Number.NaN;
      if (sample < low) {
        low = sample;
        lowAt = i;
      }
      if (sample > high) {
        high = sample;
        highAt = i;
      }
    }
    let before = -1;
    const places = lowAt < 0 ? [start] : [start, Math.min(lowAt, highAt), Math.max(lowAt, highAt), end - 1];
    for (const place of places) {
      if (place === before) continue;
      keptTime[kept] = time[place] ?? 0;
      keptSamples[kept++] = samples[place] ?? Number.NaN;
      before = place;
    }
    start = end;
  }
  return { time: keptTime.subarray(0, kept), samples: keptSamples.subarray(0, kept) };
}

/** The first place from `from` on whose time is at or after this; even steps make the first guess right. */
function placeAfter(time: Float64Array, at: number, from: number, usual: number): number {
  let low = from;
  let high = time.length;
  const guess = Math.min(high - 1, from + Math.round(usual));
  if ((time[guess] ?? 0) >= at) {
    high = guess;
    if (guess > from && (time[guess - 1] ?? 0) < at) return guess;
  } else low = guess + 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((time[middle] ?? 0) < at) low = middle + 1;
    else high = middle;
  }
  return low;
}

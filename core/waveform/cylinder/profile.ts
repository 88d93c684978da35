import { evenly } from './evenly.ts';

/** The samples of whole engine cycles by whole degrees of crank angle: the mean of what fell into each, or between its neighbours. */
export function cyclesByDegree(
  turns: Float64Array,
  samples: Float64Array,
  most: number,
): readonly Float64Array[] {
  const cycles: Float64Array[] = [];
  let i = 0;
  while (i < turns.length && !((turns[i] ?? Number.NaN) >= 0)) i++;
  for (let k = 0; i < turns.length && cycles.length < most; k++) {
    const start = i;
    while (i < turns.length && (turns[i] ?? Number.NaN) < 2 * k + 2) i++;
    if (i >= turns.length || i - start < leastSamples) break;
    const angles = turns.slice(start, i).map((each) => 360 * (each - 2 * k));
    cycles.push(byDegree(angles, samples.subarray(start, i)));
  }
  return cycles;
}

/** Coarser than a sample every four degrees, corners are not seen. */
const leastSamples = 180;

/** Bins of one degree from 0; the ends of the cycle are held by the samples next to them. */
function byDegree(angles: Float64Array, samples: Float64Array): Float64Array {
  const count = samples.length;
  const wide = new Float64Array(count + 2);
  const held = new Float64Array(count + 2);
  wide.set(angles, 1);
  held.set(samples, 1);
  held[0] = samples[0] ?? 0;
  wide[count + 1] = 720;
  held[count + 1] = samples[count - 1] ?? 0;
  return evenly(wide, held, 1);
}

export function meanOf(cycles: readonly Float64Array[]): Float64Array {
  const mean = new Float64Array(720);
  for (const cycle of cycles) for (let i = 0; i < 720; i++) mean[i] = (mean[i] ?? 0) + (cycle[i] ?? 0);
  return mean.map((each) => each / cycles.length);
}

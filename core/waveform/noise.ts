import { quantile } from './quantile.ts';

/**
 * The noise that samples show by themselves, as a standard deviation: from how far each lies off the line through its
 * neighbours. A second difference of white noise has √6 of its deviation (Gasser, Sroka and Jennen-Steinmetz, "Residual
 * variance and residual pattern in nonlinear regression", Biometrika 73 (1986) 625; from memory), and the median of a normal
 * magnitude is 0.6745 of its deviation, so that steps and single wild samples count for little. Where the signal itself
 * bends from sample to sample, because few were taken, that counts as noise, too. 0 of fewer than three.
 */
export function noiseOf(samples: Float64Array): number {
  const count = samples.length - 2;
  if (count < 1) return 0;
  const step = Math.max(1, Math.floor(count / most));
  const off = new Float64Array(Math.floor((count - 1) / step) + 1);
  for (let i = 0; i < off.length; i++) {
    const at = i * step;
    off[i] = Math.abs(
      (samples[at] as number) - 2 * (samples[at + 1] as number) + (samples[at + 2] as number),
    );
  }
  return quantile(off, 0.5) / (0.6745 * Math.sqrt(6));
}

/** Differences looked at: enough for a median to a hundredth. */
const most = 2 ** 15;

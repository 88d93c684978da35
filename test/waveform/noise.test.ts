import { describe, expect, it } from 'vitest';
import { noiseOf } from '../../core/waveform/noise.ts';
import { disturbed, sampled } from '../support/signal/signal.ts';

const sine = (t: number): number => 0.45 + 0.35 * Math.sin(2 * Math.PI * t);

describe('the noise that samples show', () => {
  it.each([0.002, 0.01, 0.05])('is the one that was added to a sine: %f V', (noise) => {
    for (const seed of [1, 2, 3]) {
      const { samples } = disturbed(sampled(30, 200, sine), { noise }, seed);
      expect(Math.abs(noiseOf(samples) / noise - 1)).toBeLessThan(0.05);
    }
  });

  it('of a clean sine is its bending: a second difference of 2·a·(1 − cos ω·Δt)·sin, whose median is √½ of that', () => {
    const bending = 0.35 * 2 * (1 - Math.cos((2 * Math.PI) / 200)) * Math.SQRT1_2;
    expect(noiseOf(sampled(30, 200, sine).samples)).toBeCloseTo(bending / (0.6745 * Math.sqrt(6)), 6);
  });

  it('is none of a straight line, and of too few', () => {
    expect(noiseOf(sampled(10, 100, (t) => 3 * t).samples)).toBeLessThan(1e-12);
    expect(noiseOf(Float64Array.of(1, 5))).toBe(0);
  });

  it('does not take steps and single wild samples for noise', () => {
    const steps = disturbed(
      sampled(30, 200, (t) => Math.floor(2 * t) % 2),
      { noise: 0.01 },
      4,
    ).samples;
    for (let i = 0; i < steps.length; i += 97) steps[i] = 7;
    expect(Math.abs(noiseOf(steps) / 0.01 - 1)).toBeLessThan(0.1);
  });
});

import { describe, expect, it } from 'vitest';
import { baseline } from '../../core/waveform/baseline.ts';
import { median, quantile } from '../../core/waveform/quantile.ts';
import { smooth } from '../../core/waveform/smooth.ts';
import { waveformFunctions } from '../../core/waveform/waveformFunctions.ts';
import { printed, result } from '../support/expressionResult.ts';
import { samples } from '../support/expressionScope.ts';
import { randomFrom } from '../support/signal/random.ts';
import { disturbed, sampled } from '../support/signal/signal.ts';

describe('smooth', () => {
  it('leaves a straight line a straight line, up to its ends', () => {
    const { time, samples } = sampled(2, 100, (t) => 3 - 4 * t);
    smooth(time, samples, 0.3).forEach((each, i) => {
      expect(each).toBeCloseTo(samples[i] ?? 0, 12);
    });
  });

  it('weakens a sine by sin(nπf/s)/(n·sin(πf/s)): the mean of n samples, s a second (Dirichlet)', () => {
    const [f, w] = [4, 0.1];
    const { time, samples } = sampled(5, 2000, (t) => Math.sin(2 * Math.PI * f * t));
    const out = smooth(time, samples, w);
    const at = 2000 * 2 + 125; // a crest: 2 s and a quarter of a cycle
    expect(out[at]).toBeCloseTo(
      Math.sin((201 * Math.PI * f) / 2000) / (201 * Math.sin((Math.PI * f) / 2000)),
      12,
    );
  });

  it('lowers white noise by the root of the samples in the window', () => {
    const { time, samples } = disturbed(
      sampled(20, 1000, () => 0),
      { noise: 1 },
      11,
    );
    const out = smooth(time, samples, 0.1).subarray(200, -200);
    const deviation = Math.sqrt(out.reduce((sum, each) => sum + each * each, 0) / out.length);
    expect(deviation).toBeCloseTo(1 / Math.sqrt(101), 1);
  });

  it('is what a plain mean of each window is, on uneven time and with samples lost', () => {
    const random = randomFrom(2);
    const time = Float64Array.from({ length: 300 }, () => 10 * random()).sort();
    const values = time.map((t) => (random() < 0.1 ? Number.NaN : 1e6 + Math.sin(t) + random()));
    const [first = 0, last = 0] = [time[0], time.at(-1)];
    smooth(time, values, 1).forEach((each, i) => {
      const now = time[i] ?? 0;
      const half = Math.min(0.5, now - first, last - now);
      const near = values.filter((v, j) => Math.abs((time[j] ?? 0) - now) <= half && !Number.isNaN(v));
      if (Number.isNaN(values[i] ?? 0)) expect(each).toBeNaN();
      else expect(each).toBeCloseTo(near.reduce((sum, v) => sum + v, 0) / near.length, 8);
    });
  });
});

describe('quantile', () => {
  it('is that of the sorted numbers', () => {
    const random = randomFrom(4);
    for (let n = 1; n < 60; n++) {
      const numbers = Float64Array.from({ length: n }, () => Math.round(10 * random()));
      const sorted = numbers.toSorted();
      const place = (n - 1) * 0.3;
      const [a = 0, b = 0] = [sorted[Math.floor(place)], sorted[Math.min(n - 1, Math.floor(place) + 1)]];
      expect(quantile(numbers, 0.3)).toBeCloseTo(a + (place % 1) * (b - a), 12);
    }
    expect(median([3, 1, 2, 10])).toBe(2.5);
    expect(median([])).toBeNaN();
  });
});

describe('baseline', () => {
  const pulses = sampled(10, 1000, (t) => 2 + t / 10 + (t % 0.5 < 0.1 ? 5 : 0));

  it('follows a drift beneath pulses that last a fifth of the time', () => {
    const level = baseline(pulses.time, pulses.samples, 1, 0.4);
    for (let i = 1000; i < 9000; i++) expect(Math.abs((level[i] ?? 0) - 2 - i / 10_000)).toBeLessThan(0.02);
  });

  it('of the whole record is one level: the median', () => {
    const level = baseline(pulses.time, pulses.samples, 100, 0.5);
    expect(new Set(level)).toEqual(new Set([median(pulses.samples)]));
  });

  it('passes over lost samples and windows without any', () => {
    const samples = pulses.samples.map((each, i) => (i >= 3000 && i < 5000 ? Number.NaN : each));
    const level = baseline(pulses.time, samples, 1, 0.4);
    for (let i = 1000; i < 9000; i++) expect(Math.abs((level[i] ?? 0) - 2 - i / 10_000)).toBeLessThan(0.02);
    expect(baseline(pulses.time, samples.fill(Number.NaN), 1, 0.4).every(Number.isNaN)).toBe(true);
  });
});

describe('in an expression', () => {
  const names = {
    'a.v': samples('a', 'V', [0, 1, 2, 3, 4], [1, 2, 9, 4, 5], 0.1),
    'none.v': samples('none', 'V', [], []),
    'back.v': samples('back', 'V', [0, 2, 1], [1, 2, 3]),
  };
  const of = (text: string) => result(text, { names, functions: waveformFunctions() });
  const say = (text: string) => printed(of(text).value);

  it('a smoothed series and its baseline compute with the samples that they come from', () => {
    expect(say('smooth(a.v, 2 s)')).toBe('1 V, 4 V, 5 V, 6 V, 5 V');
    expect(say('a.v - baseline(a.v)')).toBe('-3 V, -2 V, 5 V, 0 V, 1 V');
    expect(say('max(baseline(a.v))')).toBe('4.0 ± 0.1 V');
  });

  it.each([
    ['smooth(none.v, 1 s)', /no samples/],
    ['smooth(a.v, 0 s)', /longer than 0 s/],
    ['baseline(a.v, -1 s)', /longer than 0 s/],
    ['baseline(a.v, share = 120 %)', /between 0 % and 100 %/],
    ['smooth(back.v, 1 s)', /runs backwards/],
  ])('%s cannot be computed, with a reason', (text, why) => {
    expect(say(text)).toMatch(/^cannot compute: /);
    expect(say(text)).toMatch(why);
  });

  it('one number is no series', () => {
    expect(of('smooth(max(a.v), 1 s)').diagnostics.map((each) => each.code)).toEqual(['wrong-argument']);
  });
});

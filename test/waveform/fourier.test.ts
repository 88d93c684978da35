import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { transform } from '../../core/waveform/fourier.ts';

describe('the Fourier transform', () => {
  // What the npm package fft.js 4.0.4 gives for the same numbers.
  it('of 1 2 3 4 4 3 2 1', () => {
    const re = Float64Array.of(1, 2, 3, 4, 4, 3, 2, 1);
    const im = new Float64Array(8);
    transform(re, im);
    const expected: readonly (readonly [number, number])[] = [
      [20, 0],
      [-5.828427, -2.414214],
      [0, 0],
      [-0.171573, -0.414214],
      [0, 0],
    ];
    for (const [k, [r, i]] of expected.entries()) {
      expect(re[k]).toBeCloseTo(r, 6);
      expect(im[k]).toBeCloseTo(i, 6);
    }
  });

  // Analytic: 62.5 and 125 Hz are the bins 64 and 128 of 1024 samples a millisecond apart.
  it('of sin 62.5 Hz + 0.5 sin 125 Hz has two bins, 1 and 0.5', () => {
    const size = 1024;
    const re = Float64Array.from({ length: size }, (_, n) => {
      const t = n / 1000;
      return Math.sin(2 * Math.PI * 62.5 * t) + 0.5 * Math.sin(2 * Math.PI * 125 * t);
    });
    const im = new Float64Array(size);
    transform(re, im);
    for (let k = 0; k <= size / 2; k++) {
      const amplitude = (2 * Math.hypot(re[k] ?? 0, im[k] ?? 0)) / size;
      expect(amplitude).toBeCloseTo(k === 64 ? 1 : k === 128 ? 0.5 : 0, 12);
    }
  });

  const numbers = (bits: number) =>
    fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 2 ** bits, maxLength: 2 ** bits });

  // Even and odd numbers of stages.
  it.each([1, 2, 3, 4, 5, 7])('of 2^%i numbers is its definition', (bits) => {
    const size = 2 ** bits;
    fc.assert(
      fc.property(numbers(bits), numbers(bits), (x, y) => {
        const re = Float64Array.from(x);
        const im = Float64Array.from(y);
        transform(re, im);
        for (let k = 0; k < size; k++) {
          let r = 0;
          let i = 0;
          for (let n = 0; n < size; n++) {
            const angle = (-2 * Math.PI * k * n) / size;
            r += (x[n] ?? 0) * Math.cos(angle) - (y[n] ?? 0) * Math.sin(angle);
            i += (x[n] ?? 0) * Math.sin(angle) + (y[n] ?? 0) * Math.cos(angle);
          }
          expect(re[k]).toBeCloseTo(r, 10);
          expect(im[k]).toBeCloseTo(i, 10);
        }
      }),
      { numRuns: 20 },
    );
  });

  it('keeps the energy (Parseval) and comes back as N times itself', () => {
    fc.assert(
      fc.property(numbers(6), (x) => {
        const re = Float64Array.from(x);
        const im = new Float64Array(64);
        transform(re, im);
        const squares = (a: ArrayLike<number>) => Array.from(a).reduce((sum, each) => sum + each * each, 0);
        expect((squares(re) + squares(im)) / 64).toBeCloseTo(squares(x), 9);
        transform(re, im, true);
        for (const [i, each] of x.entries()) expect((re[i] ?? 0) / 64).toBeCloseTo(each, 12);
      }),
    );
  });
});

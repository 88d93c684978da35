import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { injectorDuty, injectorFlow } from '../../../core/engine/fuel/injector.ts';
import { numberOf, psi, rpm, sentenceOf } from '../answers.ts';

describe('injector duty', () => {
  // The first two are published examples of a page on injector duty cycle, the others arithmetic: ms · rpm / 1200.
  it.each([
    [15, 3000, 37.5],
    [15, 6000, 75],
    [12, 6500, 65],
    [2.5, 750, 1.5625],
  ])('of %f ms at %i rpm is %f %%', (ms, speed, percent) => {
    expect(numberOf(injectorDuty(ms / 1000, rpm(speed))) * 100).toBeCloseTo(percent, 10);
  });

  it('passes 100 % when the pulse is longer than two turns', () => {
    expect(numberOf(injectorDuty(0.025, rpm(6000)))).toBeCloseTo(1.25, 12);
  });

  it('has none at 0 rpm or for a negative pulse', () => {
    expect(sentenceOf(injectorDuty(0.002, 0))).toBe(
      'At 0 rpm nothing is injected; the speed must be above 0 rpm.',
    );
    expect(sentenceOf(injectorDuty(-0.002, 10))).toBe('A pulse width of -2 ms does not exist.');
  });
});

describe('injector flow', () => {
  // Arithmetic from Bernoulli's law; the flow keeps its own unit.
  it.each([
    [240, 300e3, 350e3, 259.23],
    [240, 300e3, 400e3, 277.128],
    [240, 300e3, 250e3, 219.089],
    [24, 43.5 * psi, 58 * psi, 27.7128],
    [24, 43.5 * psi, 39.15 * psi, 22.7684],
  ])('of %f at %f Pa is at %f Pa %f', (flow, rated, actual, expected) => {
    expect(numberOf(injectorFlow(flow, rated, actual))).toBeCloseTo(expected, 3);
  });

  it('grows by 10.499 % when 300 kPa at the rail meet 35 kPa in the manifold (arithmetic)', () => {
    expect(numberOf(injectorFlow(1, 300e3, 300e3 + 101.3e3 - 35e3))).toBeCloseTo(1.10499, 5);
  });

  it('needs 22.474 % more time when the pressure falls from 300 to 200 kPa (arithmetic)', () => {
    expect(1 / numberOf(injectorFlow(1, 300e3, 200e3)) - 1).toBeCloseTo(0.22474, 5);
  });

  it('there and back is the flow again', () => {
    const pressure = fc.double({ min: 1e4, max: 3e7, noNaN: true });
    fc.assert(
      fc.property(pressure, pressure, (rated, actual) => {
        const there = numberOf(injectorFlow(4e-6, rated, actual));
        expect(numberOf(injectorFlow(there, actual, rated)) / 4e-6).toBeCloseTo(1, 12);
      }),
    );
  });

  it('refuses a pressure that would run it backwards, and a rating of nothing', () => {
    expect(sentenceOf(injectorFlow(240, 300e3, -20e3))).toBe(
      'With -20 kPa (-5.906 inHg) across it the injector would run backwards. Take rail pressure minus manifold pressure, both absolute.',
    );
    expect(sentenceOf(injectorFlow(240, 0, 20e3))).toContain('rated at');
    expect(sentenceOf(injectorFlow(-1, 1, 1))).toContain('flow');
  });
});

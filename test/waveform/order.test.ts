import { describe, expect, it } from 'vitest';
import { halfWidth } from '../../core/quantity/amount.ts';
import { orderAmplitude } from '../../core/waveform/order.ts';
import { turnsAlong } from '../../core/waveform/turns.ts';
import { waveformFunctions } from '../../core/waveform/waveformFunctions.ts';
import { printed, result } from '../support/expressionResult.ts';
import { samples } from '../support/expressionScope.ts';
import { moments, noise, number, record, signal, why } from './signals.ts';

function amplitude(time: Float64Array, at: (t: number) => number, rpm: number, order: number) {
  const of = record(time, signal(time, at));
  const turns = turnsAlong(of, rpm / 60);
  if (!(turns instanceof Float64Array)) expect.fail(turns.why);
  return orderAmplitude(of, turns, order);
}

describe('the amplitude of an engine order', () => {
  // Firing order n/2 at rpm/60·n/2 Hz: 800 rpm, 3 to 8 cylinders (arithmetic of the four-stroke cycle).
  it.each([
    [3, 1.5, 20.0],
    [4, 2, 26.667],
    [5, 2.5, 33.333],
    [6, 3, 40.0],
    [8, 4, 53.333],
  ])('of %i cylinders at 800 rpm is order %f, %f Hz', (_, order, hertz) => {
    const time = moments(1.5, 2000);
    const at = (t: number) => 2 + 0.7 * Math.sin(2 * Math.PI * ((800 / 60) * order) * t + 1);
    expect((800 / 60) * order).toBeCloseTo(hertz, 3);
    expect(number(amplitude(time, at, 800, order))).toBeCloseTo(0.7, 9);
  });

  it('tells one weak cylinder (order 0.5) from the firing of four (order 2)', () => {
    const time = moments(3, 1000);
    const base = (2 * Math.PI * 750) / 60;
    const at = (t: number) => 5 + 1 * Math.sin(2 * base * t) + 0.25 * Math.cos(0.5 * base * t);
    expect(number(amplitude(time, at, 750, 2))).toBeCloseTo(1, 9);
    expect(number(amplitude(time, at, 750, 0.5))).toBeCloseTo(0.25, 9);
    expect(number(amplitude(time, at, 750, 1))).toBeLessThan(1e-9);
  });

  it('of uneven samples is the same', () => {
    const next = noise(2);
    const time = moments(3, 500).map((t) => t + 0.0008 * next());
    const at = (t: number) => 0.3 * Math.sin(2 * Math.PI * 25 * t);
    expect(number(amplitude(time, at, 750, 2))).toBeCloseTo(0.3, 6);
  });

  it('follows a speed that changes', () => {
    const time = moments(4, 1000);
    // From 600 to 1400 rpm in 4 s: turns = 10·t + (200/60)·t²/2.
    const turned = (t: number) => 10 * t + ((200 / 60) * t * t) / 2;
    const names = {
      'run.x': samples(
        'run',
        'V',
        [...time],
        [...signal(time, (t) => 0.4 * Math.sin(2 * Math.PI * 2 * turned(t)))],
      ),
      'run.rpm': samples('run', 'rpm', [...time], [...signal(time, (t) => 600 + 200 * t)]),
    };
    const setting = { names, functions: waveformFunctions() };
    const { value, diagnostics } = result('order_amplitude(run.x, run.rpm, 2)', setting);
    expect(diagnostics).toEqual([]);
    if (value.kind !== 'one') expect.fail(value.kind);
    expect(value.amount.si).toBeCloseTo(0.4, 4);
    const steady = result('order_amplitude(run.x, 1000 rpm, 2)', setting).value;
    if (steady.kind !== 'one') expect.fail(steady.kind);
    expect(steady.amount.si).toBeLessThan(0.2);
  });

  it('of a speed that is not sure is not sure either, steady or as samples', () => {
    const time = moments(4, 500);
    // Over 4 s at 603 rpm a speed 3 rpm too high and one 3 rpm too low are not alike: the signal is at 600 rpm.
    const at = (t: number) => 0.4 * Math.sin(2 * Math.PI * 20 * t);
    const names = {
      'run.x': samples('run', 'V', [...time], [...signal(time, at)]),
      'run.rpm': samples('run', 'rpm', [...time], [...signal(time, () => 603)], 3),
    };
    const setting = { names, functions: waveformFunctions() };
    const widths = ['order_amplitude(run.x, run.rpm, 2)', 'order_amplitude(run.x, 603 rpm ± 3 rpm, 2)'].map(
      (text) => {
        const { value } = result(text, setting);
        if (value.kind !== 'one') expect.fail(printed(value));
        return halfWidth(value.amount);
      },
    );
    const exactly = (rpm: number): number => number(amplitude(time, at, rpm, 2));
    expect(widths[1]).toBeCloseTo(Math.abs(exactly(606) - exactly(600)) / 2, 6);
    expect(widths[1]).toBeGreaterThan(0.01);
    expect(widths[0]).toBeCloseTo(widths[1] ?? 0, 6);
  });

  it('names what is wrong', () => {
    const time = moments(1, 100);
    expect(why(amplitude(time, Math.sin, 3000, 2))).toContain('too sparse');
    expect(why(amplitude(time, Math.sin, 50, 0.5))).toContain('no whole cycle');
    expect(why(amplitude(time, Math.sin, 800, 0))).toContain('above 0');
    expect(why(turnsAlong(record(time, time), 0))).toContain('above 0');
  });
});

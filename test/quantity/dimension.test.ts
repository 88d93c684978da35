import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  acceleration,
  area,
  density,
  dimension,
  energyRate,
  force,
  frequency,
  length,
  mass,
  massFlow,
  over,
  plain,
  power,
  pressure,
  root,
  time,
  times,
  turnRate,
  volume,
  volumeFlow,
} from '../../core/quantity/dimension.ts';

const exponent = fc.integer({ min: -9, max: 9 });
const any = fc
  .tuple(exponent, exponent, exponent, exponent, exponent, exponent)
  .map((each) => dimension(...each));

describe('dimensions', () => {
  it('are the same object when their exponents are equal', () => {
    expect(dimension(-1, 1, -2, 0, 0, 0)).toBe(pressure);
    expect(dimension(0, 0, 0, 0, 0, 0)).toBe(plain);
    expect(times(pressure, area)).toBe(force);
    expect(times(mass, acceleration)).toBe(force);
    expect(over(mass, time)).toBe(massFlow);
    expect(times(density, volumeFlow)).toBe(massFlow);
    expect(times(pressure, volumeFlow)).toBe(energyRate);
    expect(root(volume, 3)).toBe(length);
    expect(root(area, 3)).toBeUndefined();
    expect(root(area, 0)).toBeUndefined();
    expect(power(area, 0)).toBe(plain);
    expect(turnRate).not.toBe(frequency);
  });
  it('have the trade’s name where it has one, otherwise their exponents', () => {
    expect(massFlow.name).toBe('mass flow');
    expect(dimension(2, 0, -1, 0, 0, 0).name).toBe('m^2·s^-1');
  });
  it('multiply as exponents add', () => {
    fc.assert(
      fc.property(any, any, any, (a, b, c) => {
        expect(times(a, b)).toBe(times(b, a));
        expect(times(times(a, b), c)).toBe(times(a, times(b, c)));
        expect(over(times(a, b), b)).toBe(a);
        expect(over(a, a)).toBe(plain);
        expect(over(plain, a)).toBe(power(a, -1));
      }),
    );
  });
  it('the n-th root undoes the n-th power', () => {
    fc.assert(fc.property(any, fc.integer({ min: 1, max: 5 }), (a, n) => root(power(a, n), n) === a));
  });
  it('no exponent is ever -0', () => {
    expect(power(mass, -1).exponents.every((each) => !Object.is(each, -0))).toBe(true);
    expect(power(mass, 0).exponents.every((each) => !Object.is(each, -0))).toBe(true);
  });
});

import { describe, expect, it } from 'vitest';
import { wireArea, wireDrop } from '../../../core/engine/electrical/wireDrop.ts';
import { numberOf, sentenceOf } from '../answers.ts';

const thousandFeet = 304.8;

describe('the voltage that a wire loses', () => {
  // Ohm per 1000 ft of copper at 20 °C, as a university's physics site prints it after Floyd's textbook; three or four digits.
  it.each([
    ['0 AWG', 0.0983],
    ['1 AWG', 0.124],
    ['2 AWG', 0.1563],
    ['4 AWG', 0.2485],
    ['6 AWG', 0.3951],
    ['8 AWG', 0.6282],
    ['10 AWG', 0.9989],
    ['12 AWG', 1.588],
    ['14 AWG', 2.525],
    ['16 AWG', 4.016],
    ['18 AWG', 6.385],
    ['20 AWG', 10.15],
    ['22 AWG', 16.14],
  ])('of %s is %f Ω in 1000 ft within the table’s digits', (size, ohm) => {
    const ours = numberOf(wireDrop(size, thousandFeet, 1));
    expect(Math.abs(ours / ohm - 1)).toBeLessThan(size === '1 AWG' ? 1e-3 : 5e-4);
  });

  // Arithmetic from those resistances: feet, amperes → V.
  it.each([
    ['18 AWG', 10, 5, 0.31925],
    ['4 AWG', 6, 150, 0.22365],
    ['14 AWG', 20, 10, 0.505],
  ])('of %s, %i ft, %i A is %f V', (size, feet, current, volts) => {
    expect(Math.abs(numberOf(wireDrop(size, feet * 0.3048, current)) / volts - 1)).toBeLessThan(5e-4);
  });

  // ASTM B258: the diameters that the gauge is defined by, 0.46 inch for 4/0 and 0.005 inch for 36.
  it('has the two diameters that define the gauge', () => {
    expect(numberOf(wireArea('4/0 AWG')) * 1e6).toBeCloseTo((Math.PI / 4) * (0.46 * 25.4) ** 2, 6);
    expect(numberOf(wireArea('36 AWG')) * 1e6).toBeCloseTo((Math.PI / 4) * (0.005 * 25.4) ** 2, 12);
  });

  it('reads a size as people write it', () => {
    for (const size of ['2/0 AWG', '00 AWG', 'AWG 00', '2/0awg'])
      expect(wireArea(size)).toBe(wireArea('2/0 AWG'));
    for (const size of ['35 mm2', '35 mm²', '35mm^2', ' 35.0 mm2 '])
      expect(numberOf(wireArea(size))).toBeCloseTo(35e-6, 15);
  });

  it('runs the other way with the current', () => {
    expect(numberOf(wireDrop('2 AWG', 1, -150))).toBe(-numberOf(wireDrop('2 AWG', 1, 150)));
  });

  it.each(['', '18', 'AWG', '41 AWG', '5/0 AWG', '0 mm2', '-2 mm2', '2 AWG 35 mm2', '1e3 mm2'])(
    'does not know the size "%s"',
    (size) => {
      expect(sentenceOf(wireDrop(size, 1, 1))).toContain(`The wire size "${size}" is not known`);
    },
  );

  it('refuses a length below nothing', () => {
    expect(sentenceOf(wireDrop('2 AWG', -1, 1))).toContain('-1 m');
  });
});

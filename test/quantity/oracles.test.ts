import { UcumLhcUtils } from '@lhncbc/ucum-lhc';
import { Units } from '@qudtlib/allunits';
import Qty from 'js-quantities';
import { describe, expect, it } from 'vitest';
import { convert } from '../../core/quantity/convert.ts';
import { unitOf } from '../../core/quantity/unit.ts';

/*
 * General unit libraries as a second opinion. They round: psi is 6894.757293168361 Pa exactly,
 * 6894.76 in js-quantities and 6894.7576025 in QUDT, so a tolerance says how far a library is known to be off
 * and why; the exact definitions are tested beside the table.
 */
function ours(value: number, from: string, to: string): number {
  const a = unitOf(from);
  const b = unitOf(to);
  if (a === undefined || b === undefined) throw new Error(`${from} or ${to} is no unit`);
  return convert(value, a, b) ?? Number.NaN;
}

const rounding = 1e-12;

describe('js-quantities 1.8', () => {
  it.each([
    // its psi is 6894.76: 4e-7
    [45, 'psi', 'psi', 'kPa', 'kPa', 5e-7],
    // its inHg is 3386.388… to seven digits
    [29.92, 'inHg', 'inHg', 'kPa', 'kPa', 5e-7],
    // its inH2O is the column at 39.2 °F, 249.082 Pa: 2.8e-5 below the conventional one
    [10, 'inH2O', 'inH2O', 'Pa', 'Pa', 3e-5],
    [195, '°F', 'tempF', '°C', 'tempC', 1e-12],
    [-40, '°C', 'tempC', '°F', 'tempF', 1e-12],
    [12, 'lb/min', 'lb/min', 'g/s', 'g/s', rounding],
    // its km/h is 0.277777778 m/s: 8e-10
    [60, 'mph', 'mph', 'km/h', 'kph', 1e-9],
    [2.5, 'L', 'liter', 'inch³', 'in^3', rounding],
    // its horsepower is 745.7
    [100, 'hp', 'hp', 'kW', 'kW', 5e-7],
    // its gallon is 0.0037854118 m³: 4.2e-9
    [10, 'gal/h', 'gal/h', 'L/h', 'l/h', 5e-9],
    [0.79, 'V', 'V', 'mV', 'mV', rounding],
    [12, 'Ω', 'ohm', 'kΩ', 'kohm', rounding],
  ])('%s %s', (value, from, theirFrom, to, theirTo, tolerance) => {
    const theirs = Qty(value, theirFrom).to(theirTo).scalar;
    expect(Math.abs(ours(value, from, to) / theirs - 1)).toBeLessThan(tolerance);
  });
});

describe('QUDT 7.1', () => {
  it.each([
    // printed to seven digits
    ['inHg', 'IN_HG', 2e-7],
    ['mmHg', 'MilliM_HG', rounding],
    // printed to seven digits
    ['inH2O', 'IN_H2O', 4.1e-8],
    // derived from a rounded pound-force: 4.5e-8
    ['psi', 'PSI', 5e-8],
    ['bar', 'BAR', rounding],
    ['lb/min', 'LB__PER__MIN', rounding],
    ['hp', 'HP', 4e-8],
    ['oz', 'OZ', rounding],
    ['qt', 'QT_US', rounding],
    ['%', 'PERCENT', rounding],
    ['ppm', 'PPM', rounding],
  ])('%s', (symbol, name, tolerance) => {
    const theirs = (Units as unknown as Record<string, { conversionMultiplier: number }>)[name];
    expect(Math.abs((unitOf(symbol)?.factor ?? 0) / Number(theirs?.conversionMultiplier) - 1)).toBeLessThan(
      tolerance,
    );
  });

  it('°F has the same offset: 459.67 degrees before the factor', () => {
    const theirs = Units.DEG_F;
    const offset = Number(theirs.conversionOffset) * Number(theirs.conversionMultiplier);
    expect(unitOf('°F')?.offset).toBeCloseTo(offset, 12);
  });
});

describe('UCUM 2.1 (@lhncbc/ucum-lhc)', () => {
  const ucum = UcumLhcUtils.getInstance();
  it.each([
    // UCUM takes 133.322 kPa for a metre of mercury: 2.9e-6 below the conventional column
    ['inHg', "[in_i'Hg]", 'Pa', 'Pa', 3e-6],
    ['mmHg', 'mm[Hg]', 'Pa', 'Pa', 3e-6],
    ['inH2O', "[in_i'H2O]", 'Pa', 'Pa', rounding],
    ['psi', '[psi]', 'Pa', 'Pa', rounding],
    ['gal/h', '[gal_us]/h', 'mL/s', 'mL/s', rounding],
    ['lb·ft', '[ft_i].[lbf_av]', 'J', 'J', rounding],
    ['hp', '[HP]', 'W', 'W', rounding],
    ['lb/min', '[lb_av]/min', 'g/s', 'g/s', rounding],
    ['km/h', 'km/h', 'mph', '[mi_i]/h', rounding],
    ['kgf/cm²', 'kgf/cm2', 'kPa', 'kPa', rounding],
    ['°F', '[degF]', '°C', 'Cel', 1e-11],
  ])('%s', (from, theirFrom, to, theirTo, tolerance) => {
    const theirs = ucum.convertUnitTo(theirFrom, 1, theirTo).toVal ?? Number.NaN;
    expect(Math.abs(ours(1, from, to) / theirs - 1)).toBeLessThan(tolerance);
  });
});

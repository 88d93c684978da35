import { evaluate } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { fromSi } from '../../core/quantity/convert.ts';
import { unitOf } from '../../core/quantity/unit.ts';
import { checkCase } from '../../core/rules/checkCase.ts';

/*
 * The rows against mathjs: what a technician types, with the trade's units, through the whole of the core,
 * beside the same formula typed into mathjs with its own units. A slip of a factor or of a unit in a row shows here.
 */
const air = '(8.314462618 J/(mol K) / (28.9644 g/mol))';

const mathjsUnits: Readonly<Record<string, string>> = {
  mΩ: 'milliohm',
  Ah: 'A hour',
  h: 'hour',
  'cc/min': 'cc/minute',
};

/** The value of an expression of a case, in this unit. */
function ours(expression: string, symbol: string): number {
  const studied = checkCase(
    `diag: 1\ncase: One sum\n---\ncheck: A sum\nlet:\n  asked: |\n    ${expression}\n`,
  );
  const value = studied.computed[0]?.value;
  const unit = unitOf(symbol);
  if (value?.kind !== 'one' || unit === undefined) expect.fail(`${expression}: ${JSON.stringify(value)}`);
  expect(value.type.dimension).toBe(unit.dimension);
  return fromSi(value.amount.si, unit, value.type.kind);
}

describe('the functions about engines, beside mathjs', () => {
  it.each([
    [
      'airflow(95 kPa, 30 °C, 3000 rpm, 88 %, 2.4 L)',
      'g/s',
      `0.88 * 95 kPa * 2.4 L * 3000 / (60 s) / 2 / (${air} * 303.15 K)`,
    ],
    [
      'volumetric_efficiency(60 g/s, 3000 rpm, 29.6 inHg, 68 °F, 2.4 L)',
      '1',
      `60 g/s / (29.6 * 3386.388640341 Pa / (${air} * 293.15 K) * 2.4 L * 3000 / (60 s) / 2)`,
    ],
    [
      'absolute_load(3.31 lb/min, 2500 rpm, 2.0 L)',
      '1',
      '3.31 lbm/minute / (1.184 g/L * 2.0 L * 2500 / (60 s) / 2)',
    ],
    ['air_per_stroke(5.7 g/s, 700 rpm, 8)', 'g', '5.7 g/s / (700 / (60 s) / 2 * 8)'],
    [
      'injected_fuel(3.2 ms, 2000 rpm, 0.9 ms, 24 cc/min, 4, 0.745 kg/L)',
      'g/s',
      '2000 / (60 s) / 2 * 4 * 24 cc/minute * 0.745 kg/L * 2.3 ms',
    ],
    ['injector_flow(240 cc/min, 43.5 psi, 50 psi)', 'cc/min', '240 cc/minute * sqrt(50 psi / (43.5 psi))'],
    ['injector_pressure(45 psi, 12 inHg, 29.9 inHg)', 'kPa', '45 psi + 17.9 * 3386.388640341 Pa'],
    ['air_for_fuel(0.9 lb/h, 1.05, "methane")', 'g/s', '0.9 lbm/hour * 1.05 * 34.56 * 8 / (12.011 + 4.032)'],
    [
      'blend_ratio(30 %, 14.6, 9.0, 6.2 lb/gal, 6.58 lb/gal)',
      '1',
      '(0.7 * 6.2 * 14.6 + 0.3 * 6.58 * 9) / (0.7 * 6.2 + 0.3 * 6.58)',
    ],
    ['piston_speed(5500 rpm, 3.54 inch)', 'm/s', '2 * 3.54 inch * 5500 / (60 s)'],
    [
      'piston_position(60 °ATDC, 90 mm, 150 mm)',
      'mm',
      '45 mm * (1 - cos(60 deg)) + 150 mm - sqrt((150 mm)^2 - (45 mm * sin(60 deg))^2)',
    ],
    ['compression_pressure(9.5, 14.5 psi, 1.28)', 'psi', '14.5 psi * 9.5^1.28'],
    ['compression_at(180 psi, 29.9 inHg, 23.5 inHg)', 'psi', '180 psi * 23.5 / 29.9'],
    ['wire_resistance("35 mm2", 6 m, 60 °C)', 'mΩ', '1.7241e-8 ohm m * 6 m / (35 mm^2) * (1 + 0.00393 * 40)'],
    [
      'wire_drop("12 AWG", 20 ft, 15 A)',
      'V',
      '15 A * 1.7241e-8 ohm m * 20 ft / (pi / 4 * (0.005 inch * 92^(24 / 39))^2)',
    ],
    [
      'coil_current(12.6 V, 0.5 Ω, 4 mH, 3 ms)',
      'A',
      '12.6 V / (0.5 ohm) * (1 - exp(-3 ms * 0.5 ohm / (4 mH)))',
    ],
    [
      'time_to_current(6.5 A, 13.8 V, 0.7 Ω, 3.8 mH)',
      'ms',
      '-(3.8 mH) / (0.7 ohm) * log(1 - 6.5 A * 0.7 ohm / (13.8 V))',
    ],
    ['ramp_inductance(13.8 V, 1.2 A, 0.3 ms)', 'mH', '13.8 V * 0.3 ms / (1.2 A)'],
    ['coil_energy(6.5 A, 3.8 mH)', 'mJ', '0.5 * 3.8 mH * (6.5 A)^2'],
    ['internal_resistance(12.6 V, 9.9 V, 210 A)', 'mΩ', '(12.6 V - 9.9 V) / (210 A)'],
    ['parked_charge(5.5 A, 25 min, 35 mA, 5 day)', 'Ah', '5.5 A * 25 minute + 35 mA * (5 day - 25 minute)'],
    ['time_parked(70 Ah, 55 mA, 85 %, 50 %)', 'h', '70 A hour * 0.35 / (55 mA)'],
    ['divider_volts(1.8 kΩ, 5 V, 2.2 kΩ)', 'V', '5 V * 1.8 / 4.0'],
    ['ratiometric_volts(20 psi gauge, 5 V, 0 psi gauge, 100 psi gauge)', 'V', '5 V * (0.1 + 0.2 * 0.8)'],
    ['order_frequency(1.5, 2200 rpm)', 'Hz', '1.5 * 2200 / (60 s)'],
    ['firing_frequency(850 rpm, 6)', 'Hz', '3 * 850 / (60 s)'],
    ['ripple_frequency(900 rpm, 2.7, 8)', 'Hz', '6 * 8 * 2.7 * 900 / (60 s)'],
    ['dwell_time(30 °, 1500 rpm, 6)', 'ms', '30 deg / (360 deg) * 2 * 60 s / 1500'],
  ])('%s in %s', (expression, symbol, formula) => {
    const expected = Number(
      evaluate(
        symbol === '1' ? `number(${formula})` : `number(${formula}, ${mathjsUnits[symbol] ?? symbol})`,
      ),
    );
    // The gas constant of dry air is 287.05 here and 287.055 by molar mass; mathjs rounds psi in the ninth digit.
    expect(Math.abs(ours(expression, symbol) / expected - 1)).toBeLessThan(
      formula.includes('mol') ? 3e-5 : 5e-7,
    );
  });
});

import { describe, expect, it } from 'vitest';
import { convert, fromSi, toSi } from '../../core/quantity/convert.ts';
import { plain, times, turn } from '../../core/quantity/dimension.ts';
import { nearestUnits } from '../../core/quantity/nearestUnits.ts';
import { notUnits } from '../../core/quantity/scan.ts';
import type { Unit } from '../../core/quantity/types.ts';
import {
  allUnits,
  percentUnit,
  plainUnit,
  powerUnit,
  productUnit,
  quotientUnit,
  rootUnit,
  siUnit,
  unitOf,
} from '../../core/quantity/unit.ts';
import { unitRows } from '../../core/quantity/unitTable.ts';

function unit(text: string): Unit {
  const found = unitOf(text);
  if (found === undefined) throw new Error(`${text} is no unit`);
  return found;
}

describe('factors are the exact definitions', () => {
  // NIST SP 811 (2008), appendices B.8 and B.9; NIST Handbook 44, appendix C; BIPM SI brochure, 9th edition.
  // Each row is worked out from its definition beside it.
  const inch = 0.0254;
  const foot = 0.3048;
  const pound = 0.45359237;
  const gravity = 9.80665;
  const gallon = 231 * inch ** 3;
  it.each([
    ['inHg', 13595.1 * gravity * inch],
    ['cmHg', 13595.1 * gravity * 0.01],
    ['mmHg', 13595.1 * gravity * 0.001],
    ['inH2O', 1000 * gravity * inch],
    ['mmH2O', 1000 * gravity * 0.001],
    ['psi', (pound * gravity) / inch ** 2],
    ['bar', 1e5],
    ['mbar', 100],
    ['hPa', 100],
    ['atm', 101325],
    ['Torr', 101325 / 760],
    ['kgf/cm²', gravity / 0.01 ** 2],
    ['lb', pound],
    ['oz', pound / 16],
    ['lbf', pound * gravity],
    ['lb·ft', pound * gravity * foot],
    ['inch·lb', pound * gravity * inch],
    ['hp', 550 * pound * gravity * foot],
    ['lb/min', pound / 60],
    ['lb/h', pound / 3600],
    ['kg/h', 1 / 3600],
    ['g/s', 0.001],
    ['gal', gallon],
    ['qt', gallon / 4],
    ['pt', gallon / 8],
    ['gal/h', gallon / 3600],
    ['L/h', 0.001 / 3600],
    ['cfm', foot ** 3 / 60],
    ['ft³/min', foot ** 3 / 60],
    ['mi', 5280 * foot],
    ['mph', (5280 * foot) / 3600],
    ['km/h', 1000 / 3600],
    ['inch³', inch ** 3],
    ['thou', inch / 1000],
    ['°', 1 / 360],
    ['rpm', 1 / 60],
    ['°F', 1 / 1.8],
    ['Ah', 3600],
    ['kWh', 3.6e6],
    ['g/L', 1],
    ['kΩ/V', 1000],
    ['%', 0.01],
    ['ppm', 1e-6],
  ])('%s', (symbol, factor) => {
    expect(Math.abs(unit(symbol).factor / factor - 1)).toBeLessThan(4e-16);
  });

  it('holds the decimals of the definition where they are exact', () => {
    expect(unit('inHg').factor).toBe(3386.388640341);
    expect(unit('inH2O').factor).toBe(249.08891);
    expect(unit('mmHg').factor).toBe(133.322387415);
    expect(unit('kgf/cm²').factor).toBe(98066.5);
    expect(unit('lb/min').factor * 1000).toBe(7.559872833333333);
  });

  // Arithmetic from the same definitions, to six decimals.
  it.each([
    [101.325, 'kPa', 'inHg', 29.921256],
    [101.325, 'kPa', 'psi', 14.695949],
    [101.325, 'kPa', 'mmHg', 759.999892],
    [45, 'psi', 'kPa', 310.264078],
    [195, '°F', '°C', 90.555556],
    [-40, '°C', '°F', -40],
    [10, 'gal/h', 'mL/s', 10.515033],
    [60, 'mph', 'km/h', 96.56064],
    [1, 'lb/min', 'g/s', 7.559873],
    [800, 'rpm', 'turn/s', 13.333333],
  ])('%s %s in %s… is %s', (value, from, to, expected) => {
    expect(convert(value, unit(from), unit(to))).toBeCloseTo(expected, 6);
  });

  it('a sea-level atmosphere is 29.92126 inHg, and 29.92 its rounding', () => {
    expect(convert(1, unit('atm'), unit('inHg'))).toBeCloseTo(29.92126, 5);
  });

  it('the mercury column is the one at 0 °C, not the one at 60 °F', () => {
    // NIST SP 811 prints 3386.38 Pa (32 °F) and 3376.85 Pa (60 °F): 0.28 % apart.
    expect(Math.abs(unit('inHg').factor - 3386.38)).toBeLessThan(0.01);
    expect(unit('inHg').factor / 3376.85 - 1).toBeCloseTo(0.0028, 4);
  });

  it('a difference of 18 °F is 10 K: intervals have no offset', () => {
    expect(fromSi(toSi(18, unit('°F'), 'difference'), unit('K'), 'difference')).toBeCloseTo(10, 13);
    expect(toSi(18, unit('°F'), 'point')).toBeCloseTo(265.372222, 6);
  });

  it('unlike dimensions do not convert', () => {
    expect(convert(1, unit('psi'), unit('V'))).toBeUndefined();
    expect(convert(1, unit('rpm'), unit('Hz'))).toBeUndefined();
  });
});

describe('the table', () => {
  it('has each symbol and spelling once, and each leads to its row', () => {
    const seen = new Set<string>();
    for (const row of unitRows) {
      for (const spelling of [row.symbol, ...row.also]) {
        expect(seen.has(spelling), spelling).toBe(false);
        seen.add(spelling);
        expect(unitOf(spelling)?.symbol, spelling).toBe(row.symbol);
      }
      expect(row.name.length, row.symbol).toBeGreaterThan(2);
      expect(row.source.length, row.symbol).toBeGreaterThan(10);
    }
    expect(allUnits()).toHaveLength(unitRows.length);
  });

  it('has no word of the expression language', () => {
    for (const word of notUnits) expect(unitOf(word), word).toBeUndefined();
  });

  it('can be typed without special characters', () => {
    for (const row of unitRows) {
      const ascii = [row.symbol, ...row.also].filter((each) => /^[ -~]+$/.test(each));
      expect(ascii.length, row.symbol).toBeGreaterThan(0);
    }
  });

  it('ratios agree with factors', () => {
    for (const { ratio, factor, symbol } of unitRows) {
      if (ratio !== undefined)
        expect(Number(ratio[0]) / Number(ratio[1]) / factor, symbol).toBeCloseTo(1, 15);
    }
  });

  it('a crank angle is a turn, engine speed turns per time and no frequency', () => {
    expect(unit('°CA').dimension).toBe(turn);
    expect(unit('turn/min').dimension).toBe(unit('rpm').dimension);
    expect(unit('rpm').dimension).not.toBe(unit('Hz').dimension);
    expect(unit('°BTDC').kind).toBe('btdc');
  });
});

describe('unitOf', () => {
  it.each([
    ['degF', '°F'],
    ['kohm', 'kΩ'],
    ['us', 'µs'],
    ['μs', 'µs'],
    ['lb.ft', 'lb·ft'],
    ['ft·lb', 'lb·ft'],
    ['N·m', 'Nm'],
    ['kgf/cm2', 'kgf/cm²'],
    ['kgf/cm^2', 'kgf/cm²'],
    ['m/s^2', 'm/s²'],
    ['m/s/s', 'm/s²'],
    ['m·s^-1', 'm/s'],
    ['s^-1', 's⁻¹'],
    ['s⁻¹', 's⁻¹'],
    ['kg.m/s²', 'kg·m/s²'],
    ['mg/stroke', 'mg/stroke'],
    ['g/kWh', 'g/kWh'],
    ['°C/V', '°C/V'],
    ['lb·ft/s', 'lb·ft/s'],
  ])('%s is %s', (text, symbol) => {
    expect(unitOf(text)?.symbol).toBe(symbol);
  });

  it('reads its own symbols, and equal units are the same object', () => {
    for (const text of ['m/s', 'kg/m/s²', 's⁻¹', 'kPa⁻¹·s⁻²', 'V·A', 'g/s', 'kgf/cm²', '%/s']) {
      const first = unit(text);
      expect(unitOf(first.symbol)).toBe(first);
    }
    expect(unit('m/s/s')).toBe(unit('m/s²'));
  });

  it.each([
    '',
    ' ',
    'in',
    'PSI',
    'psig',
    'V/(A)s',
    'V/A·s',
    'a/b',
    '/s',
    'g/',
    'g//s',
    'g·',
    'V V',
    'V/V',
    'm^',
    'm^0',
    'm^1.5',
    'm^x',
    'm^100',
    'V2',
    'cm4',
    '5',
    '5V',
    '1/s',
    'mg/stroke/V',
    '°BTDC/s',
    '__proto__',
    'constructor',
    'g/constructor',
    `${'m·'.repeat(40)}s`,
  ])('%j is refused', (text) => {
    expect(unitOf(text)).toBeUndefined();
  });
});

describe('units of products, quotients and powers', () => {
  const symbol = (found: Unit | undefined): string | undefined => found?.symbol;
  it.each([
    ['V', 'A', 'V·A', 'V/A'],
    ['g/s', 's', 'g', 'g/s²'],
    ['inHg', '%', 'inHg', 'inHg'],
    ['%', 'g/s', 'g/s', '%·s/g'],
    ['%', '%', '%', '%'],
    ['%', '1', '%', '%'],
    ['1', 'V', 'V', 'V⁻¹'],
    ['1', '1', '1', '1'],
    ['kPa', 'kPa', 'kPa²', '1'],
    ['kPa', 'inHg', 'kPa·inHg', '1'],
    ['%/s', 's', '%', '%/s²'],
    ['mg/stroke', 'rpm', 'mg·rpm', 'mg/rpm'],
    ['°BTDC', 'ms', '°·ms', '°/ms'],
    ['ppm', 'ppm', '1', '1'],
    ['N', 'm', 'Nm', 'N/m'],
    ['A', 'h', 'Ah', 'A/h'],
    ['lbf', 'ft', 'lb·ft', 'lbf/ft'],
    // `lb·ft` is a torque; pounds of mass times feet are none.
    ['lb', 'ft', 'm·kg', 'lb/ft'],
    ['ft', 'lb', 'm·kg', 'ft/lb'],
  ])('%s and %s give %s and %s', (a, b, product, quotient) => {
    expect(symbol(productUnit(unit(a), unit(b)))).toBe(product);
    expect(symbol(quotientUnit(unit(a), unit(b)))).toBe(quotient);
  });

  it('powers and roots', () => {
    expect(symbol(powerUnit(unit('V'), 2))).toBe('V²');
    expect(symbol(powerUnit(unit('m/s'), -2))).toBe('s²/m²');
    expect(powerUnit(unit('V'), 0)).toBe(plainUnit);
    expect(powerUnit(percentUnit, 2)).toBe(percentUnit);
    expect(symbol(rootUnit(unit('m²/s²'), 2))).toBe('m/s');
    expect(symbol(rootUnit(unit('gal'), 3))).toBe('m');
    expect(rootUnit(unit('V'), 2)).toBeUndefined();
    expect(symbol(siUnit(unit('psi').dimension))).toBe('kg/m/s²');
  });

  const joined = ['g/s', 'L/h', '%/s', 'cm²', 'kgf/cm²', 'ft³/min'].map(unit);
  const all = [...allUnits(), ...joined];

  it('the joined unit of any two has the dimension and the factor of the product', () => {
    for (const a of all) {
      for (const b of all) {
        const product = productUnit(a, b);
        const named = `${a.symbol} times ${b.symbol}`;
        expect(product.dimension, named).toBe(times(a.dimension, b.dimension));
        if (product.dimension === plain) continue;
        // Beside a plain number the other's unit stays; where the joined symbol is taken, SI serves.
        const factors = [a, b].map((each) => (each.dimension === plain ? 1 : each.factor));
        const factor =
          product.symbol === siUnit(product.dimension).symbol ? 1 : (factors[0] ?? 0) * (factors[1] ?? 0);
        if (product.offset === 0) expect(product.factor / factor, named).toBeCloseTo(1, 14);
        const again = unit(product.symbol);
        expect(again.dimension, named).toBe(product.dimension);
        expect(again.factor / product.factor, named).toBeCloseTo(1, 14);
      }
    }
  });

  it('also where more combinations were made than are kept', () => {
    const symbols = 'kg g mg lb oz m km cm mm inch ft mi s ms min h V mV A mA W kW N kN lbf J'.split(' ');
    for (const a of symbols) for (const b of symbols) for (const c of symbols) unitOf(`${a}·${b}/${c}`);
    const twice = productUnit(productUnit(unit('kPa'), unit('hPa')), unit('mV'));
    expect(twice.dimension).toBe(
      times(times(unit('kPa').dimension, unit('hPa').dimension), unit('V').dimension),
    );
    expect(twice.factor).toBeCloseTo(1000 * 100 * 0.001, 9);
    expect(quotientUnit(productUnit(unit('kPa'), unit('hPa')), unit('kPa')).factor).toBeCloseTo(100, 9);
  });
});

describe('nearestUnits', () => {
  it.each([
    ['psig', ['psi gauge']],
    ['F', ['°F']],
    ['C', ['°C']],
    ['in', ['inch']],
    ['ft-lb', ['lb·ft']],
    ['inhg', ['inHg']],
    ['InHg', ['inHg']],
    ['KPA', ['kPa']],
    ['Rpm', ['rpm']],
    ['gm/s', ['g/s']],
    ['V/A·s', ['V/A/s', 'V·s/A']],
    ['zzzzzz', []],
    ['__proto__', []],
  ])('%s: %j', (text, expected) => {
    if (unitOf(text) === undefined) expect(nearestUnits(text)).toEqual(expected);
    else expect(text).toBe('F');
  });

  it('offers what can be written in its place', () => {
    for (const text of ['psig', 'kpa', 'volts', 'deg F', 'ms/', 'kohms', 'lbs/min', 'l/hr', 'g/sec']) {
      for (const offer of nearestUnits(text)) expect(unitOf(offer.split(' ')[0] ?? ''), offer).toBeDefined();
    }
  });
});

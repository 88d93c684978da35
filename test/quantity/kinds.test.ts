import { describe, expect, it } from 'vitest';
import { message } from '../../core/diagnostics/words.ts';
import {
  addTypes,
  compareTypes,
  divideTypes,
  fitType,
  kindDiagnostic,
  multiplyTypes,
  type Operand,
  powerType,
  rootType,
  subtractTypes,
  type TypeAnswer,
  withinTypes,
} from '../../core/quantity/kinds.ts';
import { scanQuantity } from '../../core/quantity/scan.ts';
import { plainUnit, unitOf } from '../../core/quantity/unit.ts';
import { applyEdits } from '../../core/text/edits.ts';
import { span } from '../../core/text/span.ts';

/** Names stand for readings of a kind; anything else is a literal. */
const readings: Readonly<Record<string, readonly [string, Operand['kind'], Partial<Operand>?]>> = {
  map: ['kPa', 'absolute', { isManifold: true }],
  baro: ['inHg', 'absolute', { isBarometer: true }],
  koeo_map: ['inHg', 'absolute', { isBarometer: true, isManifold: true }],
  absolute: ['kPa', 'absolute'],
  gauge: ['psi', 'gauge'],
  vacuum: ['inHg', 'vacuum'],
  rise: ['kPa', 'difference'],
  let_open: ['psi', 'open'],
  ect: ['°F', 'point'],
  iat: ['°C', 'point'],
  warmed: ['°C', 'difference'],
  spark: ['°BTDC', 'btdc'],
  ivo: ['°BTDC', 'btdc'],
  evc: ['°ATDC', 'atdc'],
  ivc: ['°ABDC', 'abdc'],
  drift: ['°CA', 'none'],
  stft: ['%', 'none'],
  lambda: ['1', 'none'],
  co: ['ppm', 'none'],
  maf: ['g/s', 'none'],
  volts: ['V', 'none'],
  amps: ['A', 'none'],
};

function operand(text: string): Operand {
  const known = readings[text];
  if (known !== undefined) {
    const unit = unitOf(known[0]) ?? plainUnit;
    return { dimension: unit.dimension, unit, kind: known[1], text, ...known[2] };
  }
  const quantity = scanQuantity(text, 0)?.quantity;
  if (quantity === undefined) throw new Error(`${text} is no operand`);
  const { unit, kind, kindGiven, value } = quantity;
  const number = unit === plainUnit ? { number: value } : {};
  return { dimension: unit.dimension, unit, kind, bare: !kindGiven, text, ...number };
}

/** "inHg absolute", "… (right as difference)", "… !" when warned, or the code of the problem. */
function show(answer: TypeAnswer): string {
  if (answer.problem !== undefined) return answer.problem.code;
  const { type, leftAs, rightAs, warning } = answer;
  const notes = [
    leftAs === undefined ? '' : ` (left as ${leftAs})`,
    rightAs === undefined ? '' : ` (right as ${rightAs})`,
    warning === undefined ? '' : ' !',
  ];
  return `${type.unit.symbol} ${type.kind}${notes.join('')}`;
}

describe('sums', () => {
  it.each([
    // absolute − absolute is a difference
    ['baro - map', 'inHg difference'],
    ['ect - iat', '°F difference'],
    // absolute, gauge, vacuum ± difference keeps its kind
    ['map + rise', 'kPa absolute'],
    ['map - rise', 'kPa absolute'],
    ['gauge + rise', 'psi gauge'],
    ['gauge - rise', 'psi gauge'],
    ['vacuum + rise', 'inHg vacuum'],
    ['vacuum - rise', 'inHg vacuum'],
    ['ect + warmed', '°F point'],
    ['ect - warmed', '°F point'],
    ['rise + map', 'kPa absolute'],
    ['rise + gauge', 'kPa gauge'],
    ['warmed + ect', '°C point'],
    // difference ± difference is a difference
    ['rise + rise', 'kPa difference'],
    ['rise - rise', 'kPa difference'],
    ['warmed - warmed', '°C difference'],
    // absolute + gauge, absolute ± vacuum are absolute, warned unless the trade does so
    ['baro + gauge', 'inHg absolute'],
    ['gauge + baro', 'psi absolute'],
    ['koeo_map + gauge', 'inHg absolute'],
    ['map + gauge', 'kPa absolute !'],
    ['absolute + gauge', 'kPa absolute !'],
    ['baro - vacuum', 'inHg absolute'],
    ['koeo_map - vacuum', 'inHg absolute'],
    ['map - vacuum', 'kPa absolute !'],
    ['map + vacuum', 'kPa absolute'],
    ['vacuum + map', 'inHg absolute'],
    ['baro + vacuum', 'inHg absolute !'],
    ['koeo_map + vacuum', 'inHg absolute !'],
    // gauge − gauge, vacuum − vacuum, gauge + vacuum are differences
    ['gauge - gauge', 'psi difference'],
    ['vacuum - vacuum', 'inHg difference'],
    ['gauge + vacuum', 'psi difference'],
    ['vacuum + gauge', 'inHg difference'],
    // all other sums are errors, two of one kind included
    ['map + map', 'kinds-in-sum'],
    ['gauge + gauge', 'kinds-in-sum'],
    ['vacuum + vacuum', 'kinds-in-sum'],
    ['ect + iat', 'kinds-in-sum'],
    ['map - gauge', 'kinds-in-sum'],
    ['gauge - map', 'kinds-in-sum'],
    ['vacuum - map', 'kinds-in-sum'],
    ['gauge - vacuum', 'kinds-in-sum'],
    ['vacuum - gauge', 'kinds-in-sum'],
    ['rise - map', 'kinds-in-sum'],
    ['rise - gauge', 'kinds-in-sum'],
    ['warmed - ect', 'kinds-in-sum'],
    // a literal without a qualifier is a difference to the right of + and −
    ['map + 3 psi', 'kPa absolute (right as difference)'],
    ['gauge - 3 psi', 'psi gauge (right as difference)'],
    ['rise + 3 psi', 'kPa difference (right as difference)'],
    ['ect - 18 °F', '°F point (right as difference)'],
    ['warmed + 18 °F', '°C difference (right as difference)'],
    ['map - let_open', 'kPa absolute (right as difference)'],
    // one with a qualifier is what it says
    ['baro - 29 inHg absolute', 'inHg difference'],
    ['ect - 20 °C point', '°F difference'],
    ['map + 3 psi absolute', 'kinds-in-sum'],
    // to the left a temperature is a point, and a pressure stays open
    ['20 °C + warmed', '°C point'],
    ['20 °C - ect', '°C difference'],
    ['20 °C + ect', 'kinds-in-sum'],
    ['3 psi + 2 psi', 'psi open (right as difference)'],
    ['3 psi - rise', 'psi open'],
    ['3 psi + map', 'psi absolute (left as difference)'],
    ['101 kPa - map', 'kPa difference (left as absolute)'],
    ['45 psi - gauge', 'psi difference (left as gauge)'],
    // where two readings have a meaning, the author says
    ['14.7 psi + gauge', 'kind-undecided'],
    ['29.9 inHg - vacuum', 'kind-undecided'],
    ['29.9 inHg + vacuum', 'kind-undecided'],
    ['14.7 psi absolute + gauge', 'psi absolute !'],
    // crank positions
    ['spark - ivo', '°CA difference'],
    ['spark + 10 °', '°BTDC btdc (right as difference)'],
    ['spark - drift', '°BTDC btdc'],
    ['drift + spark', '°BTDC btdc'],
    ['drift + drift', '°CA difference'],
    ['spark + ivo', 'kinds-in-sum'],
    ['spark - evc', 'crank-marks-differ'],
    ['evc - ivc', 'crank-marks-differ'],
    ['drift - spark', 'kinds-in-sum'],
    // what has no kinds
    ['volts + 0.1 V', 'V none'],
    ['stft + stft', '% none'],
    ['stft + 1', '% none'],
    ['1 + stft', '% none'],
    ['lambda + 0.02', '1 none'],
    ['lambda - 2 %', '% none'],
    ['stft + 10', 'percent-beside-number'],
    ['10 - stft', 'percent-beside-number'],
    ['co + 200', 'percent-beside-number'],
    ['map + volts', 'dimensions-differ'],
    ['stft + map', 'dimensions-differ'],
  ])('%s is %s', (sum, expected) => {
    const [, left = '', operator, right = ''] = /^(.+?) ([+-]) (.+)$/.exec(sum) ?? [];
    const rule = operator === '+' ? addTypes : subtractTypes;
    expect(show(rule(operand(left), operand(right)))).toBe(expected);
  });
});

describe('comparison, min, max, mean', () => {
  it.each([
    ['map', 'baro', 'kPa absolute'],
    ['map', '30 kPa', 'kPa absolute (right as absolute)'],
    ['30 kPa', 'map', 'kPa absolute (left as absolute)'],
    ['vacuum', '17 inHg', 'inHg vacuum (right as vacuum)'],
    ['gauge', 'let_open', 'psi gauge (right as gauge)'],
    ['3 psi', '20 kPa', 'psi open'],
    ['ect', '195 °F', '°F point (right as point)'],
    ['warmed', '18 °F', '°C difference (right as difference)'],
    ['18 °F', 'warmed', '°F difference (left as difference)'],
    ['20 °C', '68 °F', '°C point'],
    ['spark', 'ivo', '°BTDC btdc'],
    ['spark', '10 °', '°BTDC btdc (right as btdc)'],
    ['10 °', 'spark', '°BTDC btdc (left as btdc)'],
    ['drift', '2 °CA', '°CA difference (right as difference)'],
    ['map', 'vacuum', 'kinds-compared'],
    ['map', 'gauge', 'kinds-compared'],
    ['gauge', 'rise', 'kinds-compared'],
    ['ect', 'warmed', 'kinds-compared'],
    ['spark', 'evc', 'crank-marks-differ'],
    ['spark', '5 °ATDC', 'crank-marks-differ'],
    ['spark', 'drift', 'crank-marks-differ'],
    ['map', 'volts', 'dimensions-differ'],
    ['stft', '10', 'percent-beside-number'],
    ['stft', '0', '% none'],
    ['stft', '1', '% none'],
    ['stft', 'lambda', '% none'],
    ['lambda', '0.97', '1 none'],
  ])('%s with %s: %s', (left, right, expected) => {
    expect(show(compareTypes(operand(left), operand(right)))).toBe(expected);
  });
});

describe('within', () => {
  it.each([
    ['map', '0.5 inHg', 'baro', 'in units'],
    ['map', 'rise', 'baro', 'in units'],
    ['ect', '5 °F', 'iat', 'in units'],
    ['map', '2 %', 'baro', 'relative'],
    ['volts', '2 %', '12.6 V', 'relative'],
    ['stft', '2 %', 'stft', 'in units'],
    ['lambda', '2 %', 'lambda', 'relative'],
    ['lambda', '0.02', 'lambda', 'in units'],
    ['stft', '2', 'stft', 'percent-beside-number'],
    ['ect', '2 %', 'iat', 'temperature-point-product'],
    ['map', '0.5 inHg absolute', 'baro', 'kind-unfit'],
    ['map', '0.5 V', 'baro', 'dimensions-differ'],
    ['map', '0.5 inHg', 'vacuum', 'kinds-compared'],
  ])('%s within %s of %s: %s', (left, tolerance, right, expected) => {
    const answer = withinTypes(operand(left), operand(tolerance), operand(right));
    if (answer.problem !== undefined) {
      expect(answer.problem.code).toBe(expected);
      return;
    }
    expect(answer.relative ? 'relative' : 'in units').toBe(expected);
  });
});

describe('products, quotients, powers', () => {
  it.each([
    ['map * 2', 'kPa absolute'],
    ['2 * gauge', 'psi gauge'],
    ['map * 2 %', 'kPa absolute'],
    ['vacuum / 2', 'inHg vacuum'],
    ['3 psi * 2', 'psi open'],
    ['warmed * 2', '°C difference'],
    ['map / baro', '1 none'],
    ['gauge / gauge', '1 none'],
    ['warmed / warmed', '1 none'],
    ['map / 101 kPa', '1 none (right as absolute)'],
    ['101 kPa / map', '1 none (left as absolute)'],
    ['map / vacuum', 'kinds-in-quotient'],
    ['gauge / rise', 'kinds-in-quotient'],
    ['spark / evc', 'crank-marks-differ'],
    ['map / volts', 'kPa/V none'],
    ['2 / map', 'kPa⁻¹ none'],
    ['volts * amps', 'V·A none'],
    ['volts / amps', 'V/A none'],
    ['maf / 2 s', 'g/s² none'],
    ['stft / stft', '% none'],
    ['lambda * stft', '% none'],
    ['lambda / lambda', '1 none'],
    ['ect * 2', 'temperature-point-product'],
    ['2 * ect', 'temperature-point-product'],
    ['ect / iat', 'temperature-point-product'],
    ['20 °C * 2', 'temperature-point-product'],
    ['20 °C difference * 2', '°C difference'],
  ])('%s is %s', (text, expected) => {
    const [, left = '', operator, right = ''] = /^(.+?) ([*/]) (.+)$/.exec(text) ?? [];
    const rule = operator === '*' ? multiplyTypes : divideTypes;
    expect(show(rule(operand(left), operand(right)))).toBe(expected);
  });

  it.each([
    ['volts', 2, 'V² none'],
    ['volts', -1, 'V⁻¹ none'],
    ['volts', 0, '1 none'],
    ['map', 1, 'kPa absolute'],
    ['map', 2, 'kPa² none'],
    ['stft', 0.5, '% none'],
    ['lambda', 1000, '1 none'],
    ['volts', 0.5, 'power-of-unit'],
    ['volts', 10, 'power-of-unit'],
    ['volts', Number.NaN, 'power-of-unit'],
    ['ect', 2, 'temperature-point-product'],
  ])('%s ^ %s is %s', (of, exponent, expected) => {
    expect(show(powerType(operand(of), exponent))).toBe(expected);
  });

  it('powers of powers end before the exponents lose their last digit', () => {
    let answer = powerType(operand('volts'), 9);
    for (let i = 0; i < 20 && answer.problem === undefined; i++) answer = powerType(answer.type, 9);
    expect(show(answer)).toBe('power-of-unit');
  });

  it('roots', () => {
    const squared = multiplyTypes(operand('volts'), operand('volts'));
    expect(squared.problem === undefined && show(rootType(squared.type, 2))).toBe('V none');
    expect(show(rootType(operand('volts'), 2))).toBe('power-of-unit');
    expect(show(rootType(operand('stft'), 2))).toBe('% none');
    expect(show(rootType(operand('ect'), 2))).toBe('temperature-point-product');
  });
});

describe('the kind that a place wants', () => {
  it.each([
    ['45 psi', 'gauge', 'psi gauge (left as gauge)'],
    ['101 kPa', 'map', 'kPa absolute (left as absolute)'],
    ['20 °C', 'warmed', '°C difference (left as difference)'],
    ['20 °C', 'ect', '°C point (left as point)'],
    ['10 °', 'spark', '°BTDC btdc (left as btdc)'],
    ['map', 'baro', 'kPa absolute'],
    ['vacuum', 'map', 'kind-unfit'],
    ['warmed', 'ect', 'kind-unfit'],
    ['45 psi gauge', 'map', 'kind-unfit'],
    ['evc', 'spark', 'crank-marks-differ'],
    ['12 V', 'map', 'dimensions-differ'],
    ['0.08', 'stft', 'percent-beside-number'],
    ['8 %', 'lambda', '% none'],
  ])('%s where %s is wanted: %s', (given, wanted, expected) => {
    expect(show(fitType(operand(given), operand(wanted)))).toBe(expected);
  });
});

describe('as a diagnostic', () => {
  /** The message, and the expression after each offer. */
  function report(
    rule: (a: Operand, b: Operand) => TypeAnswer,
    left: string,
    operator: string,
    right: string,
  ) {
    const text = `${left} ${operator} ${right}`;
    const { problem } = rule(operand(left), operand(right));
    if (problem === undefined) throw new Error(`${text} is no problem`);
    const from = text.length - right.length;
    const diagnostic = kindDiagnostic(problem, span(0, left.length), span(from, text.length));
    expect(diagnostic.span).toEqual(span(0, text.length));
    return [message(diagnostic), ...diagnostic.fixes.map((fix) => applyEdits(text, fix.edits))];
  }

  it('offers the functions that bring both to one kind', () => {
    expect(report(compareTypes, 'map', '<', 'vacuum')).toEqual([
      '`map` (absolute pressure) and `vacuum` (vacuum) are counted from different zeros. Write `absolute(vacuum)` or `vacuum(map)`.',
      'map < absolute(vacuum)',
      'vacuum(map) < vacuum',
    ]);
  });
  it('offers a percent sign', () => {
    expect(report(compareTypes, 'stft', '<', '10')).toEqual([
      '`10` stands beside a percentage. Write `10 %`.',
      'stft < 10 %',
    ]);
  });
  it('offers kelvin', () => {
    expect(report(divideTypes, 'ect', '/', 'iat')[1]).toBe('kelvin(ect) / iat');
    expect(report(multiplyTypes, '2', '*', '20 °C').slice(1)).toEqual([
      '2 * kelvin(20 °C)',
      '2 * 20 °C difference',
    ]);
  });
  it('offers the negative of a crank position', () => {
    expect(report(compareTypes, 'spark', '>', '5 °ATDC')).toEqual([
      '`spark` (crank position in °BTDC) and `5 °ATDC` (crank position in °ATDC) count from different marks or in different directions. 10 °ATDC is -10 °BTDC: write the negative in °BTDC.',
      'spark > -5 °BTDC',
    ]);
  });
  it('offers the words that decide', () => {
    expect(report(addTypes, '14.7 psi', '+', 'gauge')).toEqual([
      '`14.7 psi` (pressure) may be absolute, a gauge pressure or a difference here. Write `14.7 psi absolute` or `14.7 psi difference`.',
      '14.7 psi absolute + gauge',
      '14.7 psi difference + gauge',
    ]);
  });
});

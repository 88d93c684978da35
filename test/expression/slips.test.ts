import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../core/text/edits.ts';
import { frames, result, type Setting } from '../support/expressionResult.ts';
import { byMember, reading, words } from '../support/expressionScope.ts';

const names: Setting['names'] = {
  battery: reading('14.1 V'),
  rpm: reading('780 rpm'),
  ect: reading('195 °F'),
  lambda: reading('1.02'),
  trim: reading('8 %'),
  spark: reading('10 °BTDC'),
  map: reading('13.1 inHg absolute', 'map', 'manifold'),
  vacuum: reading('16.4 inHg vacuum'),
  suction: reading('2 inHg vacuum'),
  fuel_pressure: reading('45 psi gauge'),
  oil_pressure: reading('40 psi gauge'),
  compression: byMember('cylinder', { 1: '181 psi gauge', 2: '178 psi gauge' }),
  'smoke.result': words('yes'),
};

const found = (text: string) => result(text, { names }).diagnostics;
/** The text with the first offer taken. */
const mended = (text: string): string => {
  const edits = found(text)[0]?.fixes[0]?.edits;
  return edits === undefined ? 'nothing is offered' : applyEdits(text, edits);
};

/** One slip is told once, at its place, and the offer puts it right. */
const told = (text: string, frame: string, right: string): void => {
  expect(frames(text, found(text))).toEqual([`${text}\n${frame}`]);
  expect(mended(text)).toBe(right);
  expect(frames(right, found(right))).toEqual([]);
};

describe('a decimal comma', () => {
  it.each([
    [
      'battery < 14,1 V',
      '          ^^^^ decimal-comma: `14,1` has a comma. A number is written with a point and without commas. Write `14.1`.',
      'battery < 14.1 V',
    ],
    [
      'battery within 0,5 V of 14 V',
      '               ^^^ decimal-comma: `0,5` has a comma. A number is written with a point and without commas. Write `0.5`.',
      'battery within 0.5 V of 14 V',
    ],
    [
      'min(battery, (14,1 V)) > 13 V',
      '              ^^^^ decimal-comma: `14,1` has a comma. A number is written with a point and without commas. Write `14.1`.',
      'min(battery, (14.1 V)) > 13 V',
    ],
    [
      'min(1, 2) > 1,5',
      '            ^^^ decimal-comma: `1,5` has a comma. A number is written with a point and without commas. Write `1.5`.',
      'min(1, 2) > 1.5',
    ],
    [
      'battery > 14, 1 V',
      '          ^^^^^ decimal-comma: `14, 1` has a comma. A number is written with a point and without commas. Write `14.1`.',
      'battery > 14.1 V',
    ],
    [
      'absolute(14,1 psi gauge) > 3 psi',
      '         ^^^^^^^^^^^^^^ decimal-comma: `14,1 psi gauge` has a comma. A number is written with a point and without commas. Write `14.1 psi gauge`.',
      'absolute(14.1 psi gauge) > 3 psi',
    ],
    [
      'absolute(14,05 psi gauge) > 3 psi',
      '         ^^^^^^^^^^^^^^^ decimal-comma: `14,05 psi gauge` has a comma. A number is written with a point and without commas. Write `14.05 psi gauge`.',
      'absolute(14.05 psi gauge) > 3 psi',
    ],
  ])('%s', told);

  it('a slip in a word of the language is told with the word', () => {
    const text = 'rpm beetween 600 rpm and 800 rpm';
    expect(frames(text, found(text))).toContain(
      `${text}\n${' '.repeat(4)}^^^^^^^^ unexpected-text: \`beetween\` does not fit here. Did you mean \`between\`?`,
    );
  });

  it('a comma that is none is told what it is for', () => {
    const text = 'battery > 14 V, rpm > 600 rpm';
    expect(frames(text, found(text))).toEqual([
      `${text}\n${' '.repeat(14)}^ unexpected-text: A comma separates the arguments of a function and does not fit here. A number is written with a point; two statements are joined with \`and\`.`,
    ]);
  });

  it('in a chain it is what is told first', () => {
    const text = '5 < battery < 15,5 V';
    expect(found(text).map((each) => each.code)).toEqual(['decimal-comma']);
    expect(mended(text)).toBe('5 < battery < 15.5 V');
    expect(mended('5 < battery < 15.5 V')).toBe('battery between 5 V and 15.5 V');
  });

  it('between the arguments of a call a comma separates', () => {
    expect(found('min(14,1) > 0')).toEqual([]);
    expect(found('min(max(1,2),3) > 0')).toEqual([]);
  });
});

describe('a sum without a meaning says why', () => {
  it.each([
    [
      'fuel_pressure + oil_pressure > 3 psi',
      '^^^^^^^^^^^^^^^^^^^^^^^^^^^^ kinds-in-sum: `fuel_pressure` (gauge pressure) + `oil_pressure` (gauge pressure) has no meaning: both count from the barometer, and one of them must be a difference.',
    ],
    [
      'vacuum + suction > 3 psi',
      '^^^^^^^^^^^^^^^^ kinds-in-sum: `vacuum` (vacuum) + `suction` (vacuum) has no meaning: both count from the barometer, and one of them must be a difference.',
    ],
    [
      'map + map > 3 psi',
      '^^^^^^^^^ kinds-in-sum: `map` (absolute pressure) + `map` (absolute pressure) has no meaning: each counts from no pressure at all, and one of them must be a difference.',
    ],
    [
      'ect + ect > 30 °C',
      '^^^^^^^^^ kinds-in-sum: `ect` (temperature) + `ect` (temperature) has no meaning: both are points on a scale, and one of them must be a difference.',
    ],
    [
      'spark + spark > 30 °BTDC',
      '^^^^^^^^^^^^^ kinds-in-sum: `spark` (crank position in °BTDC) + `spark` (crank position in °BTDC) has no meaning: both are positions of the crank, and one of them must be a difference.',
    ],
    [
      'fuel_pressure - vacuum > 3 psi',
      '^^^^^^^^^^^^^^^^^^^^^^ kinds-in-sum: `fuel_pressure` (gauge pressure) - `vacuum` (vacuum) has no meaning: one counts up from the barometer and the other down. Write `gauge(vacuum)` or `vacuum(fuel_pressure)`.',
    ],
    [
      '(map - map) - fuel_pressure > 3 psi',
      ' ^^^^^^^^^^^^^^^^^^^^^^^^^^ kinds-in-sum: `map - map` (pressure difference) - `fuel_pressure` (gauge pressure) has no meaning: only a difference can be taken from a difference.',
    ],
  ])('%s', (text, frame) => {
    expect(frames(text, found(text))).toEqual([`${text}\n${frame}`]);
  });
});

describe('an outcome in capitals', () => {
  it.each([
    [
      'smoke.result is Yes',
      '                ^^^ foreign-mark: `Yes` is not used here. Write `yes`.',
      'smoke.result is yes',
    ],
    [
      'smoke.result is NO',
      '                ^^ foreign-mark: `NO` is not used here. Write `no`.',
      'smoke.result is no',
    ],
    [
      'smoke.result is True',
      '                ^^^^ foreign-mark: `True` is not used here. Write `yes`.',
      'smoke.result is yes',
    ],
    [
      'smoke.result is false',
      '                ^^^^^ wrong-operand: `is` takes the same on both sides, here a word or text such as `no`, and this is a statement that holds or fails.',
      'smoke.result is no',
    ],
    [
      'smoke.result is "Yes"',
      '                ^^^^^ foreign-mark: `"Yes"` is not used here. Write `yes`.',
      'smoke.result is yes',
    ],
    [
      'smoke.result and rpm > 600 rpm',
      '^^^^^^^^^^^^ wrong-operand: `and` takes statements that hold or fail such as `smoke.result is yes`, and this is a word or text.',
      'smoke.result is yes and rpm > 600 rpm',
    ],
    [
      '(rpm > 600 rpm) is TRUE',
      '                   ^^^^ foreign-mark: `TRUE` is not used here. Write `true`.',
      '(rpm > 600 rpm) is true',
    ],
  ])('%s', told);
});

describe('a unit that its place asks for', () => {
  it.each([
    [
      'rpm > 600',
      '^^^^^^^^^ dimensions-differ: `rpm` (rotational speed) and `600` (plain number) cannot be compared: they measure different things. Write `600 rpm`.',
      'rpm > 600 rpm',
    ],
    [
      'min(compression) > 140',
      '^^^^^^^^^^^^^^^^^^^^^^ dimensions-differ: `min(compression)` (gauge pressure) and `140` (plain number) cannot be compared: they measure different things. Write `140 psi`.',
      'min(compression) > 140 psi',
    ],
    [
      '600 < rpm',
      '^^^^^^^^^ dimensions-differ: `600` (plain number) and `rpm` (rotational speed) cannot be compared: they measure different things. Write `600 rpm`.',
      '600 rpm < rpm',
    ],
    [
      'rpm within 50 of 800 rpm',
      '           ^^^^^^^^^^^^^ dimensions-differ: `50` (plain number) and `800 rpm` (rotational speed) cannot be compared: they measure different things. Write `50 rpm`.',
      'rpm within 50 rpm of 800 rpm',
    ],
    [
      'rpm + 50 > 800 rpm',
      '^^^^^^^^ dimensions-differ: `rpm` (rotational speed) and `50` (plain number) cannot be added: they measure different things. Write `50 rpm`.',
      'rpm + 50 rpm > 800 rpm',
    ],
    [
      'ect > 190 F',
      '^^^^^^^^^^^ dimensions-differ: `ect` (temperature) and `190 F` (capacitance) cannot be compared: they measure different things. Write `190 °F`.',
      'ect > 190 °F',
    ],
    [
      'ect > 90F',
      '^^^^^^^^^ dimensions-differ: `ect` (temperature) and `90 F` (capacitance) cannot be compared: they measure different things. Write `90 °F`.',
      'ect > 90 °F',
    ],
    ['ect > 35 C', '         ^ unknown-unit: `C` is no unit here. Did you mean `°C`?', 'ect > 35 °C'],
  ])('%s', told);
});

describe('two comparisons in a chain are one slip', () => {
  it.each([
    [
      '500 < rpm < 900',
      '^^^^^^^^^^^^^^^ chained-comparison: Comparisons do not chain: the second would compare a yes-or-no. Write `rpm between 500 rpm and 900 rpm`.',
      'rpm between 500 rpm and 900 rpm',
    ],
    [
      '500 rpm < rpm < 900',
      '^^^^^^^^^^^^^^^^^^^ chained-comparison: Comparisons do not chain: the second would compare a yes-or-no. Write `rpm between 500 rpm and 900 rpm`.',
      'rpm between 500 rpm and 900 rpm',
    ],
    [
      '1.1 >= lambda >= 0.9',
      '^^^^^^^^^^^^^^^^^^^^ chained-comparison: Comparisons do not chain: the second would compare a yes-or-no. Write `lambda between 0.9 and 1.1`.',
      'lambda between 0.9 and 1.1',
    ],
    [
      '-10 < trim < 10 and rpm > 600 rpm',
      '^^^^^^^^^^^^^^^ chained-comparison: Comparisons do not chain: the second would compare a yes-or-no. Write `trim between -10 % and 10 %`.',
      'trim between -10 % and 10 % and rpm > 600 rpm',
    ],
  ])('%s', told);
});

describe('what is wrong with the middle of a chain', () => {
  it.each([
    ['1 V < batery < 2 V', ['chained-comparison', 'unknown-name']],
    ['1 V < smoke.result < 2 V', ['chained-comparison', 'wrong-operand']],
    ['1 V < battery + 3 % < 2 V', ['chained-comparison', 'dimensions-differ']],
    ['1 V < batery < 2 V < 3 V', ['chained-comparison', 'chained-comparison', 'unknown-name']],
  ])('is told once: %s', (text, codes) => {
    expect(found(text).map(({ code }) => code)).toEqual(codes);
  });
});

describe('words of the language in capitals', () => {
  it.each([
    [
      'IF trim > 5 % then rpm > 600 rpm else false',
      '^^ foreign-mark: `IF` is not used here. Write `if`.',
      'if trim > 5 % then rpm > 600 rpm else false',
    ],
    [
      'if trim > 5 % THEN rpm > 600 rpm else false',
      '              ^^^^ foreign-mark: `THEN` is not used here. Write `then`.',
      'if trim > 5 % then rpm > 600 rpm else false',
    ],
    [
      'trim > 5 % AND rpm > 600 rpm',
      '           ^^^ foreign-mark: `AND` is not used here. Write `and`.',
      'trim > 5 % and rpm > 600 rpm',
    ],
    [
      'trim > 5 % OR rpm > 600 rpm',
      '           ^^ foreign-mark: `OR` is not used here. Write `or`.',
      'trim > 5 % or rpm > 600 rpm',
    ],
    ['NOT trim > 5 %', '^^^ foreign-mark: `NOT` is not used here. Write `not`.', 'not trim > 5 %'],
    [
      'smoke.result is NOT yes',
      '                ^^^ foreign-mark: `NOT` is not used here. Write `not`.',
      'smoke.result is not yes',
    ],
    [
      'trim between 1 % AND 5 %',
      '                 ^^^ foreign-mark: `AND` is not used here. Write `and`.',
      'trim between 1 % and 5 %',
    ],
  ])('%s', told);

  it('each one is told', () => {
    const text = 'IF trim > 5 % THEN true ELSE false';
    expect(frames(text, found(text))).toEqual([
      `${text}\n^^ foreign-mark: \`IF\` is not used here. Write \`if\`.`,
      `${text}\n${' '.repeat(14)}^^^^ foreign-mark: \`THEN\` is not used here. Write \`then\`.`,
      `${text}\n${' '.repeat(24)}^^^^ foreign-mark: \`ELSE\` is not used here. Write \`else\`.`,
    ]);
  });
});

describe('units written in two words', () => {
  it.each([
    [
      'map < 29.92 "Hg',
      '            ^^^ unknown-unit: `"Hg` is no unit here. Did you mean `inHg`?',
      'map < 29.92 inHg',
    ],
    [
      'map < 29.92 in Hg',
      '            ^^^^^ unknown-unit: `in Hg` is no unit here. Did you mean `inHg`?',
      'map < 29.92 inHg',
    ],
    [
      'spark < 12 deg BTDC',
      '           ^^^^^^^^ unknown-unit: `deg BTDC` is no unit here. Did you mean `°BTDC`?',
      'spark < 12 °BTDC',
    ],
    [
      'ect < 200 deg F',
      '          ^^^^^ unknown-unit: `deg F` is no unit here. Did you mean `°F`?',
      'ect < 200 °F',
    ],
  ])('%s', told);
});

describe('comparisons as they are spoken', () => {
  it.each([
    [
      'rpm is not in 700 .. 900 rpm',
      '    ^^^^^^^^^ foreign-mark: `is not in` is not used here. Write `not in`.',
      'rpm not in 700 .. 900 rpm',
    ],
    [
      'rpm is between 700 rpm and 900 rpm',
      '    ^^^^^^^^^^ foreign-mark: `is between` is not used here. Write `between`.',
      'rpm between 700 rpm and 900 rpm',
    ],
    [
      'rpm is not within 50 rpm of 800 rpm',
      '    ^^^^^^^^^^^^^ foreign-mark: `is not within` is not used here. Write `not within`.',
      'rpm not within 50 rpm of 800 rpm',
    ],
    ['battery is > 12 V', '        ^^^^ foreign-mark: `is >` is not used here. Write `>`.', 'battery > 12 V'],
    [
      'battery is not <= 12 V',
      '        ^^^^^^^^^ foreign-mark: `is not <=` is not used here. Write `>`.',
      'battery > 12 V',
    ],
  ])('%s', told);

  it('the offer for a range that is none can be read as well', () => {
    expect(mended('1 is not in 3')).toBe('1 not in 3');
    expect(found('1 not in 3').map((each) => each.code)).not.toContain('missing-operand');
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quantityRows } from '../../core/diagnostics/catalogue/quantity.ts';
import { message } from '../../core/diagnostics/words.ts';
import { isAbsence, isRange, parseQuantity, parseReading, type Reading } from '../../core/quantity/parse.ts';
import { notUnits, scanQuantity } from '../../core/quantity/scan.ts';
import type { Quantity } from '../../core/quantity/types.ts';
import { applyEdits } from '../../core/text/edits.ts';

/** "13.1 ± 0.2 inHg open", with the kind in brackets when the place may still decide. */
function show(quantity: Quantity | undefined): string {
  if (quantity === undefined) return 'open end';
  const { value, unit, kind, kindGiven, plusMinus } = quantity;
  const width = plusMinus === 0 ? '' : ` ± ${Number(plusMinus.toPrecision(12))}`;
  return `${value}${width} ${unit.symbol} ${kindGiven ? kind : `(${kind})`}`;
}

function showReading(reading: Reading | undefined): string {
  if (reading === undefined) return 'nothing';
  if (isAbsence(reading)) return reading;
  return isRange(reading) ? `${show(reading.low)} to ${show(reading.high)}` : show(reading);
}

describe('readings', () => {
  it.each([
    ['13.1 ± 0.2 inHg', '13.1 ± 0.2 inHg (open)'],
    ['13.1 +/- 0.2 inHg', '13.1 ± 0.2 inHg (open)'],
    ['13.1±.2inHg', '13.1 ± 0.2 inHg (open)'],
    ['13.1 inHg ± 2 %', '13.1 ± 0.262 inHg (open)'],
    ['-13.1 inHg gauge ± 2 %', '-13.1 ± 0.262 inHg gauge'],
    ['13.1 inHg ± 1 kPa', '13.1 ± 0.29529983301 inHg (open)'],
    ['8 ± 2 %', '8 ± 2 % (none)'],
    ['8 % ± 2 %', '8 ± 2 % (none)'],
    ['45 psi gauge', '45 psi gauge'],
    ['29.6 inHg absolute', '29.6 inHg absolute'],
    ['16.4 inHg vacuum', '16.4 inHg vacuum'],
    ['3 psi difference', '3 psi difference'],
    ['+8 %', '8 % (none)'],
    ['0.79 V', '0.79 V (none)'],
    ['2.1 kHz', '2.1 kHz (none)'],
    ['-40 °C', '-40 °C (point)'],
    ['−40 degF', '-40 °F (point)'],
    ['18 °F difference', '18 °F difference'],
    ['20 °C point', '20 °C point'],
    ['10 °BTDC', '10 °BTDC btdc'],
    ['-4 degATDC', '-4 °ATDC atdc'],
    ['10 °CA difference', '10 °CA difference'],
    ['11', '11 1 (none)'],
    ['11 ± 1', '11 ± 1 1 (none)'],
    ['.79 V', '0.79 V (none)'],
    ['12.6V', '12.6 V (none)'],
    ['8%', '8 % (none)'],
    ['  13.1   inHg  ', '13.1 inHg (open)'],
    ['13.1\u00a0inHg', '13.1 inHg (open)'],
    ['35 mm2', '35 mm² (none)'],
    ['1.8 kgf/cm2', '1.8 kgf/cm² (open)'],
    ['9.2 N·m', '9.2 Nm (none)'],
    ['0012.50 V', '12.5 V (none)'],
    ['17 .. 22 inHg', '17 inHg (open) to 22 inHg (open)'],
    ['17..22 inHg', '17 inHg (open) to 22 inHg (open)'],
    ['-10 .. 10 %', '-10 % (none) to 10 % (none)'],
    ['-10..+10%', '-10 % (none) to 10 % (none)'],
    ['40 .. 45 psi gauge', '40 psi gauge to 45 psi gauge'],
    ['40 psi gauge .. 45 psi', '40 psi gauge to 45 psi gauge'],
    ['300 kPa .. 45 psi', '300 kPa (open) to 45 psi (open)'],
    ['5 .. 8', '5 1 (none) to 8 1 (none)'],
    ['8 .. 8 V', '8 V (none) to 8 V (none)'],
    ['10 .. 20 °F difference', '10 °F difference to 20 °F difference'],
    ['at least 142 psi', '142 psi (open) to open end'],
    ['at most 3 psi gauge', 'open end to 3 psi gauge'],
    ['at  most .2 V', 'open end to 0.2 V (none)'],
    ['not taken', 'not taken'],
    ['not supported', 'not supported'],
    [' no reading ', 'no reading'],
  ])('%j is %s', (text, expected) => {
    const found = parseReading(text);
    expect(found.diagnostics).toEqual([]);
    expect(showReading(found.value)).toBe(expected);
  });
});

describe('what cannot be read is refused at its place', () => {
  // The text with carets under the place, the code, and the text after the first fix (or none).
  it.each([
    ['13,1 inHg', '^^^^', 'decimal-comma', '13.1 inHg'],
    ['-13,1 inHg', '^^^^^', 'decimal-comma', '-13.1 inHg'],
    ['1,000 rpm', '^^^^^', 'decimal-comma', '1000 rpm'],
    ['1.234,5 rpm', '^^^^^^^', 'decimal-comma', '1234.5 rpm'],
    ['13.1 ± 0,2 inHg', '       ^^^', 'decimal-comma', '13.1 ± 0.2 inHg'],
    ['17 .. 22,5 inHg', '      ^^^^', 'decimal-comma', '17 .. 22.5 inHg'],
    ['1,000.5 rpm', '^^^^^^^', 'digit-groups', '1000.5 rpm'],
    ['1,234,567 km', '^^^^^^^^^', 'digit-groups', '1234567 km'],
    ['1_000 rpm', '^^^^^', 'digit-groups', '1000 rpm'],
    ["1'000 rpm", '^^^^^', 'digit-groups', '1000 rpm'],
    ['2 500 rpm', '^^^^^', 'digit-groups', '2500 rpm'],
    ['1 000,5 V', '^^^^^^^', 'digit-groups', '1000.5 V'],
    ['1e3 rpm', '^^^', 'number-form', '1000 rpm'],
    ['1.5e-7 A', '^^^^^^', 'number-form', '0.00000015 A'],
    ['1e400 A', '^^^^^', 'number-form', undefined],
    ['0x10', '^^^^', 'number-form', undefined],
    ['½ inch', '^', 'number-form', '0.5 inch'],
    ['2½ inch', '^^', 'number-form', '2.5 inch'],
    ['1.2.3', '^^^^^', 'number-form', undefined],
    [`1${'0'.repeat(31)} rpm`, '^'.repeat(32), 'number-beyond', undefined],
    [`0.${'0'.repeat(31)}1 A`, '^'.repeat(34), 'number-beyond', undefined],
    [`-${'9'.repeat(400)} A`, ` ${'^'.repeat(400)}`, 'number-beyond', undefined],
    [`5 ± ${'9'.repeat(400)} A`, `    ${'^'.repeat(400)}`, 'number-beyond', undefined],
    ['--5 %', '^^^^^', 'number-signs', '5 %'],
    ['- 5 %', '^^^^^', 'number-signs', '-5 %'],
    ['5 %%', '  ^^', 'unknown-unit', '5 %'],
    ['45 psig', '   ^^^^', 'unknown-unit', '45 psi gauge'],
    ['45 PSI', '   ^^^', 'unknown-unit', '45 psi'],
    ['5 in', '  ^^', 'unknown-unit', '5 inch'],
    ['5 .. 8 in', '       ^^', 'unknown-unit', '5 .. 8 inch'],
    ['10 ft-lb', '   ^^^^^', 'unknown-unit', '10 lb·ft'],
    ['10 g/s/x', '   ^^^^^', 'unknown-unit', undefined],
    ['10 g/ 2', '   ^^', 'unknown-unit', '10 g 2'],
    ['at least 142 PSI', '             ^^^', 'unknown-unit', 'at least 142 psi'],
    ['11 steps', '   ^^^^^', 'unit-of-count', '11 '],
    ['13.1 inHg ± 0.2', '          ^^^^^', 'plus-minus-unit', '13.1 ± 0.2 inHg'],
    ['45 psi gauge ± 1', '             ^^^', 'plus-minus-unit', '45 ± 1 psi gauge'],
    ['13.1 inHg ± 0.2 V', '          ^^^^^^^', 'plus-minus-unit', '13.1 ± 0.2 inHg'],
    ['13.1 ± 0.2 inHg ± 2 %', '                ^^^^^', 'plus-minus-twice', undefined],
    ['13.1 ± -2 inHg', '     ^^', 'plus-minus-number', undefined],
    ['195 °F gauge', '       ^^^^^', 'qualifier-misplaced', undefined],
    ['12 V absolute', '     ^^^^^^^^', 'qualifier-misplaced', undefined],
    ['10 °BTDC difference', '         ^^^^^^^^^^', 'qualifier-misplaced', undefined],
    ['45 psi guage', '       ^^^^^', 'unknown-qualifier', '45 psi gauge'],
    ['45 psi abs', '       ^^^', 'unknown-qualifier', '45 psi absolute'],
    ['16.4 inHg steady', '          ^^^^^^', 'quantity-trailing', undefined],
    ['5 psi absolute gauge', '               ^^^^^', 'quantity-trailing', undefined],
    ['12.6 V.', '      ^', 'quantity-trailing', undefined],
    ['5"', ' ^', 'quantity-trailing', undefined],
    ['1/2 inch', ' ^^^^^^^', 'quantity-trailing', undefined],
    ['10 V/(2)', '   ^^', 'unknown-unit', '10 V(2)'],
    ['17 .. 22 inHg steady', '              ^^^^^^', 'quantity-trailing', undefined],
    ['', '', 'quantity-expected', undefined],
    ['steady', '^^^^^^', 'quantity-expected', undefined],
    ['nottaken', '^^^^^^^^', 'quantity-expected', 'not taken'],
    ['n/a', '^^^', 'quantity-expected', 'not taken'],
    ['N.A.', '^^^^', 'quantity-expected', 'not taken'],
    ['none', '^^^^', 'quantity-expected', 'not taken'],
    ['OL', '^^', 'quantity-expected', 'no reading'],
    ['O.L', '^^^', 'quantity-expected', 'no reading'],
    ['open', '^^^^', 'quantity-expected', 'no reading'],
    ['183 cid', '    ^^^', 'unknown-unit', '183 inch³'],
    ['183 cu in', '    ^^^^^', 'unknown-unit', '183 inch³'],
    ['183 cu. in.', '    ^^^^^^^', 'unknown-unit', '183 inch³'],
    ['?', '^', 'quantity-expected', 'not taken'],
    ['-', '^', 'quantity-expected', 'not taken'],
    ['not measured', '^^^^^^^^^^^^', 'quantity-expected', 'not taken'],
    ['10.5:1', '    ^^', 'quantity-trailing', '10.5'],
    ['12:30', '  ^^^', 'quantity-trailing', undefined],
    ['about 5 V', '^^^^^^^^^', 'quantity-expected', '5 V'],
    ['> 5 V', '^^^^^', 'quantity-expected', 'at least 5 V'],
    ['<5 V', '^^^^', 'quantity-expected', 'at most 5 V'],
    ['Infinity', '^^^^^^^^', 'quantity-expected', undefined],
    ['17 - 22 inHg', '^^^^^^^^^^^^', 'range-in-other-words', '17 .. 22 inHg'],
    ['17-22 inHg', '^^^^^^^^^^', 'range-in-other-words', '17 .. 22 inHg'],
    ['17–22 inHg', '^^^^^^^^^^', 'range-in-other-words', '17 .. 22 inHg'],
    ['17 to 22 inHg', '^^^^^^^^^^^^^', 'range-in-other-words', '17 .. 22 inHg'],
    ['17 ..', '^^^^^', 'range-end-missing', undefined],
    ['17 .. inHg', '^^^^^^^^^^', 'range-end-missing', undefined],
    ['.. 22 inHg', '^^^^^^^^^^', 'range-end-missing', undefined],
    ['at least', '        ', 'quantity-expected', undefined],
    ['22 .. 17 inHg', '^^^^^^^^^^^^^', 'range-upside-down', undefined],
    ['45 psi .. 300 kPa', '^^^^^^^^^^^^^^^^^', 'range-upside-down', undefined],
    ['17 V .. 22 inHg', '^^^^^^^^^^^^^^^', 'range-ends-differ', undefined],
    ['5 psi gauge .. 8 psi absolute', '^^^^^^^^^^^^^^^^^^^^^^^^^^^^^', 'range-ends-differ', undefined],
    ['5 % .. 8', '^^^^^^^^', 'range-ends-differ', undefined],
  ])('%j', (text, carets, code, fixed) => {
    const { value, diagnostics } = parseReading(text);
    expect(value).toBeUndefined();
    const first = diagnostics[0];
    expect(first?.code).toBe(code);
    expect(first?.severity).toBe('error');
    if (first === undefined) return;
    expect(' '.repeat(first.span.start) + '^'.repeat(first.span.end - first.span.start)).toBe(carets);
    const fix = first.fixes[0];
    expect(fix === undefined ? undefined : applyEdits(text, fix.edits)).toBe(fixed);
    expect(message(first)).not.toMatch(/undefined|\[object/);
  });

  it('195 F is in farads: read as written, and for the place to refuse', () => {
    expect(show(parseQuantity('195 F').value)).toBe('195 F (none)');
  });

  it('a number may have as many digits as it likes, as long as it is of this world', () => {
    for (const text of [`0.${'3'.repeat(40)} V`, `0.${'0'.repeat(40)} V`, `${'0'.repeat(40)}12.5 V`]) {
      const { value, diagnostics } = parseQuantity(text);
      expect(diagnostics).toEqual([]);
      expect(show(value)).toBe(`${Number(text.slice(0, -2))} V (none)`);
    }
  });

  it('a ± without its number is told once', () => {
    expect(parseReading('40 psi ± -3 psi').diagnostics.map((each) => each.code)).toEqual([
      'plus-minus-number',
    ]);
  });

  it('says it in words', () => {
    const say = (text: string): string => parseReading(text).diagnostics.map(message).join(' ');
    expect(say('13,1 inHg')).toBe(
      '`13,1` has a comma. A number is written with a point and without commas. Write `13.1`.',
    );
    expect(say(`${'7'.repeat(40)} rpm`)).toBe(
      'This number has 40 digits and is larger than anything on a vehicle. Count its digits and look at its unit: from 10⁻³⁰ to 10³⁰ is read.',
    );
    expect(say('45 psig')).toBe('`psig` is no unit here. Did you mean `psi gauge`?');
    expect(say('11 steps')).toBe('`steps` is no unit: a count or a ratio stands alone. Leave the word out.');
    expect(say('16.4 inHg steady')).toBe(
      '`steady` stands behind `16.4 inHg` and cannot be read. Leave it out, or put it under `saw`.',
    );
    expect(say('')).toBe('A value is missing here. Write a number with its unit, or `not taken`.');
  });
});

describe('the catalogue’s examples', () => {
  const parsed = Object.entries(quantityRows).filter(([code]) =>
    /^(number|digit|decimal|unit-(unknown|of)|plus|qualifier|quantity|range)/.test(code),
  );
  const reading = (example: string): string =>
    example.replace(/^\w+: /, '').replace(/^\{value: ([^,}]+).*$/, '$1');
  it.each(parsed)('%s', (code, row) => {
    const place = code === 'range-in-reading' ? 'reading' : 'reference';
    expect(parseReading(reading(row.wrong), place).diagnostics.map((each) => each.code)).toEqual([code]);
    expect(parseReading(reading(row.right)).diagnostics).toEqual([]);
  });
});

describe('the scanner', () => {
  it('takes one quantity out of an expression and says where it ends', () => {
    const rest = (text: string, at = 0): [string, string] => {
      const found = scanQuantity(text, at);
      return [show(found?.quantity), text.slice(found?.end)];
    };
    expect(rest('koeo.map - 3 psi gauge) > 2', 11)).toEqual(['3 psi gauge', ') > 2']);
    expect(rest('10 g/s / 2')).toEqual(['10 g/s (none)', ' / 2']);
    expect(rest('17..22 inHg')).toEqual(['17 1 (none)', '..22 inHg']);
    expect(rest('17 V..22 V')).toEqual(['17 V (none)', '..22 V']);
    expect(rest('10 % and x')).toEqual(['10 % (none)', ' and x']);
    expect(rest('-10 % and 10 %')).toEqual(['-10 % (none)', ' and 10 %']);
    expect(rest('0.5 inHg of koeo.map')).toEqual(['0.5 inHg (open)', ' of koeo.map']);
    expect(rest('13,1)')).toEqual(['13 1 (none)', ',1)']);
    expect(rest('5*x')).toEqual(['5 1 (none)', '*x']);
    expect(rest('5/x')).toEqual(['5 1 (none)', '/x']);
    expect(rest('5 V^2 + 1')).toEqual(['5 V² (none)', ' + 1']);
    expect(rest('5 V ^ 2')).toEqual(['5 V (none)', ' ^ 2']);
    expect(rest('5 V^x')).toEqual(['5 V (none)', '^x']);
    expect(rest('3 V-2 V')).toEqual(['3 V (none)', '-2 V']);
    expect(rest('20 °F difference, x')).toEqual(['20 °F difference', ', x']);
    expect(rest('1 ± 0.1 V < 2')).toEqual(['1 ± 0.1 V (none)', ' < 2']);
  });

  it('no keyword is a unit, even when it touches the number', () => {
    for (const word of notUnits) {
      const found = scanQuantity(`5 ${word} x`, 0);
      expect(found?.diagnostics, word).toEqual([]);
      expect(found?.end, word).toBe(1);
    }
  });

  it('a word after a number is its unit, known or not', () => {
    const found = scanQuantity('2 foo + 1', 0);
    expect(found?.diagnostics.map((each) => each.code)).toEqual(['unknown-unit']);
    expect(found?.quantity).toBeUndefined();
    expect(found?.end).toBe(5);
  });

  it('finds nothing where no number starts', () => {
    for (const text of ['', 'x', '-x', '+', '..5', '.', 'inHg', '--5', '%'])
      expect(scanQuantity(text, 0)).toBeUndefined();
  });

  it('has the value of Number(), bit for bit', () => {
    const digits = fc.stringMatching(/^\d{1,25}(\.\d{1,25})?$/);
    const dotted = fc.stringMatching(/^\.\d{1,20}$/);
    const double = fc.double({ min: -1e15, max: 1e15, noNaN: true }).map((each) => each.toFixed(12));
    fc.assert(
      fc.property(fc.oneof(digits, dotted, double), fc.constantFrom('', ' V', 'V '), (text, tail) => {
        expect(scanQuantity(text + tail, 0)?.quantity?.value).toBe(Number(text));
      }),
      { numRuns: 2000 },
    );
  });

  it('reads any text in bounded time without throwing, and its places lie in the text', () => {
    const piece = fc.constantFrom(
      '1',
      '.5',
      '-',
      '+',
      '±',
      ' ',
      'inHg',
      'psi',
      '%',
      '/',
      '·',
      '^',
      '2',
      '..',
      ',',
      '_',
      '½',
      'e',
      'x',
      'of',
      'gauge',
      'at least ',
      '°',
      '"',
      '\u2028',
      '💧',
    );
    const text = fc.oneof(
      fc.array(piece, { maxLength: 12 }).map((each) => each.join('')),
      fc.string({ maxLength: 30 }),
    );
    fc.assert(
      fc.property(text, (written) => {
        const { value, diagnostics } = parseReading(written);
        expect(value === undefined).toBe(diagnostics.length > 0);
        for (const { span, fixes } of diagnostics) {
          expect(span.start).toBeGreaterThanOrEqual(0);
          expect(span.end).toBeLessThanOrEqual(written.length);
          expect(span.start).toBeLessThanOrEqual(span.end);
          for (const fix of fixes) expect(applyEdits(written, fix.edits)).not.toBe(written);
        }
        const scanned = scanQuantity(written, 0);
        if (scanned !== undefined) expect(scanned.end).toBeGreaterThan(0);
      }),
      { numRuns: 3000 },
    );
  });

  it('a long text costs its length, not its square', () => {
    for (const long of [
      '1'.repeat(200_000),
      `1 ${'m·'.repeat(100_000)}`,
      `1 ${'±'.repeat(100_000)}`,
      `1${',1'.repeat(100_000)}`,
      `1${' 000'.repeat(50_000)}`,
    ]) {
      const before = performance.now();
      parseReading(long);
      expect(performance.now() - before).toBeLessThan(1000);
    }
  });
});

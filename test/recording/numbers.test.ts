import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inMemory } from '../../core/recording/files.ts';
import { noFormat } from '../../core/recording/layout.ts';
import { layoutOf, recordingOf } from '../../core/recording/recording.ts';

/** The second column of a file of these texts, as it is scanned. */
function scanned(texts: readonly string[], decimal: 'point' | 'comma' = 'point'): readonly number[] {
  const mark = decimal === 'comma' ? ';' : ',';
  const text = `t${mark}x\n${texts.map((each, i) => `${i}${mark}${each}\n`).join('')}`;
  const content = inMemory(new TextEncoder().encode(text));
  const delimiter = decimal === 'comma' ? 'semicolon' : 'comma';
  const layout = layoutOf(content, { ...noFormat, delimiter, decimal, headingRows: 1 });
  if ('is' in layout) throw new Error(layout.is);
  const wanted = [0, 1].map((column) => ({
    column,
    unit: undefined,
    factor: 1,
    offset: 0,
    clock: undefined,
    fromFirst: false,
  }));
  const { columns, refusedFields, rows } = recordingOf(content, layout, wanted);
  expect([refusedFields, rows]).toEqual([0, texts.length]);
  return [...(columns[1] ?? [])];
}

/** To the last bit, and with the sign of zero. */
function checkLikeNumber(texts: readonly string[]): void {
  const found = scanned(texts);
  const wrong = texts.filter((text, i) => !Object.is(found[i], Number(text)));
  expect(wrong).toEqual([]);
}

describe('numbers of a file are what Number() gives, to the last bit', () => {
  it('numbers that are hard to round', () => {
    checkLikeNumber([
      // Halfway between two doubles, and beside it.
      '9007199254740993',
      '9007199254740991',
      '9007199254740992.5',
      '1.00000000000000011102230246251565',
      '1.00000000000000011102230246251566',
      // Two roundings would differ from one.
      '0.1',
      '0.3',
      '0.000001',
      '123456789012345',
      '12345678901234.5',
      '123456789012345.6',
      '0.123456789012345',
      '0.1234567890123456',
      '5e-324',
      '2.4703282292062327e-324',
      '2.4703282292062328e-324',
      '1.7976931348623157e308',
      '2.2250738585072011e-308',
      '2.2250738585072014e-308',
      '8.5e22',
      '1e22',
      '1e23',
      '1e-22',
      '1e-23',
      '123456789012345e22',
      '123456789012345e-22',
      '0.000000000000000000000123456789012345',
    ]);
  });

  it('every way to write one', () => {
    checkLikeNumber([
      '-0',
      '+0',
      '0',
      '-0.0',
      '.5',
      '-.5',
      '5.',
      '+5',
      '007',
      '1E3',
      '1e+3',
      '1e-3',
      '-1.5E+02',
    ]);
  });

  it('any number, written in any way', () => {
    const written = fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true }).map(String),
      fc.double({ noNaN: true, noDefaultInfinity: true }).map((each) => each.toExponential()),
      fc
        .tuple(fc.double({ noNaN: true, min: -1e9, max: 1e9 }), fc.nat(15))
        .map(([each, digits]) => each.toFixed(digits)),
      fc
        .tuple(fc.maxSafeNat(), fc.integer({ min: -340, max: 290 }))
        .map(([digits, power]) => `${digits}e${power}`),
      fc.tuple(fc.bigInt({ min: 0n, max: 10n ** 25n }), fc.nat(25)).map(([digits, point]) => {
        const text = String(digits).padStart(point + 1, '0');
        return `${text.slice(0, text.length - point)}.${text.slice(text.length - point)}`;
      }),
    );
    fc.assert(
      fc.property(fc.array(written, { minLength: 1, maxLength: 40 }), (texts) => checkLikeNumber(texts)),
      { numRuns: 400 },
    );
  });

  it('the same with a decimal comma', () => {
    const texts = ['0,1', '-12,75', '1,5e-3', ',5', '5,', '123456789012345,6', '1.234,5'];
    expect(scanned(texts, 'comma')).toEqual([0.1, -12.75, 1.5e-3, 0.5, 5, 123456789012345.6, 1234.5]);
  });

  it('thousands parted by commas, in quotes', () => {
    expect(scanned(['"1,234.5"', '"12,000"', '"7"'])).toEqual([1234.5, 12000, 7]);
  });
});

import { describe, expect, it } from 'vitest';
import { allUnits, unitOf } from '../../core/quantity/unit.ts';
import { formulaLines, symbolsOf } from '../../core/report/formulaLines.ts';
import { allFunctions, functionNames, functionRow } from '../../core/study/functions.ts';

describe('a formula', () => {
  const row = (name: string) => functionRow(name) ?? expect.fail(`no function ${name}`);

  it('is set with what each of its symbols is, and its unit, beneath', () => {
    expect(formulaLines(row('compression_pressure'))).toEqual([
      'p₂ = p₁ · r^n',
      '',
      'p₂  pressure at the end of compression, absolute, kPa',
      'p₁  pressure when compression starts, about the barometer, kPa',
      'r   ratio: compression ratio',
      'n   exponent: polytropic exponent: about 1.3, less from leakage and heat when cranking',
    ]);
  });

  /** Words of formulas, names of functions and of units: nothing that a reader has to be told. */
  const spoken = new Set([
    ...[
      'ln',
      'exp',
      'sin',
      'cos',
      'min',
      'max',
      'of',
      'to',
      'is',
      'by',
      'on',
      'in',
      'at',
      'no',
      'it',
      'dy',
      'dt',
    ],
    ...['AWG', 'EFB', 'AGM'],
    ...functionNames(),
    ...allUnits().map(({ symbol }) => symbol),
  ]);

  /** Single letters, letters of other scripts, capitals, indices: what is a symbol and no word. */
  const isSymbol = (token: string): boolean => token.length === 1 || /[^a-z]/.test(token);

  /** What stands alone on the left of an equation, and everything in it that is no word. */
  function symbolsIn(formula: string): string[] {
    const found: string[] = [];
    for (const line of formula.split('\n')) {
      const [, left] = /^([\p{L}\p{M}_₀-₉ₐ-ₜ/]+) = /u.exec(line) ?? [];
      if (left !== undefined) found.push(left);
      const plain = line
        .replaceAll('A/F', '')
        .replace(/Σ|°[A-Z]+/g, ' ')
        .replace(/(?<=\d ?)°?[°%Ω\p{L}]+(?:[·/][°Ω\p{L}]+|\/\([^)]*\))?/gu, '');
      for (const [token] of plain.matchAll(/(?!\d|[²³ⁿ])[\p{L}_](?:(?![²³])[\p{L}\p{M}\p{N}_₊₋])*/gu))
        if (isSymbol(token)) found.push(token);
    }
    return found.filter((each) => !spoken.has(each));
  }

  it('is taken apart by this test as a reader would', () => {
    expect(symbolsIn('1/T = 1/298.15 K + ln(R/R₂₅)/B')).toEqual(['T', 'R', 'R₂₅', 'B']);
    expect(symbolsIn('load = maf/(peak · p/29.92 inHg)')).toEqual(['load', 'p']);
    expect(symbolsIn('720° from tower to tower, the tops by a parabola')).toEqual(['a']);
  });

  const articles = /(?<![=·/(] ?)\ba (?=[a-z]{3})/g;

  it.each(allFunctions().map((each) => [each.name, each] as const))(
    'of %s leaves no symbol unexplained, and explains none that it does not have',
    (_, of) => {
      const explained = symbolsOf(of).map(({ symbol }) => symbol);
      const unexplained = symbolsIn(of.formula.replace(articles, '')).filter(
        (each) => !explained.includes(each),
      );
      expect(unexplained).toEqual([]);
      for (const [symbol, words, unit] of of.where ?? []) {
        expect(explained).toContain(symbol);
        if (unit === undefined) expect(of.parameters.map(({ name }) => name)).toContain(words);
        else if (
          !/^as [a-zA-Z_]+$/.test(unit) &&
          !['', 'Ω·m', 'J/(mol·K)', '1/K', '1/s', 'C/mol'].includes(unit)
        )
          expect(unitOf(unit), unit).toBeDefined();
      }
      expect(of.formula).not.toMatch(/\b[A-Za-z]\d|\*|sqrt|e-\d/);
    },
  );
});

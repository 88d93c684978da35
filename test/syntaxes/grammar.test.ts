import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kindNames, kinds } from '../../core/casefile/kinds/kinds.ts';
import { keywords } from '../../core/expression/scan.ts';
import { parseReading } from '../../core/quantity/parse.ts';
import { unitRows } from '../../core/quantity/unitTable.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { allSignals } from '../../core/signals/lookup.ts';
import { engineStates } from '../../core/signals/states.ts';
import { functionNames } from '../../core/study/functions.ts';
import { grammarText } from '../../extension/build/writeGrammar.ts';
import { samples } from '../support/samples.ts';
import { annotated, loadGrammar, type Token, tokens } from './tokenizer.ts';

const grammar = await loadGrammar();
const scopesIn = (text: string): string[] =>
  tokens(grammar, text)
    .filter((token) => token.text.trim() !== '')
    .map((token) => `${token.text.trim()} ${token.scope}`);

describe('the grammar file', () => {
  it('is what the core’s tables make today', () => {
    const written = readFileSync(new URL('../../syntaxes/diag.tmLanguage.json', import.meta.url), 'utf8');
    expect(written).toBe(grammarText());
  });
});

describe('colours what the core knows', () => {
  it.each(kindNames)('kind %s at the start of a cell, and its keys', (kind) => {
    const keys = Object.keys(kinds[kind].keys);
    const text = [`${kind}: x`, ...keys.map((key) => `${key}: x`)].join('\n');
    const found = scopesIn(text);
    expect(found[0]).toBe(`${kind} keyword.control.kind`);
    for (const key of keys) expect(found).toContain(`${key} entity.name.tag`);
  });

  it('no kind inside another cell', () => {
    expect(scopesIn('readings: x\nchart: switching')).toContain('chart entity.name.tag');
    expect(scopesIn('diag: 1\nrepair: New gasket')).toContain('repair entity.name.tag');
  });

  it('a key of another kind as unknown', () => {
    expect(scopesIn('note: x\nverify: a > b')).toContain('verify entity.name.tag.unknown');
  });

  it.each(unitRows.flatMap((row) => (row.symbol === '1' ? [] : [row.symbol, ...row.also])))(
    'unit %s',
    (unit) => {
      const marks = [`2.5 constant.numeric`, `${unit} keyword.other.unit`];
      expect(scopesIn(`readings: x\nvalues:\n  own: 2.5 ${unit}`).slice(-2)).toEqual(marks);
      expect(scopesIn(`check: x\nexpect:\n  - 2.5 ${unit} < a`)).toEqual(expect.arrayContaining(marks));
      expect(scopesIn(`readings: x\ntable: |\n  reading  unit\n  own  ${unit}`).at(-1)).toBe(marks[1]);
    },
  );

  it.each(['g/s', 'kg/m³', 'kg/m^3', 'cm3', 's⁻¹', 'V·A', 'V.A', 'mg/stroke', 'g/kW/h', 'm/s²'])(
    'joined unit %s',
    (unit) => {
      expect(parseReading(`2 ${unit}`).diagnostics).toEqual([]);
      expect(scopesIn(`readings: x\nvalues:\n  own: 2 ${unit}`).at(-1)).toBe(`${unit} keyword.other.unit`);
    },
  );

  it.each(['inhg', 'PSI', 'kpa', 'Vx', 'g//s', 'bars'])('not %s, which is no unit', (unit) => {
    expect(parseReading(`2 ${unit}`).diagnostics).not.toEqual([]);
    expect(scopesIn(`readings: x\nvalues:\n  own: 2 ${unit}`).at(-1)).not.toBe(`${unit} keyword.other.unit`);
  });

  it.each([...keywords])('the language’s word %s, and not as a member', (word) => {
    const found = scopesIn(`check: x\nexpect:\n  - ${word} (a)`).find((each) => each.startsWith(`${word} `));
    expect(found).toMatch(
      new RegExp(`^${word} (keyword\\.control|keyword\\.operator\\.word|constant\\.language)$`),
    );
    expect(scopesIn(`check: x\nexpect:\n  - before.${word}`).at(-1)).toMatch(
      / (variable\.other|support\.variable\.signal)$/,
    );
  });

  it.each(functionNames())('function %s', (name) => {
    expect(scopesIn(`check: x\nlet:\n  a: ${name}(b)`)).toContain(`${name} support.function`);
  });

  it('every signal: as a key, in a table, in an expression', () => {
    for (const { name } of allSignals()) {
      const mark = `${name} support.variable.signal`;
      expect(scopesIn(`readings: x\nvalues:\n  ${name}: 1`)).toContain(mark);
      expect(scopesIn(`readings: x\ntable: |\n  reading  unit\n  ${name}  V`)).toContain(mark);
      expect(scopesIn(`check: x\nexpect:\n  - koeo.${name} > 1`)).toContain(mark);
      expect(scopesIn(`check: x\nexpect:\n  - ${name}_x > 1`)).not.toContain(mark);
    }
  });

  it('every engine state', () => {
    for (const { name } of engineStates) {
      expect(scopesIn(`readings: x\nstate: ${name}`).at(-1)).toBe(`${name} constant.language.state`);
      expect(scopesIn(`readings: x\nstate: {state: ${name}, gear: 4}`)).toContain(
        `${name} constant.language.state`,
      );
    }
    expect(scopesIn('readings: x\nstate: cruise control on').at(-1)).toBe(
      'cruise control on string.unquoted',
    );
  });
});

describe('the samples', () => {
  it.each([...samples])('%s: as many kinds as cells, and no word without a colour', (_, text) => {
    const found = tokens(grammar, text);
    const kindsFound = found
      .filter((token) => token.scope === 'keyword.control.kind')
      .map((token) => token.text);
    expect(kindsFound).toEqual(checkCase(text).file.cells.map(({ raw }) => /^\w+/m.exec(raw.text)?.[0]));
    const wrong = linesWithErrors(text);
    const plain = found.filter(
      (token) => token.scope === '' && token.text.trim() !== '' && !wrong.has(token.line),
    );
    expect(plain).toEqual([]);
  });

  it.each([...samples])('%s: what the core reads as a quantity is coloured as one', (_, text) => {
    const study = checkCase(text);
    const starts = lineStarts(text);
    const byOffset = tokens(grammar, text).map((token) => ({
      ...token,
      start: (starts[token.line - 1] ?? 0) + token.start,
    }));
    let seen = 0;
    for (const { cell, valueSpan } of study.readings) {
      const raw = study.file.cells[cell]?.raw;
      const words = raw?.text.slice(valueSpan.start, valueSpan.end) ?? '';
      if (raw === undefined || !/^[-+\d]/.test(words) || parseReading(words).diagnostics.length > 0) continue;
      const start = study.file.stream.starts[cell] ?? 0;
      const [from, to] = [start + valueSpan.start, start + valueSpan.end];
      const inside = byOffset.filter(
        (token) => token.start >= from && token.start < to && token.text.trim() !== '',
      );
      for (const { scope } of inside) {
        expect(scope, words).toMatch(
          /^(constant\.numeric|keyword\.other\.(unit|qualifier)|keyword\.operator\.(range|plus-minus))$/,
        );
      }
      seen += 1;
    }
    const quantities = study.readings.filter((each) => each.value.kind === 'one').length;
    expect(seen).toBeGreaterThanOrEqual(Math.min(1, quantities));
  });

  it('a half-typed cell spoils nothing behind its `---`', () => {
    const cells = [...samples.values()].flatMap((text) => text.split(/^---\n/m));
    const after = 'check: Next\nlet:\n  a: map + 1 kPa\n';
    const alone = shape(tokens(grammar, after), 0);
    const cut = fc
      .constantFrom(...cells)
      .chain((cell) => fc.nat(cell.length).map((end) => cell.slice(0, end)));
    fc.assert(
      fc.property(cut, (begun) => {
        const before = `${begun}\n---\n`;
        const lines = before.split('\n').length - 1;
        const found = tokens(grammar, before + after).filter((token) => token.line > lines);
        expect(shape(found, lines)).toEqual(alone);
      }),
      { numRuns: 300 },
    );
  });
});

describe('marks and words in their places', () => {
  const folder = new URL('./cases/', import.meta.url);
  const files = readdirSync(folder).filter((name) => name.endsWith('.diag'));
  it.each(files)('%s', async (name) => {
    const text = readFileSync(new URL(name, folder), 'utf8');
    await expect(annotated(grammar, text)).toMatchFileSnapshot(`./cases/${name}.tokens`);
  });
});

const shape = (found: readonly Token[], lines: number) =>
  found.map(({ line, start, text, scope }) => [line - lines, start, text, scope]);

function linesWithErrors(text: string): Set<number> {
  const study = checkCase(text);
  const lines = new Set<number>();
  for (const { cell, diagnostic } of study.findings) {
    const start = cell === undefined ? 0 : (study.file.stream.starts[cell] ?? 0);
    if (diagnostic.severity === 'error')
      lines.add(text.slice(0, start + diagnostic.span.start).split('\n').length);
  }
  return lines;
}

function lineStarts(text: string): number[] {
  const starts = [0];
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return starts;
}

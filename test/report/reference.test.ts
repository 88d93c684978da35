import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { allCodes } from '../../core/diagnostics/pages.ts';
import { message } from '../../core/diagnostics/words.ts';
import { convert } from '../../core/quantity/convert.ts';
import { allUnits, unitOf } from '../../core/quantity/unit.ts';
import { formulaLines } from '../../core/report/formulaLines.ts';
import { referencePages } from '../../core/report/markdown/reference/referencePages.ts';
import { pagesOf } from '../../core/report/pages.ts';
import { signalExample } from '../../core/report/signalExample.ts';
import { unitExample } from '../../core/report/unitExample.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { allSignals } from '../../core/signals/lookup.ts';
import { engineStates } from '../../core/signals/states.ts';
import { allFunctions } from '../../core/study/functions.ts';

const root = join(import.meta.dirname, '..', '..');
const pages = referencePages();
const all = pages.map(({ text }) => text).join('\n');

describe('the reference', () => {
  it.each(pages.map(({ path, text }) => [path, text] as const))('%s is as the tables say', (path, text) => {
    expect(readFileSync(join(root, path), 'utf8')).toBe(text);
  });

  it('has every function, signal, state, unit and finding once', () => {
    const headings = [...all.matchAll(/^### `([^`]+)`$/gm)].map(([, name = '']) => name.replace(/\(.*/, ''));
    const named = [
      ...allFunctions().map(({ name }) => name),
      ...allSignals().map(({ name }) => name),
      ...allCodes(),
    ];
    expect(headings.toSorted()).toEqual(named.toSorted());
    const page = (name: string) => pages.find(({ path }) => path.endsWith(name))?.text ?? '';
    for (const { symbol } of allUnits())
      expect(page('UNITS.md').split(`\n| \`${symbol}\` |`), symbol).toHaveLength(2);
    for (const { name } of engineStates)
      expect(page('SIGNALS.md').split(`\n| \`${name}\` |`), name).toHaveLength(2);
  });

  it('shows each formula, source and saying', () => {
    for (const row of allFunctions()) {
      expect(all).toContain(`\`\`\`\n${formulaLines(row).join('\n')}\n\`\`\``);
      for (const { words } of row.says ?? []) expect(all).toContain(`| ${words} |`);
    }
    const sources = [...all.matchAll(/^Source: \S/gm)];
    expect(sources).toHaveLength(allFunctions().length);
  });

  it('links to what is there', () => {
    for (const { path, text } of pages) {
      for (const [, link = ''] of text.matchAll(/\]\(([^)#]+)\)/g))
        expect(existsSync(join(root, dirname(path), link)), `${path}: ${link}`).toBe(true);
    }
  });

  it('is linked from the README', () => {
    expect(readFileSync(join(root, 'README.md'), 'utf8')).toContain('](core/REFERENCE.md)');
  });
});

describe('the example of a unit', () => {
  const examples = allUnits().flatMap((unit) => {
    const text = unitExample(unit);
    return text === undefined ? [] : [[unit.symbol, text] as const];
  });

  it('is there for all but those of SI itself', () => {
    const without = allUnits().filter((unit) => unitExample(unit) === undefined);
    expect(without.every(({ factor, offset }) => factor === 1 && offset === 0)).toBe(true);
    expect(examples.length).toBeGreaterThan(60);
  });

  it.each(examples)('of %s is right to its digits: %s', (symbol, text) => {
    const [, value = '', from = '', result = '', to = '1'] =
      /^(\S+) (\S+) = (\S+)(?: (\S+))?$/.exec(text) ?? [];
    expect(from).toBe(symbol);
    const [a, b] = [unitOf(from), unitOf(to)];
    if (a === undefined || b === undefined) expect.fail(text);
    const exact = convert(Number(value), a, b) ?? Number.NaN;
    expect(Math.abs(Number(result) / exact - 1)).toBeLessThan(1e-5);
  });
});

describe('the example of a signal', () => {
  const examples = allSignals().flatMap((signal) => {
    const example = signalExample(signal);
    return example === undefined ? [] : [[example.line, example.state] as const];
  });

  it('is there for all but those that hold a text', () => {
    const without = allSignals().filter((signal) => signalExample(signal) === undefined);
    expect(without.filter(({ holds }) => holds !== 'text').map(({ name }) => name)).toEqual([]);
  });

  it.each(examples)('%s at %s is found to be usual when it is typed into a case', (line, state) => {
    const studied = checkCase(
      `diag: 1\ncase: An example\n---\nreadings: One\n${state === undefined ? '' : `state: ${state}\n`}values:\n  ${line}\n`,
    );
    expect(studied.findings.map(({ diagnostic }) => message(diagnostic))).toEqual([]);
    expect(studied.readings.find(({ key }) => line.startsWith(`${key}: `))?.value.kind).toMatch(
      /^(one|words)$/,
    );
  });
});

describe('the page of a name', () => {
  const lines = (name: string) =>
    pagesOf(name).flatMap(({ rows }) => rows.map((row) => `${row.name}: ${row.lines.join('; ')}`));

  it('of a function that answers in words has everything that it can say', () => {
    expect(lines('titania_mixture')).toContainEqual(
      expect.stringMatching(/^Says: rich: .*; lean: .*; between: /),
    );
  });

  it('of a function of a curve says what the example is given', () => {
    expect(lines('reading_for')).toContainEqual(
      'Given: spec.maf_curve: [[0.4 V, 2 g/s], [1.1 V, 9 g/s], [2.6 V, 55 g/s]]',
    );
  });

  it('of a unit and of a signal has an example', () => {
    expect(lines('inHg')).toContainEqual('Example: 1 inHg = 3.38639 kPa');
    expect(lines('°F')).toContainEqual('Example: 20 °F = -6.66667 °C');
    expect(lines('map')).toContainEqual(
      expect.stringMatching(/^Example: map: \d+ kPa, at key on engine off$/),
    );
  });
});

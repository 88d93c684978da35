import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { samples } from '../support/samples.ts';

const read = (path: string) => JSON.parse(readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8'));
const configuration = read('syntaxes/language-configuration.json');

describe('the language’s configuration', () => {
  it.each(['map:', '  map:  # why', 'because: |', '  - predicts:', 'because: >-', 'vehicle: {year: 2011,'])(
    'a line more deeply behind `%s`',
    (line) => expect(line).toMatch(new RegExp(configuration.indentationRules.increaseIndentPattern)),
  );

  it.each([
    'map: 13.1 inHg',
    '---',
    '# note:',
    'readings: Key on: engine off',
    '  - idle > fast',
    'a: {b: c}',
    'a: [b]',
  ])('none behind `%s`', (line) =>
    expect(line).not.toMatch(new RegExp(configuration.indentationRules.increaseIndentPattern)),
  );

  it.each([
    ['  - name: air past the meter', true],
    ['  - idle > fast', false],
    ['  name: air past the meter', false],
    ['  - predicts:', false],
  ])('behind `%s` the next entry stands under the item’s first: %s', (line, does) => {
    const [rule] = configuration.onEnterRules;
    expect(new RegExp(rule.beforeText).test(line)).toBe(does);
    expect(rule.action).toEqual({ indent: 'none', appendText: '  ' });
  });

  it('takes names, numbers and units as words', () => {
    const { pattern, flags } = configuration.wordPattern;
    const words = 'before.idle.stft_b1 + 13.1 inHg > -40 °C, 8 % Öl'.match(new RegExp(pattern, `g${flags}`));
    expect(words).toEqual(['before', 'idle', 'stft_b1', '13.1', 'inHg', '-40', '°C', '8', '%', 'Öl']);
  });

  it('starts a line comment as the samples do', () => {
    expect(configuration.comments).toEqual({ lineComment: '#' });
    expect([...samples.values()].join('')).toMatch(/\s# /);
  });
});

describe('the manifest', () => {
  const { contributes } = read('package.json');

  it('gives `.diag` files the language and its grammar', () => {
    const [language] = contributes.languages;
    expect(language).toMatchObject({ id: 'diag', extensions: ['.diag'] });
    expect(read(language.configuration)).toEqual(configuration);
    const [grammar] = contributes.grammars;
    expect(grammar.language).toBe('diag');
    expect(read(grammar.path).scopeName).toBe(grammar.scopeName);
  });
});

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { tokenModifiers, tokenTypes } from '../../core/service/types.ts';
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
    const [, rule] = configuration.onEnterRules;
    expect(new RegExp(rule.beforeText).test(line)).toBe(does);
    expect(rule.action).toEqual({ indent: 'none', appendText: '  ' });
  });

  it.each([
    ['---', true],
    ['---   # the header', true],
    ['  ---', false],
    ['----', false],
  ])('behind `%s` the next line starts at the margin, whatever stands above: %s', (line, does) => {
    const [rule] = configuration.onEnterRules;
    expect(new RegExp(rule.beforeText).test(line)).toBe(does);
    expect(rule.action).toEqual({ indent: 'none' });
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

  it('gives every word that the language server colours the grammar’s own colour', () => {
    const [{ language, scopes }] = contributes.semanticTokenScopes;
    expect(language).toBe('diag');
    const types = Object.keys(scopes).map((selector) => selector.split('.')[0]);
    expect([...new Set(types)]).toEqual([...tokenTypes]);
    const grammar = readFileSync(new URL('../../syntaxes/diag.tmLanguage.json', import.meta.url), 'utf8');
    for (const [scope] of Object.values<string[]>(scopes)) {
      // A theme colours a scope by its beginning.
      expect(grammar).toContain(`"name": "${scope?.replace(/\.diag$/, '')}.`);
    }
  });

  it('knows every type and modifier of the language server that no editor knows by itself', () => {
    const own: string[] = contributes.semanticTokenTypes.map((each: { id: string }) => each.id);
    const everyones = ['function', 'parameter', 'keyword', 'operator', 'number', 'comment'];
    expect([...own, ...everyones].sort()).toEqual([...tokenTypes].sort());
    expect(contributes.semanticTokenModifiers.map((each: { id: string }) => each.id)).toEqual([
      ...tokenModifiers,
    ]);
  });
});

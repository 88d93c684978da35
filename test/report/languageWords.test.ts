import { describe, expect, it } from 'vitest';
import { parseExpression } from '../../core/expression/parse.ts';
import { keywords } from '../../core/expression/scan.ts';
import { languageWords } from '../../core/report/languageWords.ts';

describe('the words of expressions', () => {
  it('are those that the parser keeps for itself, each once', () => {
    expect(languageWords.flatMap(({ words }) => words).sort()).toEqual([...keywords].sort());
  });

  it.each(languageWords)('have an example that parses and holds them: $words', ({ words, example }) => {
    expect(parseExpression(example).diagnostics).toEqual([]);
    expect(words.some((word) => new RegExp(`\\b${word}\\b`).test(example))).toBe(true);
  });
});

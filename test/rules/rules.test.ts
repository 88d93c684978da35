import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../core/diagnostics/rows.ts';
import { allRules } from '../../core/rules/allRules.ts';
import { annotated, findingsOf } from '../support/annotated.ts';

/*
 * Each rule has a folder `spec/CODE`: `invalid.txt` holds cases that it must speak of, with everything that is said written under them,
 * `valid.txt` cases of which it must be silent. A line of five equal signs parts the cases of a file.
 */
const folder = join(import.meta.dirname, 'spec');
const codes = allRules.map(({ code }) => code);

const casesIn = (code: string, file: string): readonly string[] =>
  readFileSync(join(folder, code, file), 'utf8').split(/^=====\n/m);

/** What is merely unusual is the affair of its own rule: these cases are not about it. */
const isAbout = (code: string) => (line: string) =>
  code === 'unusual-value' || !/^\S+ unusual-value/.test(line);

describe('the folder of specifications', () => {
  it('has one for each rule and no other', () => {
    expect(readdirSync(folder).sort()).toEqual([...codes].sort());
    expect(new Set(codes).size).toBe(codes.length);
  });
});

describe.each(codes)('%s', (code) => {
  it.each(casesIn(code, 'invalid.txt').map((text, at) => [at + 1, text] as const))(
    'speaks of case %i',
    (_, source) => {
      const { text, marks } = annotated(source);
      expect(findingsOf(text, marks).filter(isAbout(code))).toEqual(marks);
      expect(marks.some((mark) => mark.includes(` ${code}`))).toBe(true);
    },
  );

  it('is worded in full in its cases', () => {
    expect(casesIn(code, 'invalid.txt').join('')).toMatch(new RegExp(`\\^…? ${code}: \\S`));
  });

  it.each(casesIn(code, 'valid.txt').map((text, at) => [at + 1, text] as const))(
    'is silent about case %i',
    (_, text) => {
      const said = findingsOf(text);
      expect(said.filter((line) => line.includes(` ${code}:`))).toEqual([]);
    },
  );

  it('has a page: why, a wrong example and a right one', () => {
    const { why, wrong, right, title } = catalogue[code];
    expect([why, wrong, right, title].every((each) => each.trim() !== '')).toBe(true);
    expect(wrong).not.toBe(right);
  });
});

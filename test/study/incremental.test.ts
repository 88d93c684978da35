import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCase } from '../../core/rules/checkCase.ts';
import { caseResult } from '../../core/study/results.ts';
import type { Study } from '../../core/study/types.ts';
import { sampleFiles, samples } from '../support/samples.ts';

const print = (study: Study): string => JSON.stringify(caseResult(study, 'case.diag'));

/** What a hand does to a file: replaces, deletes, inserts, doubles and moves. */
const snippets = [
  '',
  ' ',
  '\n',
  '---\n',
  '1',
  '.',
  'x',
  ' inHg',
  ': ',
  '- ',
  '"',
  '{',
  '+8 %',
  'map',
  'before.',
  '\t',
];

interface Edit {
  readonly at: number;
  readonly length: number;
  readonly text: string;
}

const edits = fc.array(
  fc.record({
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    length: fc.constantFrom(0, 0, 1, 2, 5, 40, 400),
    text: fc.constantFrom(...snippets),
  }),
  { minLength: 1, maxLength: 6 },
);

function apply(text: string, { at, length, text: inserted }: Edit): string {
  const start = Math.floor(at * text.length);
  return text.slice(0, start) + inserted + text.slice(start + length);
}

describe('studying a case again after a change', () => {
  it.each([...samples.keys()])('gives what a fresh study gives: %s', (name) => {
    const original = samples.get(name) ?? '';
    fc.assert(
      fc.property(edits, (list) => {
        let text = original;
        let study = checkCase(text, undefined, sampleFiles);
        for (const edit of list) {
          text = apply(text, edit);
          study = checkCase(text, study, sampleFiles);
          expect(print(study)).toBe(print(checkCase(text, undefined, sampleFiles)));
        }
      }),
      { numRuns: 25 },
    );
  });

  it('reads nothing of a file of another version, though its cells are the same', () => {
    const text = `diag: 1
case: "The quote never ends
---
readings: Idle
state: warm idle
values:
  map: 90 inHg
`;
    const before = checkCase(text);
    const other = text.replace('diag: 1', 'diag: 3.5');
    expect(print(before)).not.toBe(print(checkCase(other)));
    expect(print(checkCase(other, before))).toBe(print(checkCase(other)));
    expect(print(checkCase(text, checkCase(other, before)))).toBe(print(before));
  });

  it('computes nothing anew when nothing changed, and only what depends on a reading that did', () => {
    const text = `diag: 1
case: Two separate sums
---
readings: Idle
as: idle
state: warm idle
values:
  stft_b1: 8 %
  ltft_b1: 17 %
  map: 13.1 inHg
---
check: Trim
as: trims
let:
  total: total_trim(idle.stft_b1, idle.ltft_b1)
expect:
  - total between -10 % and 10 %
---
check: Pressure
let:
  half: idle.map / 2
expect:
  - half < 10 inHg
`;
    const first = checkCase(text);
    expect(first.memo.fresh).toBe(4);
    expect(checkCase(text, first).memo.fresh).toBe(0);
    expect(checkCase(text.replace('total between -10', 'total between -12'), first).memo.fresh).toBe(1);
    expect(checkCase(text.replace('13.1 inHg', '12.9 inHg'), first).memo.fresh).toBe(2);
    expect(checkCase(`# a remark on top\n${text}`, first).memo.fresh).toBe(0);
  });
});

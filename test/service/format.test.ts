import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCase } from '../../core/rules/checkCase.ts';
import { format } from '../../core/service/format.ts';
import { caseResult } from '../../core/study/results.ts';
import type { Study } from '../../core/study/types.ts';
import { applyEdits } from '../../core/text/edits.ts';
import { samples } from '../support/samples.ts';
import { caseOf } from './cursor.ts';

/** The whole file formatted, cell by cell. */
function formatted(study: Study): string {
  const edits = study.file.stream.starts.flatMap((start, index) =>
    format(study, index).map(({ span, newText }) => ({
      span: { start: span.start + start, end: span.end + start },
      newText,
    })),
  );
  return applyEdits(study.text, edits);
}

/** A cell before and after. */
function checkFormat(before: string, after: string): void {
  const study = caseOf(before);
  const raw = study.file.cells[1]?.raw.text ?? '';
  expect(applyEdits(raw, format(study, 1))).toBe(after.replace(/\n$/, ''));
}

/** All that a case says, but for the columns in which its findings stand. */
function meaning(text: string): unknown {
  const { diagnostics, expectations, ...rest } = caseResult(checkCase(text), 'case.diag');
  return {
    ...rest,
    expectations: expectations.map(({ column: _, ...each }) => each),
    diagnostics: diagnostics.map(({ code, severity, message, line }) => ({ code, severity, message, line })),
  };
}

const remarks = (text: string): string[] => text.match(/#.*/g) ?? [];

describe('formatting', () => {
  it('aligns values, and leaves remarks, maps and lists as they stand', () => {
    checkFormat(
      `readings: Gauge
values:
  map:  13.1 inHg   # remark
  battery: 12.5 V
  vacuum: {value: 16.4 inHg, tool: gauge}
  compression:
    1: 181 psi
  ect:     80 °C
`,
      `readings: Gauge
values:
  map:     13.1 inHg   # remark
  battery: 12.5 V
  vacuum: {value: 16.4 inHg, tool: gauge}
  compression:
    1: 181 psi
  ect:     80 °C
`,
    );
  });

  it('aligns the columns of tables, those of a spreadsheet too', () => {
    checkFormat(
      'readings: A\nstates:\n  i: warm idle\n  c: cruise\ntable: |\n  reading i c unit\n  map 13.1 not supported inHg\n',
      'readings: A\nstates:\n  i: warm idle\n  c: cruise\ntable: |\n  reading i c unit\n  map 13.1 not supported inHg\n',
    );
    checkFormat(
      'readings: A\nstates:\n  i: warm idle\n  c: cruise\ntable: |\n  reading  i  c  unit\n  map  13.1  not supported  inHg\n  stft_b1  -  +8  %\n',
      'readings: A\nstates:\n  i: warm idle\n  c: cruise\ntable: |\n  reading   i      c               unit\n  map       13.1   not supported   inHg\n  stft_b1   -      +8              %\n',
    );
    checkFormat(
      'readings: A\nstates:\n  i: warm idle\n  c: cruise\ntable: |\n  reading\ti\tc\tunit\n  map\t13.1\t\tinHg\n',
      'readings: A\nstates:\n  i: warm idle\n  c: cruise\ntable: |\n  reading   i      c   unit\n  map       13.1   -   inHg\n',
    );
  });

  it('counts characters and not bytes: `µs` and `Ω` are as wide as `ms`', () => {
    checkFormat(
      'reference: A\nas: a\nvalues:\n  größe: 3 mm\n  b: 2 µs\n',
      'reference: A\nas: a\nvalues:\n  größe: 3 mm\n  b:     2 µs\n',
    );
  });

  it('leaves a table alone whose words hold together by tabs only, and a cell that cannot be read', () => {
    const tabs = 'readings: A\ntable: |\n  reading\tmy value\tunit\n  map\t13\tinHg';
    checkFormat(tabs, tabs);
    const broken = 'readings: A\nvalues:\n  map:   13 inHg\n  re';
    checkFormat(broken, broken);
    const flow = 'readings: A\nvalues: {map:   13 inHg, ect: 80 °C}';
    checkFormat(flow, flow);
  });

  it('keeps the line ends of the file', () => {
    const text = 'readings: A\r\nvalues:\r\n  map:   1 inHg\r\n  battery: 12 V\r\n';
    expect(formatted(checkCase(text))).toBe(
      'readings: A\r\nvalues:\r\n  map:     1 inHg\r\n  battery: 12 V\r\n',
    );
  });

  it('changes no meaning, keeps every remark, and has nothing to do a second time, in every sample', () => {
    for (const [name, text] of samples) {
      const after = formatted(checkCase(text));
      expect(meaning(after), name).toEqual(meaning(text));
      expect(remarks(after), name).toEqual(remarks(text));
      expect(formatted(checkCase(after)), name).toBe(after);
    }
  });

  it('changes no meaning in cells with any gaps, tabs, remarks and odd words', () => {
    const gap = fc.constantFrom(' ', '  ', '    ', '\t', ' \t ');
    const value = fc.constantFrom(
      '13.1 inHg',
      '"13.1 inHg"',
      "'80 °C'",
      '-',
      'not taken',
      '+8 %',
      '{value: 3 V}',
      '1 x',
      '',
    );
    const key = fc.constantFrom('map', 'ect', 'battery', 'stft_b1', '"rpm"', 'no_such');
    const remark = fc.constantFrom('', ' # remark', '  #x: y');
    const entry = fc.tuple(key, gap, value, remark).map(([k, g, v, r]) => `  ${k}:${g}${v}${r}`);
    const word = fc.constantFrom(
      'map',
      'ect',
      '13.1',
      '-',
      '',
      'not supported',
      'inHg',
      'a  b',
      'idle',
      'unit',
      '°C',
    );
    const row = fc
      .tuple(fc.array(word, { minLength: 1, maxLength: 5 }), gap)
      .map(([words, g]) => `  ${words.join(g)}`);
    const cell = fc.oneof(
      fc.array(entry, { maxLength: 6 }).map((lines) => ['values:', ...lines]),
      fc.array(row, { maxLength: 5 }).map((lines) => ['states:', '  idle: warm idle', 'table: |', ...lines]),
    );
    fc.assert(
      fc.property(cell, (lines) => {
        const text = ['readings: A', ...lines, ''].join('\n');
        const after = formatted(checkCase(text));
        expect(meaning(after)).toEqual(meaning(text));
        expect(formatted(checkCase(after))).toBe(after);
      }),
      { numRuns: 500 },
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCase } from '../../core/rules/checkCase.ts';
import { service } from '../../core/service/service.ts';
import type { Study } from '../../core/study/types.ts';
import type { Span } from '../../core/text/span.ts';
import { samples } from '../support/samples.ts';

/** Asks everything at one place; every span that comes back must lie in its cell. */
function askAll(study: Study, cell: number, offset: number): void {
  const raw = study.file.cells[cell]?.raw;
  const length = raw === undefined ? 0 : raw.text.length + raw.ending.length;
  const within = ({ start, end }: Span): void => {
    expect(start).toBeGreaterThanOrEqual(0);
    expect(start).toBeLessThanOrEqual(end);
    expect(end).toBeLessThanOrEqual(length);
  };
  const inCell = (of: number, { start, end }: Span): void => {
    expect(start).toBeLessThanOrEqual(end);
    expect(end).toBeLessThanOrEqual(study.file.cells[of]?.raw.text.length ?? 0);
  };
  const hover = service.hover(study, cell, offset);
  if (hover !== undefined) within(hover.span);
  for (const { span } of service.completions(study, cell, offset).items) {
    within(span);
    const cursor = Math.min(offset, length);
    expect(span.start <= cursor && cursor <= span.end).toBe(true);
  }
  service.signature(study, cell, offset);
  for (const each of service.definitions(study, cell, offset)?.targets ?? [])
    inCell(each.cell, each.nameSpan);
  for (const each of service.references(study, cell, offset)) inCell(each.cell, each.span);
  service.renamable(study, cell, offset);
  let last: Span | undefined;
  for (const each of service.selections(study, cell, offset)) {
    within(each);
    if (last !== undefined) expect(each.start <= last.start && last.end <= each.end).toBe(true);
    last = each;
  }
  for (const fix of service.fixes(study, cell, { start: offset, end: offset })) {
    for (const { cell: of, edits } of fix.edits) for (const { span } of edits) inCell(of, span);
  }
  for (const each of service.symbols(study, cell)) within(each.span);
  for (const each of service.folds(study, cell)) within(each.span);
  let end = 0;
  for (const { span } of service.tokens(study, cell)) {
    within(span);
    expect(span.start).toBeGreaterThanOrEqual(end);
    expect(raw?.text.slice(span.start, span.end)).not.toMatch(/[\r\n]/);
    end = span.end;
  }
  for (const each of service.inlayHints(study, cell)) within({ start: each.offset, end: each.offset });
  for (const each of service.links(study, cell)) within(each.span);
  for (const { span } of service.format(study, cell)) within(span);
  service.result(study, cell);
}

function askAt(text: string, at: number): void {
  const study = checkCase(text);
  const cell = study.file.stream.starts.findLastIndex((start) => start <= at);
  askAll(study, cell, at - (study.file.stream.starts[cell] ?? 0));
}

describe('half-typed text', () => {
  const texts = [...samples.values()];

  it('is answered at the end of every sample cut short anywhere', () => {
    fc.assert(
      fc.property(fc.constantFrom(...texts), fc.double({ min: 0, max: 1, noNaN: true }), (text, part) => {
        const at = Math.floor(text.length * part);
        askAt(text.slice(0, at), at);
      }),
      { numRuns: 150 },
    );
  });

  it('is answered where something odd is typed into a sample', () => {
    const typed = fc.constantFrom(
      '',
      ':',
      ' ',
      '\n',
      '\n  ',
      '- ',
      '{',
      '[',
      '"',
      "'",
      '#',
      '|',
      '.',
      '(',
      ',',
      '\t',
      '---\n',
      'x',
      '°',
      '\r\n',
      '&a',
      '*a',
      '%',
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...texts),
        fc.double({ min: 0, max: 1, noNaN: true }),
        typed,
        (text, part, words) => {
          const at = Math.floor(text.length * part);
          askAt(text.slice(0, at) + words + text.slice(at), at + words.length);
        },
      ),
      { numRuns: 150 },
    );
  });

  it('is answered in texts that are no case at all', () => {
    for (const text of [
      '',
      '\n',
      '---',
      '---\n---\n',
      '- a',
      'null',
      '{',
      '"',
      'a: b: c',
      '%YAML 1.2\n---\n',
      '<<<<<<< a\n',
      '\ufeffdiag: 1\n',
    ]) {
      for (let at = 0; at <= text.length; at++) askAt(text, at);
    }
  });

  it('gives the empty answer for a cell that is not there', () => {
    const study = checkCase('diag: 1\ncase: A\n');
    expect(service.hover(study, 7, 0)).toBeUndefined();
    expect(service.completions(study, 7, 0).items).toEqual([]);
    expect(service.tokens(study, 7)).toEqual([]);
    expect(service.result(study, 7).blocks).toEqual([]);
    expect(service.fixes(study, 7, { start: 0, end: 0 })).toEqual([]);
    expect(service.rename(study, 7, 0, 'x')).toEqual({ refused: 'There is no name here.' });
  });
});

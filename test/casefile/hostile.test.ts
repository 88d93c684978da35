import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kindNames } from '../../core/casefile/kinds/kinds.ts';
import { limits } from '../../core/casefile/limits.ts';
import { readCase } from '../../core/casefile/readCase.ts';
import { joinStream } from '../../core/casefile/stream.ts';
import { exampleCase } from './exampleCase.ts';
import { cellOf, codes, findings, header } from './found.ts';

/** Milliseconds: what takes a second is one, what hangs takes minutes, and the machine may be busy. */
const patience = 20_000;

/** Reads a text and tells what was found, in bounded time. */
function within(text: string): string[] {
  const started = performance.now();
  const found = codes(text);
  expect(performance.now() - started).toBeLessThan(patience);
  return found;
}

describe('hostile and damaged files', () => {
  it('a file of 50 MB', () => {
    const started = performance.now();
    const text = 'x: y\n'.repeat(10_000_000);
    const file = readCase(text);
    expect(file.cells).toEqual([]);
    expect(file.diagnostics.map((each) => each.code)).toEqual(['file-too-long']);
    expect(joinStream(file.stream)).toBe(text);
    expect(performance.now() - started).toBeLessThan(patience);
    expect(findings('x'.repeat(limits.fileLength + 1))[0]?.says).toBe(
      'The file has 1048577 characters; a case may have 1048576. Put sampled data into a capture file beside the case.',
    );
  });

  it('100,000 brackets', { timeout: 60_000 }, () => {
    const text = `${header}values: ${'['.repeat(100_000)}${']'.repeat(100_000)}`;
    expect(findings(text)).toEqual([
      {
        code: 'nested-too-deep',
        at: '4:137',
        covers: '[',
        says: 'Lists and maps stand more than 32 deep inside each other here. No cell needs that: take some brackets or dashes away.',
      },
    ]);
    for (const part of ['[', '[ ', '{', '{a: ', '[x, ', '["", ', '- ', '? ', '[\n  ']) {
      expect(within(`${header}note: x\nvalues:\n  ${part.repeat(100_000)}`)[0], part).toBeDefined();
    }
  });

  it('lists just within and just beyond the depth', () => {
    const nested = (depth: number) => `readings: x\nvalues:\n  a: ${'['.repeat(depth)}1${']'.repeat(depth)}`;
    expect(codes(header + nested(limits.depth - 2))).toEqual([]);
    expect(codes(header + nested(limits.depth - 1))).toEqual(['nested-too-deep']);
    const dashes = (depth: number) => `readings: x\nvalues:\n  a:\n    ${'- '.repeat(depth)}1`;
    expect(codes(header + dashes(limits.depth - 2))).toEqual([]);
    expect(codes(header + dashes(limits.depth - 1))).toEqual(['nested-too-deep']);
  });

  it('an alias bomb is never expanded', () => {
    const levels = Array.from(
      { length: 30 },
      (_, i) => `  l${i + 1}: &l${i + 1} [${'*l'.padEnd(2)}${i}, *l${i}, *l${i}]`,
    );
    const text = `${header}readings: x\nvalues:\n  l0: &l0 [1 V, 2 V]\n${levels.join('\n')}`;
    const found = within(text);
    expect(new Set(found)).toEqual(new Set(['anchor', 'alias']));
    expect(findings(text)[0]).toEqual({
      code: 'anchor',
      at: '6:7',
      covers: '&l0',
      says: '`&l0` is a YAML anchor, which cases do not use. If it is meant as text, put the whole value in quotes; otherwise delete it.',
    });
  });

  it('merge markers are named and nothing is repaired', () => {
    const text = `${header}readings: x\nvalues:\n<<<<<<< mine\n  map: 13.1 inHg\n||||||| before\n  map: 1 inHg\n=======\n  map: 31.1 inHg\n>>>>>>> yours\n`;
    const says = (marker: string) =>
      `The line \`${marker}\` is left over from joining two versions of this file. Decide which lines are right, delete the others and all the marker lines.`;
    expect(findings(text)).toEqual([
      { code: 'merge-conflict', at: '6:1', covers: '<<<<<<< mine', says: says('<<<<<<< mine') },
      { code: 'merge-conflict', at: '8:1', covers: '||||||| before', says: says('||||||| before') },
      { code: 'merge-conflict', at: '10:1', covers: '=======', says: says('=======') },
      { code: 'merge-conflict', at: '12:1', covers: '>>>>>>> yours', says: says('>>>>>>> yours') },
    ]);
    expect(readCase(text).cells[1]?.cell).toBeUndefined();
    expect(joinStream(readCase(text).stream)).toBe(text);
    expect(codes(`${header}note: |\n  Heading\n  =======\n  <<<<<<< not one`)).toEqual([]);
  });

  it('names that every object of the language has', () => {
    for (const name of ['__proto__', 'constructor', 'toString', 'hasOwnProperty', 'prototype']) {
      expect(codes(`${header}${name}: x`)).toEqual(['unknown-kind']);
      expect(codes(`${header}note: x\n${name}: y`)).toEqual(['unknown-key']);
      expect(codes(`${header}check: x\nlet:\n  ${name}: 1 V\nexpect: ${name} > 0 V`)).toEqual([]);
      const { cell } = cellOf(`readings: x\nas: ${name}\nvalues:\n  ${name}: {${name}: 1 V}`);
      expect(cell?.kind === 'readings' ? cell.values?.entries[0]?.key.text : undefined).toBe(name);
      expect(Object.getPrototypeOf(cell)).toBeNull();
    }
    expect(Object.getPrototypeOf({})).toBe(Object.prototype);
  });

  it('characters that are not text', () => {
    expect(findings(`${header}note: a\0b`)).toEqual([
      {
        code: 'control-character',
        at: '4:8',
        covers: '\0',
        says: 'Here stands a null character (U+0000), a character that is not text and that no editor shows. Delete it.',
      },
    ]);
    expect(findings(`${header}note: a\ud800b`)[0]?.says).toBe(
      'Here stands half of a character (U+D800), a character that is not text and that no editor shows. Delete it.',
    );
    expect(codes(`${header}note: a\uFEFFb`)).toEqual(['control-character']);
    expect(codes(`${header}note: 😀 ° ± Ω\tx`)).toEqual([]);
    expect(codes(header + '\0'.repeat(1000))).toHaveLength(21);
  });

  it('quotes and brackets that are never closed', () => {
    for (const open of ['"', "'", '[', '{', '{a: "', '[[', '|\n"', '>\n  x\n "']) {
      expect(
        within(`${header}test: x\nfound: ${open}${'word '.repeat(5000)}\n${'did: y\n'.repeat(500)}`).length,
      ).toBeGreaterThan(0);
    }
  });

  it('far too many of anything', () => {
    expect(within('---\n'.repeat(200_000))).toEqual(['too-many-cells']);
    expect(within(`${header}note: |\n  ${'x'.repeat(limits.textLength + 1)}`)).toEqual(['text-too-long']);
    expect(within(`${header}note: |\n  ${'x\n  '.repeat(limits.cellLength / 4)}`)).toEqual(['cell-too-long']);
    const many = Array.from({ length: limits.entries + 1 }, (_, i) => `  k${i}: 1 V`).join('\n');
    expect(within(`${header}readings: x\nvalues:\n${many}`)).toEqual(['too-many-entries']);
    expect(within(`${header}note: x${' #'.repeat(100_000)}`)).toEqual(['text-cut-off']);
    expect(within(`${header}note: ${'"'.repeat(100_000)}`).length).toBe(1);
    expect(within(`${header}${'=======\n'.repeat(10_000)}`)).toHaveLength(50);
    expect(within(`${header}test: x\n${'found: a: b\n'.repeat(5000)}`).length).toBeGreaterThan(0);
  });

  it('every prefix of a case', { timeout: 60_000 }, () => {
    const started = performance.now();
    for (let end = 0; end <= exampleCase.length; end++) {
      const text = exampleCase.slice(0, end);
      expect(joinStream(readCase(text).stream)).toBe(text);
    }
    expect(performance.now() - started).toBeLessThan(60_000);
  });

  it.each(kindNames)('`%s` with a list of points with colons where its title belongs', (kind) => {
    const text = `${kind}:\n- idle: 600 rpm\n- fuel: low\n`;
    expect(readCase(text).cells[0]?.cell).toBeUndefined();
    expect(findings(text).map(({ code }) => code)).toContain('wrong-shape');
  });

  it('any text at all', () => {
    const odd = fc.constantFrom(
      ...'\t\n\r :-?#"\'[]{}|>&*!%@`\\,.\0\uFEFF\ud800',
      '---\n',
      '...\n',
      'note: ',
      '\n  ',
      '- ',
      '__proto__: ',
    );
    const text = fc
      .array(fc.oneof(odd, odd, fc.string({ unit: 'binary', maxLength: 3 }), fc.constantFrom('a', 'diag: 1')))
      .map((parts) => parts.join(''));
    fc.assert(
      fc.property(text, (each) => {
        const file = readCase(each);
        expect(joinStream(file.stream)).toBe(each);
        for (const found of findings(each)) expect(found.says).not.toMatch(/undefined|\[object/);
        for (const { raw, diagnostics } of file.cells) {
          for (const { span, fixes } of diagnostics) {
            expect(span.start).toBeLessThanOrEqual(span.end);
            expect(span.end).toBeLessThanOrEqual(raw.text.length);
            for (const edit of fixes.flatMap((fix) => fix.edits)) {
              expect(edit.span.start).toBeLessThanOrEqual(edit.span.end);
              expect(edit.span.end).toBeLessThanOrEqual(raw.text.length);
            }
          }
        }
      }),
      { numRuns: 2000 },
    );
  });
});

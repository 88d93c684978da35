import fc from 'fast-check';
import { expect, it } from 'vitest';
import { inMemory } from '../../core/recording/files.ts';
import { noFormat } from '../../core/recording/layout.ts';
import { captureFromFile } from '../../core/service/captureFromFile.ts';
import { said, studied } from './caseFiles.ts';

const pieces = [
  '0',
  '1',
  '2.5',
  '-3',
  '1,5',
  '1.234,5',
  "1'234",
  '1e3',
  '10:20:30',
  '10:20',
  '59:59.5',
  '2026-03-01T10:20:30Z',
  '01.03.2026 10:20:30',
  '1772360430500',
  'NaN',
  '---',
  'ERR',
  'ON',
  '∞',
  'Time',
  'Time (s)',
  't2',
  'O2 (V)',
  'RPM',
  's',
  '%',
  '(ms)',
  'channel',
  '"',
  '""',
  '"a\nb"',
  "'",
  '#',
  '//',
  'sep=;',
  ',',
  ',',
  ';',
  ';',
  '\t',
  '|',
  ' ',
  '\n',
  '\n',
  '\n',
  '\r\n',
  '\r',
  '\0',
  '\u001a',
  '\ufeff',
  '°',
  'é',
];
const anyText = fc.array(fc.constantFrom(...pieces), { maxLength: 120 }).map((parts) => parts.join(''));
const anyBytes = fc.oneof(
  anyText.map((text) => new TextEncoder().encode(text)),
  anyText.map((text) => Uint8Array.from(text, (each) => each.charCodeAt(0) & 255)),
  anyText.map((text) =>
    Uint8Array.from([...text].flatMap((each) => [each.charCodeAt(0) & 255, each.charCodeAt(0) >> 8])),
  ),
  fc.uint8Array({ maxLength: 300 }),
);

/** A grid as a tool would write one, with anything in its cells. */
const anyGrid = fc
  .record({
    mark: fc.constantFrom(',', ';', '\t', '|'),
    width: fc.integer({ min: 1, max: 5 }),
    cells: fc.array(fc.constantFrom(...pieces.slice(0, 40)), { minLength: 5, maxLength: 100 }),
  })
  .map(({ mark, width, cells }) => {
    const lines: string[] = [];
    for (let at = 0; at < cells.length; at += width) lines.push(cells.slice(at, at + width).join(mark));
    return new TextEncoder().encode(`${lines.join('\n')}\n`);
  });

it('any file is read or refused: nothing throws, samples and times are as many, and what is wrong is said', () => {
  fc.assert(
    fc.property(fc.oneof(anyBytes, anyGrid), (bytes) => {
      const study = studied(bytes);
      const words = said(study);
      for (const { value } of study.readings) {
        if (value.kind !== 'series') {
          expect(words.length).toBeGreaterThan(0);
          continue;
        }
        expect(value.samples.length).toBe(value.time.length);
        expect(
          value.time.every((each, i) => !Number.isNaN(each) && each >= (value.time[i - 1] ?? each)),
        ).toBe(true);
      }
      if (study.readings.length === 0) expect(words.length).toBeGreaterThan(0);
      const made = captureFromFile({
        file: 'log.csv',
        content: inMemory(bytes),
        format: noFormat,
        taken: new Set(),
        at: undefined,
      });
      expect('why' in made ? made.why : made.readAs).not.toBe('');
    }),
    { numRuns: 1500 },
  );
});

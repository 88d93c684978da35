import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { joinStream, splitStream } from '../../core/casefile/stream.ts';
import { changedNotebook, type HeldCell, type Notebook, placesOf } from '../../extension/server/notebook.ts';
import { type WrittenNotebook, writtenNotebook } from '../../extension/server/writtenNotebook.ts';
import { writeNotebook } from '../../extension/shared/notebookText.ts';

const word = fc.constantFrom(
  '',
  '\n',
  '\r\n',
  '\r',
  '---',
  '--- ',
  '---\n',
  '# c',
  'diag: 1',
  'note: x',
  '\ufeff',
  'a',
);
const text = fc.array(word, { maxLength: 4 }).map((words) => words.join(''));
/** What stands in metadata is mostly what a reader put there, and sometimes anything. */
const separator = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom('---\n', '--- # next\n', '---\r\n', '') },
  { weight: 1, arbitrary: text },
);
const ending = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom('\n', '\r\n', '') },
  { weight: 1, arbitrary: text },
);
const cell = fc.record({
  kind: fc.constantFrom('code' as const, 'code' as const, 'note' as const),
  value: text,
  metadata: fc.record({ separator, ending }, { requiredKeys: [] }),
});
const metadata = fc.record(
  {
    prologue: fc.oneof(fc.constantFrom('', '# c\n', '\ufeff'), text),
    lineBreak: fc.constantFrom('\n', '\r\n'),
    ending,
  },
  { requiredKeys: [] },
);

function notebookOf(of: Notebook['metadata'], cells: readonly HeldCell['cell'][]): Notebook {
  const held = cells.map((each, index) => ({ uri: `#${index}`, version: 1, cell: each }));
  return { kind: 'notebook', uri: 'n', version: 1, metadata: of, cells: held, places: placesOf(held) };
}

function expectWritten(written: WrittenNotebook, { metadata, cells }: Notebook): void {
  const whole = writeNotebook({ metadata, cells: cells.map((each) => each.cell) });
  const { file, starts, documents } = written;
  expect(typeof file === 'string' ? file : joinStream(file)).toBe(whole);
  if (typeof file !== 'string') expect(file).toEqual(splitStream(whole));
  expect(documents.map(({ uri, version }) => `${uri} ${version}`)).toEqual(
    cells.map(({ uri, version }) => `${uri} ${version}`),
  );
  for (const [index, each] of documents.entries())
    expect(whole.slice(starts[index], (starts[index] ?? 0) + each.text.length)).toBe(each.text);
}

describe('a notebook as its file', () => {
  it('has the cells that a reader finds in the text, after each change as before', () => {
    let inPieces = 0;
    fc.assert(
      fc.property(
        metadata,
        fc.array(cell, { maxLength: 5 }),
        fc.array(fc.tuple(fc.nat(4), text, fc.nat(1)), { maxLength: 5 }),
        (of, cells, changes) => {
          let notebook = notebookOf(of, cells);
          let written = writtenNotebook(notebook);
          expectWritten(written, notebook);
          for (const [at, value, deleted] of changes) {
            const uri = `#${at}`;
            const splice = deleted === 0 ? undefined : { start: at, deleted, inserted: [] };
            const texts = deleted === 0 ? [{ uri, version: notebook.version + 1, text: value }] : [];
            const version = notebook.version + 1;
            notebook = changedNotebook(notebook, { version, metadata: undefined, splice, data: [], texts });
            written = writtenNotebook(notebook, written);
            expectWritten(written, notebook);
            const { documents, starts, file } = writtenNotebook(notebook);
            expect(written).toMatchObject({ documents, starts, file });
          }
          if (typeof written.file !== 'string') inPieces++;
        },
      ),
      { numRuns: 1500 },
    );
    expect(inPieces).toBeGreaterThan(300);
  });
});

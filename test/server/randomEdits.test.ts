import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { service } from '../../core/service/service.ts';
import { samples } from '../support/samples.ts';
import { Editor, type EditorNotebook } from './editor.ts';

/** What a hand does to a notebook. `at` and `to` choose cells as parts of their number. */
type Deed =
  | {
      readonly kind: 'type';
      readonly at: number;
      readonly where: number;
      readonly deleted: number;
      readonly text: string;
    }
  | { readonly kind: 'insert'; readonly at: number; readonly text: string; readonly note: boolean }
  | { readonly kind: 'copy' | 'move'; readonly at: number; readonly to: number }
  | { readonly kind: 'delete' | 'reopen' | 'recompute'; readonly at: number }
  | { readonly kind: 'language'; readonly at: number; readonly language: string };

const part = fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true });

const deed: fc.Arbitrary<Deed> = fc.oneof(
  {
    weight: 5,
    arbitrary: fc.record({
      kind: fc.constant('type' as const),
      at: part,
      where: part,
      deleted: fc.constantFrom(0, 0, 1, 3, 20),
      text: fc.constantFrom('', '1', ',', ' inHg', '\n', '\n---\n', 'as: x\n', ': ', '"', 'map', '.', '# '),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constant('insert' as const),
      at: part,
      text: fc.constantFrom(
        '',
        'note: a',
        'readings: Odd\nvalues:\n  map: 13,1 inHg',
        'diag: 1\ncase: Twice',
        '---\n---',
      ),
      note: fc.boolean(),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({ kind: fc.constantFrom('copy' as const, 'move' as const), at: part, to: part }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constantFrom('delete' as const, 'reopen' as const, 'recompute' as const),
      at: part,
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constant('language' as const),
      at: part,
      language: fc.constantFrom('yaml', 'diag', 'markdown'),
    }),
  },
);

async function perform(editor: Editor, notebook: EditorNotebook, what: Deed): Promise<void> {
  const count = notebook.cells.length;
  const index = Math.floor(what.at * count);
  switch (what.kind) {
    case 'type': {
      const text = notebook.cells[index]?.cell.value ?? '';
      const start = Math.floor(what.where * text.length);
      return notebook.replace(index, start, Math.min(text.length, start + what.deleted), what.text);
    }
    case 'insert':
      return notebook.insert(index, what.text, what.note ? 'note' : 'code');
    case 'copy':
      return notebook.copy(index, Math.floor(what.to * count));
    case 'move':
      return notebook.move(index, Math.floor(what.to * count));
    case 'delete':
      // An editor closes a notebook without cells.
      return count > 1 ? notebook.delete(index) : undefined;
    case 'language':
      return count > 1 ? notebook.changeLanguage(index, what.language) : undefined;
    case 'reopen':
      await notebook.close();
      return notebook.open();
    case 'recompute':
      await editor.ask('diag/recompute', { uri: notebook.uri });
  }
}

/** Everything that a person sees of a notebook. */
async function seen(editor: Editor, notebook: EditorNotebook) {
  await editor.settled();
  return {
    findings: notebook.cells.map(({ uri }) => editor.findings.get(uri) ?? []),
    results: editor.results.at(-1)?.cells,
    others: [...editor.findings.keys()].filter((uri) => notebook.cells.every((each) => each.uri !== uri)),
  };
}

/** A hundred runs of up to ten edits, in parts: a slow machine gets through each within a test's time. */
const parts = [1, 2, 3, 4];
const runsInAll = 100;

describe('after any edits', () => {
  it.each(parts)('a notebook shows what it would show if it was opened as it is now (part %i)', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...samples.keys()),
        fc.array(fc.tuple(deed, fc.boolean()), { minLength: 1, maxLength: 10 }),
        async (name, deeds) => {
          const editor = await Editor.start({ service });
          const notebook = await editor.openNotebook('file:///cases/case.diag', samples.get(name) ?? '');
          for (const [what, rests] of deeds) {
            await perform(editor, notebook, what);
            if (rests) await editor.settled();
          }
          const fresh = await Editor.start({ service });
          const copy = await fresh.openCopy(notebook);
          expect(await seen(editor, notebook)).toEqual(await seen(fresh, copy));
        },
      ),
      { numRuns: runsInAll / parts.length },
    );
  });
});

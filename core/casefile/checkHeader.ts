import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import { shift } from '../text/span.ts';
import type { CaseFile, ReadCell } from './readCase.ts';
import { cellsWith } from './traits.ts';
import type { Entry } from './tree.ts';

/** The first cell is the header of a known format, and no other cell is one. Spans count in the file. */
export function checkHeader(file: Omit<CaseFile, 'diagnostics'>, length: number): Diagnostic[] {
  const { cells, stream } = file;
  const first = cells[0];
  if (first === undefined) return [diagnose('empty-file', { start: 0, end: length === 0 ? 0 : 1 }, {})];
  const found: Diagnostic[] = [];
  const check = (cell: ReadCell, index: number): void => {
    const start = stream.starts[index] ?? 0;
    const kind = kindEntry(cell);
    if (kind?.key.text !== 'diag') {
      if (index === 0 && !isMisspelt(cell)) found.push(noHeader(cell, start));
      return;
    }
    if (index > 0) found.push(diagnose('second-header', shift(kind.key.span, start), {}));
    const version = kind.value.kind === 'text' ? kind.value.text : '';
    if (version === '1') return;
    const span = version === '' ? kind.key.span : kind.value.span;
    found.push(diagnose('unknown-version', shift(span, start), { version }));
  };
  check(first, 0);
  for (const index of cellsWith(file, 'file')) {
    const other = index === 0 ? undefined : cells[index];
    if (other !== undefined && (other.cell === undefined || other.cell.kind === 'diag')) check(other, index);
  }
  return found;
}

/** `Diag: 1`, `diag 1`, `diag` on a later line: told as what it is, and no second header is offered. */
function isMisspelt({ raw, diagnostics }: ReadCell): boolean {
  return /^diag\b/im.test(raw.text) && diagnostics.some(({ severity }) => severity === 'error');
}

function noHeader({ raw }: ReadCell, start: number): Diagnostic {
  const { separator, text } = raw;
  const end = text.search(/[\r\n]/);
  const span = { start, end: start + (end < 0 ? text.length : end) };
  const at = start - separator.length;
  const [lead, after] = separator === '' ? ['', '---\n'] : ['---\n', ''];
  return diagnose('no-header', span, {}, [
    {
      title: 'Put a header before it',
      edits: [{ span: { start: at, end: at }, newText: `${lead}diag: 1\ncase: \n${after}` }],
    },
  ]);
}

/** The entry that says what a cell is; a cell that could not be read whole may still say so on its first line. */
function kindEntry(cell: ReadCell): Entry | undefined {
  if (cell.tree?.kind === 'map') return cell.tree.entries[0];
  const line =
    /^(?:[ \t]*(?:#[^\r\n]*)?[\r\n])*(diag):[ \t]+([^\r\n#]*?)[ \t]*(?:#[^\r\n]*)?(?=[\r\n]|$)/.exec(
      cell.raw.text,
    );
  if (line === null) return undefined;
  const at = line[0].indexOf('diag');
  const value = line[2] ?? '';
  const valueAt = line[0].indexOf(value, at + 5);
  const text = (word: string, start: number) =>
    ({
      kind: 'text',
      text: word,
      style: 'plain',
      span: { start, end: start + word.length },
      map: [[0, start]],
    }) as const;
  return { key: text('diag', at), value: text(value, valueAt) };
}

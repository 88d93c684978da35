import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { shortened } from '../shortened.ts';
import { type Line, linesOf } from './writtenEntry.ts';

/** A note that is no block after `|` or `>`, with lines starting with `#`, which YAML would drop as remarks. */
export function noteLinesTrap(text: string): Diagnostic | undefined {
  if (!text.includes('#')) return undefined;
  const lines = linesOf(text);
  const first = lines.findIndex((line) => /^note:(?=[ \t]|$)/.test(text.slice(line.start, line.end)));
  const head = lines[first];
  if (head === undefined) return undefined;
  const words = text.slice(head.start + 5, head.end).trim();
  if (/^[|>"'[{]/.test(words)) return undefined;
  const body = bodyOf(text, lines.slice(first + 1));
  const heading: Line = { ...head, column: text.indexOf('#', head.start) - head.start };
  if (words.startsWith('#') && !body.some((line) => isWords(text, line))) return undefined;
  const lost = words.startsWith('#') ? heading : body.find((line) => text[line.start + line.column] === '#');
  if (lost === undefined) return undefined;
  const last = body.at(-1) ?? lost;
  const lineBreak = text.includes('\r\n') ? '\r\n' : text.includes('\n') ? '\n' : '\r';
  const indent = Math.min(
    ...body.filter((line) => line.column < line.end - line.start).map((line) => line.column),
  );
  const kept = body.map((line) => text.slice(line.start, line.end).slice(indent));
  const block = [...(words === '' ? [] : [words]), ...kept].map((line) =>
    line.trim() === '' ? '' : `  ${line}`,
  );
  const newText = [' |', ...block].join(lineBreak);
  const fix = {
    title: 'Write the note as a block after `|`',
    edits: [{ span: { start: head.start + 5, end: last.end }, newText }],
  };
  const span = { start: lost.start + lost.column, end: lost.end };
  return diagnose('note-lines-dropped', span, { lines: shortened(text.slice(span.start, span.end)) }, [fix]);
}

/** A line of the note itself, and no block that starts there. */
function isWords(text: string, line: Line): boolean {
  return line.start + line.column < line.end && !/[|>"'[{#]/.test(text[line.start + line.column] ?? '');
}

/**
 * The lines that belong to the note: up to the next key, without what stands at the end after a blank line and
 * starts at the first column (a remark for whoever edits the file).
 */
function bodyOf(text: string, lines: readonly Line[]): Line[] {
  const next = lines.findIndex((line) =>
    /^(?:[a-z][a-z ]*:|\.\.\.)(?=[ \t]|$)/.test(text.slice(line.start, line.end)),
  );
  const body = next < 0 ? [...lines] : lines.slice(0, next);
  const blank = (line: Line | undefined): boolean =>
    line !== undefined && line.start + line.column >= line.end;
  while (body.length > 0 && blank(body.at(-1))) body.pop();
  let from = body.length;
  while (from > 0 && body[from - 1]?.column === 0 && text[body[from - 1]?.start ?? 0] === '#') from--;
  if (from === 0 || !blank(body[from - 1])) return body;
  const kept = body.slice(0, from);
  while (kept.length > 0 && blank(kept.at(-1))) kept.pop();
  return kept;
}

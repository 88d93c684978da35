import type { NoteCell } from './cell.ts';
import type { ReadCell } from './readCase.ts';
import type { RawCell } from './stream.ts';

/** A note's Markdown as it is shown: decoded, without blank lines at its end. */
export function noteMarkdown(cell: NoteCell): string {
  return tidied(cell.title.text);
}

/**
 * The text of a note cell whose Markdown is now `markdown`. Unchanged Markdown gives the text as it was, byte for byte;
 * changed Markdown replaces the value only: other keys, remarks and their spacing stay.
 * `lineBreak` is the file's own.
 */
export function writeNote(before: ReadCell, markdown: string, lineBreak: string): string {
  const { cell, raw } = before;
  if (cell?.kind !== 'note') return newNote(markdown, lineBreak);
  const words = tidied(markdown);
  if (noteMarkdown(cell) === words) return raw.text;
  const { title, node } = cell;
  let start = title.span.start;
  while (start > 0 && ' \t\r\n'.includes(raw.text[start - 1] ?? '')) start--;
  // Spaces at the end of the last line belonged to the words.
  const after = raw.text.slice(title.span.end).replace(/^[ \t]+(?=[\r\n]|$)/, '');
  if (node.flow) return `${raw.text.slice(0, start)} ${JSON.stringify(words)}${after}`;
  const isBlock = title.style === 'literal' || title.style === 'folded';
  // A remark on the value's line goes behind the `|`, where it is none of the words.
  const remark = isBlock
    ? /^[|>][-+0-9]*([ \t]+#[^\r\n]*)/.exec(raw.text.slice(title.span.start))
    : /^([ \t]+#[^\r\n]*)/.exec(after);
  const rest = isBlock || remark === null ? after : after.slice(remark[0].length);
  return raw.text.slice(0, start) + blockOf(words, lineBreak, remark?.[1] ?? '') + rest;
}

/** The text of a new note cell. */
export function newNote(markdown: string, lineBreak: string): string {
  return `note:${blockOf(tidied(markdown), lineBreak, '')}`;
}

/** A cell as it is put into a file: its separator line, its text, its line break. */
export function newCell(text: string, lineBreak: string): Pick<RawCell, 'separator' | 'text' | 'ending'> {
  return { separator: `---${lineBreak}`, text, ending: lineBreak };
}

/**
 * Markdown as a block after `|`, each line set in by two spaces.
 * When it starts with a space or a blank line the indentation must be said (`|2`).
 */
function blockOf(words: string, lineBreak: string, remark: string): string {
  if (words === '') return remark === '' ? '' : ` ""${remark}`;
  const stated = /^[ \n]/.test(words) ? '2' : '';
  const body = words.split('\n').map((line) => (line === '' ? '' : `  ${line}`));
  return ` |${stated}${remark}${lineBreak}${body.join(lineBreak)}`;
}

/** Line breaks as LF, no blank lines at the end: they mean nothing in Markdown. */
function tidied(markdown: string): string {
  return markdown.replace(/\r\n?/g, '\n').replace(/(?:^|\n)[ \t\n]*$/, '');
}

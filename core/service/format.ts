import { columnsOf, textLines } from '../casefile/columns.ts';
import { limits } from '../casefile/limits.ts';
import { readTable } from '../casefile/table.ts';
import type { MapNode, TextNode } from '../casefile/tree.ts';
import type { Study } from '../study/types.ts';
import type { TextEdit } from '../text/edits.ts';
import { spotsOf } from './spots.ts';
import { standingOf } from './standing.ts';

/** Aligns the values under `values` and the columns of tables; only white space between words changes. */
export function format(study: Study, cell: number): readonly TextEdit[] {
  const standing = standingOf(study, cell);
  // A cell that cannot be read is left alone.
  if (standing === undefined || study.file.cells[cell]?.cell === undefined) return [];
  const { text } = standing;
  return spotsOf(standing).flatMap(({ role, node, path, value }) => {
    if (role !== 'key' || path.length !== 2) return [];
    if ((node.text === 'values' || node.text === 'marks') && value?.kind === 'map')
      return alignValues(text, value);
    if (node.text === 'table' && value?.kind === 'text') return alignTable(text, value);
    return [];
  });
}

/** Values start in one column: one space behind the longest key's colon. */
function alignValues(text: string, map: MapNode): readonly TextEdit[] {
  if (map.flow) return [];
  const rows = map.entries.flatMap(({ key, value }) => {
    const gap = text.slice(key.span.end, value.span.start);
    const aligned = value.kind === 'text' && value.text !== '' && /^:[ \t]+$/.test(gap);
    return aligned ? [{ key, value }] : [];
  });
  const widths = rows.map(({ key }) => width(text.slice(key.span.start, key.span.end)));
  const longest = Math.max(0, ...widths);
  return rows.flatMap(({ key, value }, at) =>
    replaced(text, key.span.end + 1, value.span.start, ' '.repeat(longest - (widths[at] ?? 0) + 1)),
  );
}

/** Columns start three spaces behind the longest word of the one before. */
function alignTable(text: string, node: TextNode): readonly TextEdit[] {
  if (node.style !== 'literal' || !text.startsWith('|', node.span.start)) return [];
  const { value, diagnostics } = readTable(node);
  if (value === undefined || diagnostics.length > 0) return [];
  const lines = textLines(node, limits.tableRows + 1).lines;
  const rows = lines.map((line, at) => columnsOf(node, line, at === 0 ? undefined : value.headings.length));
  const words = rows.map((row) => row.map((each) => (each.text === '' ? '-' : each.text)));
  // A heading of several words, and gaps within a word, hold together by tabs only.
  const loose = words.some((row, at) => row.some((each) => (at === 0 ? /\s/ : /\s{2}|\t/).test(each)));
  if (loose || rows.some((row) => row.length !== value.headings.length)) return [];
  const widths = value.headings.map((_, at) => Math.max(...words.map((row) => width(row[at] ?? ''))));
  return rows.flatMap((row, at) => {
    const start = row[0]?.span.start ?? 0;
    const end = row[row.length - 1]?.span.end ?? start;
    const line = (words[at] ?? []).map((each, i) =>
      i === row.length - 1 ? each : each + ' '.repeat((widths[i] ?? 0) - width(each) + gap),
    );
    return replaced(text, start, end, line.join(''));
  });
}

const gap = 3;

function replaced(text: string, start: number, end: number, newText: string): readonly TextEdit[] {
  return text.slice(start, end) === newText ? [] : [{ span: { start, end }, newText }];
}

/** In characters, marks that combine with another not counted. */
function width(text: string): number {
  return [...text.normalize('NFC').replace(/\p{M}/gu, '')].length;
}

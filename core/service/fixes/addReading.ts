import type { ReadingsCell } from '../../casefile/cell.ts';
import { columnsOf, textLines } from '../../casefile/columns.ts';
import { limits } from '../../casefile/limits.ts';
import { dotted } from '../../study/graph/paths.ts';
import { lookUp } from '../../study/names.ts';
import type { TextEdit } from '../../text/edits.ts';
import type { Span } from '../../text/span.ts';
import { decodedOffset, expressionOf, nodesAround } from '../expressionAt.ts';
import { spotAt } from '../spots.ts';
import type { Standing } from '../standing.ts';
import type { CodeFix } from '../types.ts';
import { indentAt, lineBreakIn, lineEndAt } from './rewrite.ts';

/** Makes room for a reading that an expression asks for and no cell has: it stands there as `not taken`. */
export function addReading(standing: Standing, span: Span): readonly CodeFix[] {
  const spot = spotAt(standing, span.start);
  if (spot?.role !== 'expression') return [];
  const { node } = spot;
  const around = nodesAround(expressionOf(standing, node), decodedOffset(node, span.start));
  const path = around.map(dotted).find((each) => each !== undefined);
  if (path === undefined) return [];
  const named = lookUp(standing.names, standing.index, path.parts, path.spans);
  if (named.kind !== 'not measured') return [];
  const name = named.signal.name;
  const cell =
    path.parts.length > 1 ? standing.names.prefixes.get(path.parts[0] ?? '') : readingsAbove(standing);
  const read = cell === undefined ? undefined : standing.study.file.cells[cell];
  if (cell === undefined || read?.cell?.kind !== 'readings') return [];
  const edit = entryFor(read.cell, read.raw.text, read.raw.ending, name);
  if (edit === undefined) return [];
  const title = `Add \`${name}\` to cell ${cell + 1}, as not taken yet`;
  return [{ title, kind: 'rewrite', edits: [{ cell, edits: [edit] }], diagnostics: [], preferred: false }];
}

/** The nearest readings before the cell, otherwise the first of the case. */
function readingsAbove({ study, index }: Standing): number | undefined {
  const { cells } = study.file;
  const above = cells.findLastIndex((each, at) => at < index && each.cell?.kind === 'readings');
  const found = above >= 0 ? above : cells.findIndex((each) => each.cell?.kind === 'readings');
  return found < 0 ? undefined : found;
}

function entryFor(cell: ReadingsCell, text: string, ending: string, name: string): TextEdit | undefined {
  const lineBreak = lineBreakIn(text, ending);
  const last = cell.values?.entries[cell.values.entries.length - 1];
  if (cell.values !== undefined && last !== undefined) {
    if (cell.values.flow) return undefined;
    const indent = indentAt(text, last.key.span.start);
    const end = lineEndAt(text, Math.max(last.value.span.end, last.key.span.end));
    return insert(end, `${lineBreak}${indent}${name}: not taken`);
  }
  if (cell.table !== undefined) return rowFor(cell.table, text, lineBreak, name);
  const end = text.trimEnd().length;
  return insert(end, `${lineBreak}values:${lineBreak}  ${name}: not taken`);
}

/** A row with `-` in every column. */
function rowFor(
  table: NonNullable<ReadingsCell['table']>,
  text: string,
  lineBreak: string,
  name: string,
): TextEdit | undefined {
  const { lines } = textLines(table, limits.tableRows + 1);
  const [head] = lines;
  const last = lines[lines.length - 1];
  if (head === undefined || last === undefined || table.style !== 'literal') return undefined;
  const columns = columnsOf(table, head);
  const starts = columns.map((each) => each.span.start - (columns[0]?.span.start ?? 0));
  let row = name;
  for (const start of starts.slice(1)) row = `${row.padEnd(Math.max(start, row.length + 3))}-`;
  const indent = indentAt(text, last.place.start);
  return insert(lineEndAt(text, last.place.end), `${lineBreak}${indent}${row}`);
}

const insert = (at: number, newText: string): TextEdit => ({ span: { start: at, end: at }, newText });

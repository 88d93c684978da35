import { type Diagnostic, diagnose, type Found } from '../diagnostics/diagnostic.ts';
import { columnsOf, type TextLine, textLines } from './columns.ts';
import { describeNode } from './kinds/describe.ts';
import { limits } from './limits.ts';
import { shortened } from './shortened.ts';
import { ragged, tooLarge, twice } from './table.ts';
import type { ListNode, Node, TextNode } from './tree.ts';

/** Samples written out in a case: a heading, perhaps a row of units, then a row a moment. */
export interface SampleRows {
  readonly headings: readonly TextNode[];
  /** A second row without any number. */
  readonly units: readonly TextNode[] | undefined;
  /** Each as long as the heading. */
  readonly rows: readonly (readonly TextNode[])[];
}

/** Reads `rows`: a block of lines, or a list of lists. Rows that do not fit are left out and reported. */
export function readRows(node: Node): Found<SampleRows | undefined> {
  if (node.kind === 'text') return fromLines(node);
  if (node.kind === 'list') return fromLists(node);
  return nothing(diagnose('rows-not-a-row', node.span, { got: describeNode(node) }));
}

function fromLines(node: TextNode): Found<SampleRows | undefined> {
  const { lines, count } = textLines(node, limits.tableRows + 2);
  const head = lines[0];
  if (head === undefined) return nothing(emptyRows(node));
  const headings = headingsOf(node, head);
  return assemble(
    node,
    headings,
    head,
    count - 1,
    lines.slice(1).map((line) => ({ line, columns: columnsOf(node, line, headings.length) })),
    [],
  );
}

/** A heading may have words of its own (`Time (s)`), when two spaces or a tab part the columns. */
function headingsOf(node: TextNode, head: TextLine): readonly TextNode[] {
  const words = node.text.slice(head.span.start, head.span.end);
  const wide = words.split(/ *\t[ \t]*| {2,}/).length;
  return columnsOf(node, head, wide > 1 ? wide : undefined);
}

function fromLists(node: ListNode): Found<SampleRows | undefined> {
  const diagnostics: Diagnostic[] = [];
  const rows: Row[] = [];
  for (const item of node.items.slice(0, limits.tableRows + 2)) {
    const columns = item.kind === 'list' ? item.items.filter((each) => each.kind === 'text') : [];
    if (item.kind !== 'list' || columns.length !== item.items.length) {
      diagnostics.push(diagnose('rows-not-a-row', item.span, { got: describeNode(item) }));
    } else rows.push({ line: { span: item.span, place: item.span }, columns });
  }
  const head = rows[0];
  if (head === undefined) {
    return { value: undefined, diagnostics: diagnostics.length > 0 ? diagnostics : [emptyRows(node)] };
  }
  return assemble(node, head.columns, head.line, node.items.length - 1, rows.slice(1), diagnostics);
}

interface Row {
  readonly line: TextLine;
  readonly columns: readonly TextNode[];
}

function assemble(
  node: Node,
  headings: readonly TextNode[],
  head: TextLine,
  count: number,
  rows: readonly Row[],
  before: readonly Diagnostic[],
): Found<SampleRows | undefined> {
  const diagnostics = [...before, ...tooLarge(count, headings, head), ...twice(headings)];
  if (headings.length > limits.tableColumns) return { value: undefined, diagnostics };
  const fitting: (readonly TextNode[])[] = [];
  for (const { line, columns } of rows) {
    if (columns.length === headings.length) fitting.push(columns);
    else {
      const words = columns.map((each) => each.text).join('  ');
      diagnostics.push(ragged(shortened(words), columns.length, headings, line));
    }
  }
  const first = fitting[0];
  const units = first?.every((each) => !/^[-+−–]?\.?[0-9]/.test(each.text)) ? first : undefined;
  const samples = (units === undefined ? fitting : fitting.slice(1)).slice(0, limits.tableRows);
  if (samples.length === 0 && diagnostics.length === 0) diagnostics.push(emptyRows(node));
  return { value: { headings, units, rows: samples }, diagnostics };
}

const nothing = (diagnostic: Diagnostic): Found<undefined> => ({
  value: undefined,
  diagnostics: [diagnostic],
});

function emptyRows(node: Node): Diagnostic {
  return diagnose('table-empty', node.span, { example: 'time  front' });
}

import { type Diagnostic, diagnose, type Found } from '../diagnostics/diagnostic.ts';
import { columnsOf, type TextLine, textLines } from './columns.ts';
import { limits } from './limits.ts';
import { shortened } from './shortened.ts';
import type { TextNode } from './tree.ts';

/** A table as it was written. Every word is a text with its place in the cell. */
export interface Table {
  /** `reading`, then the states or `value`, then `unit` where there is one. */
  readonly headings: readonly TextNode[];
  readonly rows: readonly TableRow[];
}

export interface TableRow {
  readonly name: TextNode;
  /** One for each heading after the first; `notTaken` where nothing was measured or written. */
  readonly values: readonly TextNode[];
}

/** What stands in a table where nothing was measured. */
export const notTaken = '-';

/**
 * Reads a table: a heading row that starts with `reading`, then a row a signal. Columns are parted by tabs, by two
 * spaces or more, or by any white space, whichever gives as many as the heading has: a cell of several words
 * (`not supported`) needs two spaces or a tab on both sides. Rows that do not fit are left out and reported.
 */
export function readTable(node: TextNode): Found<Table | undefined> {
  const lines = textLines(node, limits.tableRows + 1);
  const head = lines.lines[0];
  if (head === undefined) return { value: undefined, diagnostics: [emptyTable(node)] };
  const headings = columnsOf(node, head);
  const first = headings[0]?.text ?? '';
  if (first !== 'reading') {
    const facts = { first: shortened(first), expected: ['reading'] };
    return { value: undefined, diagnostics: [diagnose('table-no-heading', head.place, facts)] };
  }
  const diagnostics: Diagnostic[] = [...tooLarge(lines.count - 1, headings, head), ...twice(headings)];
  if (headings.length > limits.tableColumns) return { value: undefined, diagnostics };
  if (lines.lines.length === 1) diagnostics.push(emptyTable(node));
  const rows: TableRow[] = [];
  const names = new Set<string>();
  for (const line of lines.lines.slice(1)) {
    const [name, ...values] = columnsOf(node, line, headings.length);
    if (name === undefined) continue;
    if (values.length + 1 !== headings.length) {
      diagnostics.push(ragged(name.text, values.length + 1, headings, line));
    } else if (names.has(name.text)) {
      diagnostics.push(diagnose('table-duplicate-row', name.span, { row: shortened(name.text) }));
    } else {
      names.add(name.text);
      rows.push({
        name,
        values: values.map((value) => (value.text === '' ? { ...value, text: notTaken } : value)),
      });
    }
  }
  return { value: { headings, rows }, diagnostics };
}

function emptyTable(node: TextNode): Diagnostic {
  return diagnose('table-empty', node.span, { example: 'reading  idle  unit' });
}

/** Rows and columns beyond what is read. */
export function tooLarge(rows: number, headings: readonly TextNode[], head: TextLine): Diagnostic[] {
  const found: Diagnostic[] = [];
  if (rows > limits.tableRows) {
    found.push(diagnose('table-too-long', head.place, { rows, most: limits.tableRows }));
  }
  if (headings.length > limits.tableColumns) {
    found.push(
      diagnose('table-too-wide', head.place, { columns: headings.length, most: limits.tableColumns }),
    );
  }
  return found;
}

export function ragged(row: string, has: number, headings: readonly TextNode[], at: TextLine): Diagnostic {
  const facts = {
    row: shortened(row),
    has,
    due: headings.length,
    headings: shortened(headings.map((each) => each.text).join(', ')),
  };
  return diagnose('table-ragged-row', at.place, facts);
}

/** Headings that stand a second time. */
export function twice(headings: readonly TextNode[]): Diagnostic[] {
  const seen = new Set<string>();
  return headings.flatMap((heading) => {
    if (!seen.has(heading.text)) {
      seen.add(heading.text);
      return [];
    }
    return [diagnose('table-duplicate-column', heading.span, { column: shortened(heading.text) })];
  });
}

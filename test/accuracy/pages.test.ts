import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sectionsByPage } from './sections.ts';
import { type AccuracyTable, cell, pageText, sectionText } from './table.ts';

const root = join(import.meta.dirname, '..', '..');
const pages = [...(await sectionsByPage())];
const written = (page: string): string => readFileSync(join(root, page), 'utf8');

describe('the accuracy pages (npm run accuracy writes them)', () => {
  it.each(pages)('%s has every table, row and column that is measured', (page, sections) => {
    const shape = pageText(sections.map((section) => sectionText(section, () => '…')));
    const found = written(page).split('\n');
    expect(found.map(withoutFigures)).toEqual(shape.split('\n').map(withoutFigures));
  });

  const tables = pages.flatMap(([page, sections]) =>
    sections.flatMap(({ tables }) => tables.map((table) => [table.of, table, page] as const)),
  );

  it.each(tables)('%s: the first and the last cell are what is measured now', (_, table, page) => {
    const lines = rowsOf(written(page), table);
    const last = { row: table.rows.length - 1, column: table.columns.length - 1 };
    expect(lines[0]?.[1]).toBe(cell(table, 0, 0));
    expect(lines[last.row]?.[last.column + 1]).toBe(cell(table, last.row, last.column));
  });
});

/** Rows of a table keep their name only, so that figures may change and the structure may not. */
function withoutFigures(line: string): string {
  if (!line.startsWith('| ') || line.startsWith('| ---')) return line;
  const cells = line.split(' | ');
  return /\d \(|…|no answer|\(0\)/.test(line) ? `${cells[0]} + ${cells.length - 1} cells` : line;
}

function rowsOf(page: string, { of, rows }: AccuracyTable): readonly (readonly string[])[] {
  const lines = page.slice(page.indexOf(`### ${of}\n`)).split('\n');
  const head = lines.findIndex((line) => line.startsWith('| ---'));
  return lines.slice(head + 1, head + 1 + rows.length).map((line) =>
    line
      .slice(2, -2)
      .split(' | ')
      .map((each) => each.trim()),
  );
}

import { describe, expect, it } from 'vitest';
import { kindNames, kindOf } from '../../core/casefile/kinds/kinds.ts';
import { readRows } from '../../core/casefile/rows.ts';
import { readTable } from '../../core/casefile/table.ts';
import type { Node } from '../../core/casefile/tree.ts';
import { fileRows } from '../../core/diagnostics/catalogue/file.ts';
import { cellOf, codes, header } from './found.ts';

/** Codes whose example is told in words: bytes, sizes and characters that cannot stand in a page. */
const toldInWords = new Set([
  ...['not-utf8', 'is-utf16', 'file-too-long', 'too-many-cells', 'cell-too-long', 'nested-too-deep'],
  ...[
    'too-many-entries',
    'too-many-members',
    'text-too-long',
    'control-character',
    'table-too-long',
    'table-too-wide',
  ],
  ...['unreadable-file', 'file-too-large'],
]);

/** A page's example as a whole file: what it leaves out around itself is put there. */
function asFile(example: string): string {
  if (example === '' || /^(diag:|%)/.test(example) || example.startsWith('readings: Idle\nvalues'))
    return example;
  if (example.startsWith('---')) return `diag: 1\ncase: x\n${example}`;
  if (example.startsWith('reading  ') || /^\w+ {2}/.test(example)) {
    const lines = example.startsWith('reading') ? example : `reading  idle  unit\n${example}`;
    return `${header}readings: x\ntable: |\n  ${lines.replaceAll('\n', '\n  ')}`;
  }
  const first = /^([^:]*):/.exec(example.trimStart())?.[1] ?? '';
  if (example.startsWith(' ') || example.startsWith('<')) return `${header}readings: x\nvalues:\n${example}`;
  if (example.includes('\n') && kindNames.some((name) => example.includes(`\n${name}:`)))
    return header + example;
  // A kind's name may be a key as well; with other lines below it, it is the kind.
  if (kindOf(first) !== undefined && first !== 'picture') return header + example;
  if (kindOf(first) !== undefined && example.includes('\n')) return header + example;
  const kind = kindNames.find(
    (name) => Object.hasOwn(kindOf(name)?.keys ?? {}, first) && name !== 'reference',
  );
  if (kind === 'diag') return `diag: 1\ncase: x\n${example}`;
  if (kind !== undefined)
    return `${header}${kind}: x\n${kind === 'picture' && first !== 'file' ? 'file: y\n' : ''}${example}`;
  if (first === 'reading' || first === 'expects') return header + example;
  return `${header}readings: x\nvalues:\n  ${example}`;
}

/** Everything that is found, in tables and samples, too. */
function found(file: string): string[] {
  const cell = file.startsWith(header) ? cellOf(file.slice(header.length)) : undefined;
  const entries = cell?.tree?.kind === 'map' ? cell.tree.entries : [];
  const inside = (name: string): Node | undefined => entries.find((entry) => entry.key.text === name)?.value;
  const table = inside('table');
  const rows = inside('rows');
  return [
    ...codes(file),
    ...(table?.kind === 'text' ? readTable(table).diagnostics : []).map((each) => each.code),
    ...(rows === undefined ? [] : readRows(rows).diagnostics.map((each) => each.code)),
  ];
}

describe('the page of every finding about the file', () => {
  for (const [code, row] of Object.entries(fileRows)) {
    if (toldInWords.has(code)) continue;
    it(`${code}: the wrong example is found, the right one is in order`, () => {
      expect(found(asFile(row.wrong)), asFile(row.wrong)).toContain(code);
      expect(found(asFile(row.right)), asFile(row.right)).toEqual([]);
    });
  }

  it('has all its parts', () => {
    for (const [code, row] of Object.entries(fileRows)) {
      expect(row.title, code).not.toMatch(/\.$/);
      expect(row.why, code).toMatch(/\.$/);
      expect(row.right, code).not.toBe('');
    }
  });
});

import type { TestCell } from '../../casefile/cell.ts';
import type { TextNode } from '../../casefile/tree.ts';
import type { Absent, Words } from '../../expression/value.ts';
import type { Reading } from '../types.ts';
import type { Circumstances, Collected } from './values.ts';

/**
 * A test done by hand: `smoke.result` is its outcome, `smoke.found` and `smoke.at` are the words beside it.
 * A test that has no outcome yet is a measurement not yet taken.
 */
export function testReadings(cell: TestCell, around: Circumstances): Collected {
  const { prefix } = around;
  if (prefix === undefined) return { readings: [], diagnostics: [] };
  const readings: Reading[] = [wordsOf(prefix, 'result', cell.result, cell.result ?? cell.title, around)];
  if (cell.found !== undefined) readings.push(wordsOf(prefix, 'found', cell.found, cell.found, around));
  if (cell.at !== undefined) readings.push(wordsOf(prefix, 'at', cell.at, cell.at, around));
  return { readings, diagnostics: [] };
}

function wordsOf(
  prefix: string,
  key: string,
  node: TextNode | undefined,
  place: TextNode,
  around: Circumstances,
): Reading {
  const value: Words | Absent = node === undefined ? notDone : { kind: 'words', text: node.text.trim() };
  return {
    fullName: `${prefix}.${key}`,
    key,
    from: 'test',
    cell: around.cell,
    when: around.when,
    state: undefined,
    column: undefined,
    signal: undefined,
    form: undefined,
    type: { kind: 'words' },
    value,
    keySpan: place.span,
    valueSpan: place.span,
    tool: around.tool?.text,
    at: undefined,
    saw: undefined,
  };
}

const notDone: Absent = { kind: 'absent', status: 'not measured', why: 'the test has no result yet' };

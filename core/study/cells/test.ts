import type { TestCell } from '../../casefile/cell.ts';
import type { TextNode } from '../../casefile/tree.ts';
import type { Reading } from '../types.ts';
import type { Circumstances, Collected } from './values.ts';

/** A test done by hand: `smoke.result` is its outcome, `smoke.found` and `smoke.at` are the words beside it. */
export function testReadings(cell: TestCell, around: Circumstances): Collected {
  const readings: Reading[] = [];
  const add = (key: string, node: TextNode | undefined): void => {
    if (node === undefined || around.prefix === undefined) return;
    readings.push({
      fullName: `${around.prefix}.${key}`,
      key,
      from: 'test',
      cell: around.cell,
      when: around.when,
      state: undefined,
      column: undefined,
      signal: undefined,
      form: undefined,
      type: { kind: 'words' },
      value: { kind: 'words', text: node.text.trim() },
      keySpan: node.span,
      valueSpan: node.span,
      tool: around.tool?.text,
      at: undefined,
      saw: undefined,
    });
  };
  add('result', cell.result);
  add('found', cell.found);
  add('at', cell.at);
  return { readings, diagnostics: [] };
}

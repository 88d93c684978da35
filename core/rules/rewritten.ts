import type { ReadCell } from '../casefile/readCase.ts';
import type { Fix } from '../diagnostics/diagnostic.ts';
import type { Unit } from '../quantity/types.ts';
import type { Reading } from '../study/types.ts';

/** The offer to write another unit behind the same number, where the unit stands in the value itself. */
export function rewritten(read: ReadCell, reading: Reading, from: Unit, to: Unit): readonly Fix[] {
  const { start, end } = reading.valueSpan;
  const text = read.raw.text.slice(start, end);
  const at = text.lastIndexOf(from.symbol);
  if (at < 0 || text.indexOf(from.symbol) !== at) return [];
  const span = { start: start + at, end: start + at + from.symbol.length };
  return [{ title: `Write \`${to.symbol}\``, edits: [{ span, newText: to.symbol }] }];
}

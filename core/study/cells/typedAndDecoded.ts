import type { Item } from '../../engine/obd/item.ts';
import { halfWidth } from '../../quantity/amount.ts';
import { formatWithKind } from '../../quantity/format.ts';
import type { Reading } from '../types.ts';

/**
 * Whether a typed value is another than the one that the bytes give: apart by more than the encoding's step, the
 * typed value's own ± and half of its last digit. Words must be the same.
 */
export function differsFromTyped(typed: Reading, decoded: Reading, item: Item, cellText: string): boolean {
  const [a, b] = [typed.value, decoded.value];
  if (a.kind === 'words' && b.kind === 'words') return a.text !== b.text;
  if (a.kind !== 'one' || b.kind !== 'one') return a.kind !== b.kind;
  // Volts beside a mass flow are two forms of one thing, and cannot be compared.
  if (a.type.dimension !== b.type.dimension || a.type.kind !== b.type.kind) return false;
  const step = item.value.is === 'number' ? item.value.step * Math.abs(b.type.unit.factor) : 0;
  const written = cellText.slice(typed.valueSpan.start, typed.valueSpan.end);
  const digit = 10 ** -(/\d(?:\.(\d+))?(?![\d.])/.exec(written)?.[1]?.length ?? 0);
  const slack = step + halfWidth(a.amount) + (digit * Math.abs(a.type.unit.factor)) / 2;
  return Math.abs(a.amount.si - b.amount.si) > slack * (1 + 1e-9);
}

/** A reading's value in a sentence. */
export function wordsOf({ value }: Reading): string {
  switch (value.kind) {
    case 'one':
      return formatWithKind(value.amount.si, value.type);
    case 'words':
      return value.text;
    case 'absent':
      return value.why;
    default:
      return 'several values';
  }
}

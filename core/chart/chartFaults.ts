import type { Finding, Study } from '../study/types.ts';
import { drawnOf } from './drawnOf.ts';

/** What is wrong with the chart of a cell, in the order of its entries. */
export function chartFaults(study: Study, cell: number): readonly Finding[] {
  const found = drawnOf(study, cell)?.diagnostics ?? [];
  return found.map((diagnostic) => ({ cell, diagnostic }));
}

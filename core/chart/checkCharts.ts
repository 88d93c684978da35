import { cellsWith } from '../casefile/traits.ts';
import { withFindings } from '../study/studyOf.ts';
import type { Finding, Study } from '../study/types.ts';
import { chartFaults } from './chartFaults.ts';

/**
 * Adds what is wrong with the charts of a checked case. A cell's list of findings stays the very same while neither what
 * was found before nor its chart changes; a case without charts is given back as it is.
 */
export function checkCharts(study: Study): Study {
  const cells = cellsWith(study.file, 'chart');
  if (cells.length === 0) return study;
  const lists = [...study.cellFindings];
  for (const index of cells) {
    const before = lists[index] ?? [];
    lists[index] = merged(before, chartFaults(study, index));
  }
  return withFindings(study, study.fileFindings, lists);
}

const known = new WeakMap<
  readonly Finding[],
  { readonly faults: readonly Finding[]; readonly merged: readonly Finding[] }
>();

function merged(before: readonly Finding[], faults: readonly Finding[]): readonly Finding[] {
  if (faults.length === 0) return before;
  const last = known.get(before);
  if (last !== undefined && sameFaults(last.faults, faults)) return last.merged;
  const all = [...before, ...faults].sort((a, b) => a.diagnostic.span.start - b.diagnostic.span.start);
  known.set(before, { faults, merged: all });
  return all;
}

function sameFaults(a: readonly Finding[], b: readonly Finding[]): boolean {
  return a.length === b.length && a.every(({ diagnostic }, at) => diagnostic === b[at]?.diagnostic);
}

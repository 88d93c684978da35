import type { Caution } from '../report/blocks.ts';
import { workOf } from '../report/casePage.ts';
import { cautionsFor } from '../report/cautions.ts';
import type { Study } from '../study/types.ts';
import { partsOf } from './cellParts.ts';

const known = new WeakMap<Study, ReadonlyMap<number, readonly Caution[]>>();

/** The cautions that a cell is the first to bring: each is said once in a case, as in the report. */
export function cautionsAt(study: Study, cell: number): readonly Caution[] {
  let cautions = known.get(study);
  if (cautions === undefined) {
    cautions = collect(study);
    known.set(study, cautions);
  }
  return cautions.get(cell) ?? [];
}

function collect(study: Study): ReadonlyMap<number, readonly Caution[]> {
  const given = new Set<string>();
  const found = new Map<number, readonly Caution[]>();
  study.file.cells.forEach(({ cell }, index) => {
    if (cell === undefined) return;
    const here = cautionsFor(workOf(cell, partsOf(study, index)), given);
    for (const { id } of here) given.add(id);
    if (here.length > 0)
      found.set(
        index,
        here.map(({ kind, title, text }) => ({ kind, title, text })),
      );
  });
  return found;
}

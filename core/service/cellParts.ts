import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Computed, Expectation, Reading, Study, Suspect } from '../study/types.ts';

/** What of a study belongs to one cell. */
export interface CellParts {
  readonly readings: readonly Reading[];
  readonly computed: readonly Computed[];
  readonly expectations: readonly Expectation[];
  readonly suspects: readonly Suspect[];
  readonly findings: readonly Diagnostic[];
}

interface Growing {
  readonly readings: Reading[];
  readonly computed: Computed[];
  readonly expectations: Expectation[];
  readonly suspects: Suspect[];
  readonly findings: Diagnostic[];
}

const known = new WeakMap<Study, ReadonlyMap<number, CellParts>>();

/** A study is sorted by cells once, however many cells are asked about. */
export function partsOf(study: Study, cell: number): CellParts {
  let parts = known.get(study);
  if (parts === undefined) {
    parts = sorted(study);
    known.set(study, parts);
  }
  return parts.get(cell) ?? nothing;
}

function sorted(study: Study): ReadonlyMap<number, CellParts> {
  const parts = new Map<number, Growing>();
  const of = (cell: number): Growing => {
    let here = parts.get(cell);
    if (here === undefined) {
      here = { readings: [], computed: [], expectations: [], suspects: [], findings: [] };
      parts.set(cell, here);
    }
    return here;
  };
  for (const each of study.readings) if (each.from !== 'header') of(each.cell).readings.push(each);
  for (const each of study.computed) of(each.cell).computed.push(each);
  for (const each of study.expectations) of(each.cell).expectations.push(each);
  for (const each of study.suspects) of(each.cell).suspects.push(each);
  for (const { cell, diagnostic } of study.findings) {
    if (cell !== undefined) of(cell).findings.push(diagnostic);
  }
  return parts;
}

const nothing: CellParts = { readings: [], computed: [], expectations: [], suspects: [], findings: [] };

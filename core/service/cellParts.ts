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

/** A study holds what each cell brings and what it comes to by the cell's number: nothing has to be looked for. */
export function partsOf({ memo, cellFindings }: Study, cell: number): CellParts {
  const { computed = [], expectations = [], suspects = [] } = memo.outcomes[cell] ?? {};
  const readings = memo.names.cells[cell]?.readings ?? [];
  const findings = (cellFindings[cell] ?? []).map(({ diagnostic }) => diagnostic);
  return { readings, computed, expectations, suspects, findings };
}

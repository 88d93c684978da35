import { checkCase } from '../../core/rules/checkCase.ts';
import type { CellResult } from '../../core/service/cellResult.ts';
import { service } from '../../core/service/service.ts';

/** The results of a case's cells, those that show something. */
export function resultsOf(text: string): CellResult[] {
  const study = checkCase(text);
  return study.file.cells
    .map((_, cell) => service.result(study, cell))
    .filter((result) => result.blocks.length > 0);
}

import type { Cell } from '../casefile/cell.ts';
import type { CaseFile } from '../casefile/readCase.ts';
import { cellsWith } from '../casefile/traits.ts';

/** The file that a capture or a reference takes its samples from, as the cell names it. */
export function fileNamedBy(cell: Cell | undefined): string | undefined {
  if (cell?.kind !== 'capture' && cell?.kind !== 'reference') return undefined;
  return cell.file?.text.trim();
}

/** Every file that a case takes samples from, each once. */
export function filesNamedIn(file: CaseFile): ReadonlySet<string> {
  const named = new Set<string>();
  for (const index of cellsWith(file, 'samples')) {
    const name = fileNamedBy(file.cells[index]?.cell);
    if (name !== undefined) named.add(name);
  }
  return named;
}

import type { CaseFile, ReadCell } from './readCase.ts';

/**
 * What of a cell concerns more than the cell itself, as bits. Most cells have none, and whoever walks the case for one of
 * them passes over those without touching them.
 */
export const traits = {
  /** It is a header, could not be read, is empty, or its `---` line says something: it matters to the file as a whole. */
  file: 1,
  /** It is a chart or asks for one. */
  chart: 2,
  /** It takes samples from a file beside the case. */
  samples: 4,
} as const;

export function traitsOf({ raw, cell }: ReadCell): number {
  if (cell === undefined) return traits.file;
  const isOfFile = cell.kind === 'diag' || raw.separator.length > longestPlain;
  const isChart = cell.kind === 'chart' || ('chart' in cell && cell.chart !== undefined);
  const isFromFile = (cell.kind === 'capture' || cell.kind === 'reference') && cell.file !== undefined;
  return (isOfFile ? traits.file : 0) | (isChart ? traits.chart : 0) | (isFromFile ? traits.samples : 0);
}

/** `---` with its line break. */
const longestPlain = 5;

/** The numbers of the cells that have a trait, in their order. */
export function cellsWith(file: Pick<CaseFile, 'traits'>, trait: keyof typeof traits): readonly number[] {
  const bit = traits[trait];
  const found: number[] = [];
  for (let cell = 0; cell < file.traits.length; cell++) {
    if (((file.traits[cell] ?? 0) & bit) !== 0) found.push(cell);
  }
  return found;
}

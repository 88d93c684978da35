import type { ReadingsCell, ReferenceCell } from '../../casefile/cell.ts';
import type { Diagnostic } from '../../diagnostics/diagnostic.ts';
import type { FileContent } from '../../recording/files.ts';
import type { Reading } from '../types.ts';
import { captureReadings } from './capture.ts';
import { readTableValues } from './tableValues.ts';
import { type Circumstances, type Collected, readValues } from './values.ts';

/** The readings of a cell: its `values`, its `table`, or both. */
export function takenReadings(cell: ReadingsCell, around: Circumstances): Collected {
  return both(cell, around);
}

/** What a reference says beforehand: limits, curves, figures, a known-good capture. Free names are allowed. */
export function referenceReadings(
  cell: ReferenceCell,
  around: Circumstances,
  content: FileContent | undefined,
): Collected {
  const figures = both(cell, around);
  if (cell.file === undefined) return figures;
  const channels = captureReadings(cell, around, content);
  return {
    ...channels,
    readings: [...figures.readings, ...channels.readings],
    diagnostics: [...figures.diagnostics, ...channels.diagnostics],
  };
}

function both(cell: ReadingsCell | ReferenceCell, around: Circumstances): Collected {
  const readings: Reading[] = [];
  const diagnostics: Diagnostic[] = [];
  for (const part of [
    readValues(cell.values?.entries ?? [], around),
    cell.table === undefined ? undefined : readTableValues(cell.table, cell.states ?? [], around),
  ]) {
    if (part === undefined) continue;
    readings.push(...part.readings);
    diagnostics.push(...part.diagnostics);
  }
  return { readings, diagnostics };
}

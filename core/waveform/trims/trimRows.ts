import type { FunctionRow } from '../../expression/functionRow.ts';
import { operatingCellRow } from './operatingCellRow.ts';
import { trimPatternRow } from './trimPatternRow.ts';

/** What trims say over the load. */
export const trimRows: readonly FunctionRow[] = [operatingCellRow, trimPatternRow];

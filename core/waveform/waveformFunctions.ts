import type { FunctionRow } from '../expression/functionRow.ts';
import { warmUpRow } from './cooling/warmUpRow.ts';
import { recordedElectricalRows } from './electrical/electricalRows.ts';
import { levelRows } from './levelRows.ts';
import { oxygenRows } from './oxygen/oxygenRows.ts';
import { shapeRows } from './shapeRows.ts';
import { switchingRows } from './switchingRows.ts';
import { trimRows } from './trims/trimRows.ts';

/** The functions of the expression language that read samples over time as a whole. */
export function waveformFunctions(): readonly FunctionRow[] {
  return [
    ...switchingRows,
    ...shapeRows,
    ...levelRows,
    ...oxygenRows,
    ...trimRows,
    ...recordedElectricalRows,
    warmUpRow,
  ];
}

import type { FunctionRow } from '../expression/functionRow.ts';
import { airRows } from './air/airRows.ts';
import { electricalRows } from './electrical/electricalRows.ts';
import { fuelRows } from './fuel/fuelRows.ts';
import { compressionRows } from './mechanical/compressionRows.ts';
import { mechanicalRows } from './mechanical/mechanicalRows.ts';
import { orderRows } from './mechanical/orderRows.ts';
import { pistonRows } from './mechanical/pistonRows.ts';
import { valveRows } from './mechanical/valveRows.ts';
import { sensorRows } from './sensors/sensorRows.ts';

/** The functions of the expression language about engines; those of plain values belong to `expression/`, those of samples to `waveform/`. */
export function engineFunctions(): readonly FunctionRow[] {
  return [
    ...airRows,
    ...fuelRows,
    ...sensorRows,
    ...mechanicalRows,
    ...pistonRows,
    ...compressionRows,
    ...valveRows,
    ...orderRows,
    ...electricalRows,
  ];
}

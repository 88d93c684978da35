import type { FunctionRow } from '../../expression/functionRow.ts';
import { chargingRippleRow } from './chargingRippleRow.ts';
import { currentRampRow } from './currentRampRow.ts';
import { pumpCurrentRow } from './pumpCurrentRow.ts';
import { startVoltageRow } from './startVoltageRow.ts';

/** What recordings of currents and of the battery's voltage say. */
export const recordedElectricalRows: readonly FunctionRow[] = [
  currentRampRow,
  pumpCurrentRow,
  chargingRippleRow,
  startVoltageRow,
];

import { faultsOfCar } from './faultsOfCar.ts';
import { faultsOfInstruments } from './faultsOfInstruments.ts';
import { slips } from './slips.ts';

/** One at a time; several sizes each. */
export const faults = [...faultsOfCar, ...faultsOfInstruments, ...slips] as const;

export type FaultName = (typeof faults)[number]['name'];

/** Its faults with the size that they have, or none. */
export interface OneFault {
  readonly name: FaultName;
  readonly size: number;
}

import type { Engine } from './engine.ts';

/** A fault of the car, or a slip of the hand or of an instrument. */
export interface Fault {
  readonly name: string;
  readonly kind: 'car' | 'instrument' | 'slip';
  /** What its size is counted in, for the table. */
  readonly unit: string;
  /** From too small to tell, up; from `tellable` on it must be told. */
  readonly sizes: readonly [number, ...number[]];
  readonly tellable: number;
  /** What the engine must be for the fault to exist and to be seen. */
  readonly given: Partial<Engine>;
  readonly altitudes?: readonly [number, number];
  /** Any of these codes tells it rightly. */
  readonly codes: readonly [string, ...string[]];
  /** Codes that are true of it as well: they follow from it and are no false alarm. */
  readonly follows?: readonly string[];
}

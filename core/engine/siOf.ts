import { unitOf } from '../quantity/unit.ts';

/** How many SI units one of this unit is, by the table of units: a factor stands there and nowhere else. */
export function siOf(symbol: 'inHg' | 'psi' | 'ft'): number {
  return unitOf(symbol)?.factor ?? Number.NaN;
}

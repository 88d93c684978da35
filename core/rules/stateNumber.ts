import { engineStates } from '../signals/states.ts';
import type { EngineState } from '../signals/types.ts';

/** One more than any state's number. */
export const mostStates = engineStates.length + 1;

/** A number for each engine state of the trade; 0 where there is none, or one in free words. */
export function stateNumber(state: EngineState | undefined): number {
  return state === undefined ? 0 : state.number;
}

import { cannotCompute } from '../expression/absent.ts';
import type { Absent } from '../expression/value.ts';
import { functionRow } from './functions.ts';
import type { Reads } from './graph/reads.ts';
import type { Header } from './header.ts';

/** The header value that says how many strokes a cycle has; four where it is left out. */
export const strokes = 'engine.strokes';

/** Why an expression has no answer for this engine: it asks a formula that counts two turns of the crank for a cycle. */
export function notFourStroke(calls: Reads['calls'], { values }: Header): Absent | undefined {
  const said = values.get(strokes)?.value;
  if (said?.kind !== 'one' || said.amount.si === 4) return undefined;
  const call = calls.find(({ name }) => functionRow(name)?.fourStroke);
  if (call === undefined) return undefined;
  return cannotCompute(
    `\`${call.name}\` is for four strokes, two turns of the crank for a cycle, and \`engine: strokes\` says ${said.amount.si}`,
  );
}

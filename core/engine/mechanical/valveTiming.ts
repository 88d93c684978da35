import { cannotCompute } from '../../expression/absent.ts';
import type { Value } from '../../expression/value.ts';
import { linear } from '../../quantity/amount.ts';
import type { Kind } from '../../quantity/types.ts';
import { unitOf } from '../../quantity/unit.ts';
import { type Answer, noAnswer } from '../answer.ts';
import { sayNumber } from '../sayValue.ts';

/*
 * Crank angles in turns; a turn is 360 degrees. Valve events are counted as handbooks print them:
 * exhaust opens before bottom dead centre and closes after top dead centre,
 * intake opens before top dead centre and closes after bottom dead centre.
 */

/** How long a valve is open, turns: its opening before one dead centre, half a turn, its closing after the other. */
export function openFor(before: number, after: number): Answer {
  const turns = before + 0.5 + after;
  if (turns > 0 && turns < 2) return turns;
  return noAnswer(
    `A valve that opens ${sayNumber(before * 360)}° before and closes ${sayNumber(after * 360)}° after its dead centres is not open at all. Check the signs.`,
  );
}

/** How long both valves are open together, turns: intake opening before, exhaust closing after top dead centre. Negative: neither is. */
export function valveOverlap(ivo: number, evc: number): Answer {
  return ivo + evc;
}

/** The place of a dead centre's mark in the four-stroke cycle, turns after the top dead centre at which the cylinder fires. */
const places: Partial<Record<Kind, { readonly from: number; readonly sign: 1 | -1 }>> = {
  // Exhaust opens.
  bbdc: { from: 0.5, sign: -1 },
  // Intake opens.
  btdc: { from: 1, sign: -1 },
  // Exhaust closes.
  atdc: { from: 1, sign: 1 },
  // Intake closes.
  abdc: { from: 1.5, sign: 1 },
};

/** A valve event's crank angle in the cycle, 0 to 720°, 0 where the cylinder fires: 20 °BTDC is 340°, 60 °ABDC is 600°. */
export function cycleAngle(event: Value | undefined): Value {
  if (event?.kind !== 'one') return cannotCompute('`cycle_angle` takes one valve event');
  const unit = unitOf('°CA');
  const place = places[event.type.kind];
  if (unit === undefined || place === undefined) {
    return cannotCompute(
      '`cycle_angle`: the event must say what it is counted from: °BTDC, °ATDC, °BBDC or °ABDC',
    );
  }
  const amount = linear(place.from + place.sign * event.amount.si, [[place.sign, event.amount]]);
  return { kind: 'one', type: { dimension: unit.dimension, kind: 'difference', unit }, amount };
}

/** What teeth on a camshaft's wheel are worth in crank angle, turns: two turns of the crank to one of the wheel. */
export function camShift(teeth: number, camTeeth: number): Answer {
  const wrong = unlikelyWheel(camTeeth);
  return wrong ?? (2 * teeth) / camTeeth;
}

/** How many teeth of the camshaft's wheel a shift of crank angle (turns) is worth; a whole number points to a belt put on wrong. */
export function teethOff(shift: number, camTeeth: number): Answer {
  const wrong = unlikelyWheel(camTeeth);
  return wrong ?? (shift * camTeeth) / 2;
}

function unlikelyWheel(teeth: number): Answer | undefined {
  if (teeth >= 8 && teeth <= 200 && Number.isInteger(teeth)) return undefined;
  return noAnswer(
    `A camshaft’s wheel of ${sayNumber(teeth)} teeth does not exist. Check \`engine: cam drive teeth\`.`,
  );
}

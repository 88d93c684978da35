import type { Measurements } from './caseText.ts';
import type { Chance } from './chance.ts';
import type { FaultName, OneFault } from './faults.ts';

const uncounted = 'lamp on, codes counted in another controller';
const late = 'monitors left and their list of different times';
const fewer = 'total of misfires below that of one cylinder';
const ofCounters: readonly FaultName[] = [
  uncounted,
  late,
  fewer,
  'odometer below the distance since the codes were cleared',
  'no warm-up counted',
  'distance with the lamp on above that since the codes were cleared',
  'time with the lamp on above that since the codes were cleared',
];

/** What a controller counts, all of one look, one line read after the other. */
export function counters(
  { engine, history }: Measurements,
  fault: OneFault | undefined,
  chance: Chance,
): string {
  const wanted = ofCounters.some((name) => name === fault?.name);
  if (!wanted && chance.happens(0.5)) return '';
  const isRunning = fault?.name === uncounted || chance.happens(0.5);
  const left = chance.happens(0.5) ? 1 : 0;
  const isOpen = left === 1 || fault?.name === late;
  const codes = fault?.name === uncounted ? 0 : 1;
  const { sinceClear, withLamp } = history;
  return `readings: What the controller counts
as: counted
state: ${isRunning ? 'warm idle' : 'key on engine off'}
tool: scan
values:
  mil: on
  dtc_count: ${codes}
  monitors_left: ${fault?.name === late ? 0 : left}
  catalyst_monitor: complete
  evap_monitor: ${isOpen ? 'incomplete' : 'complete'}
  distance_since_clear: ${sinceClear.distance} km
  distance_with_mil: ${withLamp.distance} km
  time_since_clear: ${sinceClear.time} min
  time_with_mil: ${withLamp.time} min
  warm_ups_since_clear: ${sinceClear.warmUps}
${misfires(engine.cylinders, isRunning, fault, chance)}`;
}

/** One cylinder misses more often than the others. While the engine runs it goes on counting between two lines, six times a second at idle. */
function misfires(count: number, isRunning: boolean, fault: OneFault | undefined, chance: Chance): string {
  const worst = Math.ceil(chance.between(0, count));
  const isDead = chance.happens(0.3);
  const least = fault?.name === fewer ? fault.size : 0;
  const misses = Array.from({ length: count }, (_, at) =>
    Math.round(at + 1 === worst ? least + chance.between(0, isDead ? 400 : 20) : chance.between(0, 4)),
  );
  const goesOn = isRunning && isDead ? Math.round(chance.between(0, 12)) : 0;
  const shown = misses.map((each, at) => (at + 1 === worst ? each + goesOn : each));
  const all = misses.reduce((sum, each) => sum + each, 0);
  return `  misfires_total: ${fault?.name === fewer ? Math.max(...shown) - least : all}
  misfires: {${shown.map((each, at) => `${at + 1}: ${each}`).join(', ')}}
`;
}

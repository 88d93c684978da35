import { type ByLength, byLength, nearestAmong } from '../text/nearest.ts';
import type { EngineState } from './types.ts';

type Row = Omit<EngineState, 'number'>;

/**
 * The engine states that the trade has a name for. A reading may name another in free words: it has no usual ranges then.
 * In a soak and after shut-down the key is turned on only to read the modules.
 */
const rows: readonly Row[] = [
  {
    name: 'key off',
    meaning: 'Ignition off, modules may still be awake',
    engine: 'off',
    ignition: 'off',
    alsoCalled: ['ignition off', 'engine off', 'off'],
  },
  {
    name: 'asleep',
    meaning: 'Ignition off, locked, every module asleep',
    engine: 'off',
    ignition: 'off',
    alsoCalled: ['modules asleep', 'sleep', 'parked'],
  },
  {
    name: 'key on engine off',
    meaning: 'Ignition on, engine not turning: manifold pressure is the barometer',
    engine: 'off',
    ignition: 'on',
    alsoCalled: ['KOEO', 'key on', 'ignition on', 'ignition on engine off'],
  },
  {
    name: 'cranking',
    meaning: 'The starter turns the engine',
    engine: 'cranking',
    ignition: 'on',
    alsoCalled: ['crank', 'starting'],
  },
  {
    name: 'cold start',
    meaning: 'The first seconds after a start from cold',
    engine: 'running',
    ignition: 'on',
    alsoCalled: ['start up', 'start from cold'],
  },
  {
    name: 'cold idle',
    meaning: 'Idle while the engine warms up',
    engine: 'running',
    ignition: 'on',
    alsoCalled: ['idle cold', 'fast idle', 'warm-up'],
  },
  {
    name: 'warm idle',
    meaning: 'Idle at operating temperature, no load, neutral or park',
    engine: 'running',
    ignition: 'on',
    alsoCalled: ['idle', 'hot idle', 'idle warm', 'curb idle', 'KOER', 'engine running'],
  },
  {
    name: 'idle in gear',
    meaning: 'Idle at operating temperature, automatic transmission in gear, brakes held',
    engine: 'running',
    ignition: 'on',
    alsoCalled: ['idle in drive', 'in gear idle'],
  },
  {
    name: '1500 rpm no load',
    meaning: 'Held at 1500 rpm, not driving',
    engine: 'running',
    ignition: 'on',
    alsoCalled: ['1500 rpm', '1500'],
  },
  {
    name: '2500 rpm no load',
    meaning: 'Held at 2500 rpm, not driving',
    engine: 'running',
    ignition: 'on',
    alsoCalled: ['2500 rpm', '2500', 'high idle'],
  },
  {
    name: 'light cruise',
    meaning: 'Level road, steady, little throttle',
    engine: 'running',
    ignition: 'on',
    alsoCalled: ['town cruise', 'low speed cruise'],
  },
  {
    name: 'cruise',
    meaning: 'Level road at highway speed, steady',
    engine: 'running',
    ignition: 'on',
    alsoCalled: ['highway', 'steady cruise', 'highway cruise'],
  },
  {
    name: 'heavy load',
    meaning: 'Uphill or accelerating, throttle well open',
    engine: 'running',
    ignition: 'on',
    alsoCalled: ['load', 'under load', 'high load', 'uphill'],
  },
  {
    name: 'wide open throttle',
    meaning: 'Full throttle under load',
    engine: 'running',
    ignition: 'on',
    alsoCalled: ['WOT', 'full throttle', 'full load'],
  },
  {
    name: 'snap throttle',
    meaning: 'Throttle snapped fully open from idle and let go, no load',
    engine: 'running',
    ignition: 'on',
    alsoCalled: ['snap', 'goose', 'blip'],
  },
  {
    name: 'tip-in',
    meaning: 'The moment after the throttle is opened while driving',
    engine: 'running',
    ignition: 'on',
    alsoCalled: ['tip in', 'acceleration'],
  },
  {
    name: 'deceleration',
    meaning: 'Throttle closed, in gear, the car turns the engine: fuel may be cut',
    engine: 'running',
    ignition: 'on',
    alsoCalled: ['decel', 'overrun', 'fuel cut', 'coasting'],
  },
  {
    name: 'running compression',
    meaning: 'Idle with one cylinder unfired and the gauge in its plug hole',
    engine: 'running',
    ignition: 'on',
    alsoCalled: ['dynamic compression'],
  },
  {
    name: 'cold soak',
    meaning: 'Not run for at least eight hours: all temperatures are those of the surroundings',
    engine: 'off',
    ignition: 'any',
    alsoCalled: ['overnight', 'soaked', 'cold engine'],
  },
  {
    name: 'hot soak',
    meaning: 'The minutes after shut-down in which the heat of the engine spreads',
    engine: 'off',
    ignition: 'any',
    alsoCalled: ['heat soak'],
  },
  {
    name: 'after shut-down',
    meaning: 'Just switched off: residual pressures, run-on of pumps and fans',
    engine: 'off',
    ignition: 'any',
    alsoCalled: ['shut-down', 'after shutdown', 'just switched off'],
  },
  {
    name: 'road test',
    meaning: 'A drive with changing loads',
    engine: 'running',
    ignition: 'on',
    alsoCalled: ['driving', 'test drive', 'drive cycle'],
  },
];

export const engineStates: readonly EngineState[] = rows.map((row, at) => ({ number: at + 1, ...row }));

/** The state of exactly this name; undefined for free words. */
export function stateOf(name: string): EngineState | undefined {
  return byName().get(name);
}

/** The states that a name may have meant, by spelling or by another word for it; at most three. */
export function nearestStates(name: string): readonly string[] {
  let near = asked.get(name);
  if (near === undefined) {
    near = findNearest(name);
    if (asked.size >= mostAsked) asked.clear();
    asked.set(name, near);
  }
  return near;
}

/** A case says the same free words in many cells, and each is asked for at every change. */
const asked = new Map<string, readonly string[]>();
const mostAsked = 200;

function findNearest(name: string): readonly string[] {
  const offers: string[] = [];
  const small = name.toLowerCase();
  for (const spelling of spellings().has(small) ? [small] : nearestAmong(small, spellingsByLength(), 6)) {
    const state = spellings().get(spelling);
    if (state !== undefined && state !== name && !offers.includes(state)) offers.push(state);
  }
  return offers.slice(0, 3);
}

let named: ReadonlyMap<string, EngineState> | undefined;

function byName(): ReadonlyMap<string, EngineState> {
  named ??= new Map(engineStates.map((each) => [each.name, each]));
  return named;
}

let sorted: ByLength | undefined;

function spellingsByLength(): ByLength {
  sorted ??= byLength(spellings().keys());
  return sorted;
}

let spelled: ReadonlyMap<string, string> | undefined;

/** Every spelling, the names themselves last so that no other word for one state hides another state's name. */
function spellings(): ReadonlyMap<string, string> {
  spelled ??= new Map([
    ...engineStates.flatMap(({ name, alsoCalled = [] }) =>
      alsoCalled.map((each) => [each.toLowerCase(), name] as const),
    ),
    ...engineStates.map(({ name }) => [name, name] as const),
  ]);
  return spelled;
}

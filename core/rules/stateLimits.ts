import { engineStates } from '../signals/states.ts';
import { leastOpen, vacuumLeft } from './tolerance.ts';
import type { RuledSignal } from './values.ts';

/** What a signal cannot be at some engine states. */
export interface StateLimit {
  readonly signal: RuledSignal;
  readonly unit: string;
  readonly states: readonly string[];
  /** Beyond these it cannot be, SI units. */
  readonly least?: number;
  readonly most?: number;
  /** Outside of these it is another matter: a slip that a rule of its own tells, a system of another voltage. */
  readonly from?: number;
  readonly upTo?: number;
  readonly because: string;
  readonly next: string;
  /** Only of an engine that is governed by its throttle. */
  readonly throttled?: boolean;
}

const statesThat = (does: string): readonly string[] =>
  engineStates.filter(({ engine }) => engine === does).map(({ name }) => name);
const open = ['wide open throttle'];

/** Limits lie far beyond what is usual, so that a fault is not taken for a slip (common practice). */
const rows: readonly StateLimit[] = [
  {
    signal: 'rpm',
    unit: 'rpm',
    states: statesThat('running'),
    least: 100 / 60,
    because: 'the engine turns',
    next: 'look at the crankshaft sensor’s signal on a scope, and whether other modules see a speed.',
  },
  {
    signal: 'rpm',
    unit: 'rpm',
    states: ['cranking'],
    most: 550 / 60,
    because: 'no starter turns an engine so fast: it had started',
    next: 'disable fuel or ignition and crank again.',
  },
  {
    signal: 'vss',
    unit: 'km/h',
    states: ['light cruise', 'cruise'],
    least: 3 / 3.6,
    because: 'the car moves',
    next: 'compare with the wheel speeds; on a dynamometer say so in the state.',
  },
  {
    signal: 'map',
    unit: 'kPa',
    states: open,
    least: leastOpen,
    // A vacuum that was written as manifold pressure.
    from: vacuumLeft,
    because: 'nothing but a clogged intake stands between the barometer and the manifold',
    next: 'look whether the throttle plate really opens, and read `map` again at a snap.',
    throttled: true,
  },
  {
    signal: 'vacuum',
    unit: 'inHg',
    states: open,
    most: 33_864,
    because: 'nothing but a clogged intake stands between the barometer and the manifold',
    next: 'look whether the throttle plate really opens, and read the gauge again at a snap.',
    throttled: true,
  },
  {
    signal: 'vss',
    unit: 'km/h',
    states: [
      'key on engine off',
      'cranking',
      'cold idle',
      'warm idle',
      '1500 rpm no load',
      '2500 rpm no load',
    ],
    most: 15 / 3.6,
    because: 'the car stands',
    next: 'compare with the wheel speeds; wheels that turn on a lift show some, and the state can say so.',
  },
  {
    signal: 'tp',
    unit: '%',
    states: ['warm idle', 'idle in gear'],
    most: 0.6,
    because: 'a throttle so far open would let the engine race',
    next: 'measure the sensor’s voltage, and its ground, while the throttle moves.',
    throttled: true,
  },
  {
    signal: 'starter_current',
    unit: 'A',
    states: ['key off', 'asleep', 'key on engine off', 'cold soak', ...statesThat('running')],
    most: 40,
    because: 'the starter does not turn',
    next: 'write the state `cranking` if it did; otherwise set the clamp to zero, and look what else draws so much.',
  },
  ...(['battery', 'resting_voltage', 'charging_voltage'] as const).map(
    (signal): StateLimit => ({
      signal,
      unit: 'V',
      states: ['key off', 'asleep', 'cold soak'],
      most: 13.8,
      // Two batteries in a row.
      upTo: 20,
      because: 'no alternator turns',
      next: 'take off any charger, switch the lights on for a minute, and measure again.',
    }),
  ),
  {
    signal: 'oil_pressure',
    unit: 'psi',
    states: ['key off', 'asleep', 'key on engine off', 'cold soak'],
    most: 69_000,
    because: 'no pump turns',
    next: 'measure with a gauge of your own, then the sensor’s supply, ground and signal.',
  },
];

/** The row of a signal in the form of this unit at a state; a state has at most one. */
export function stateLimitOf(signal: string, unit: string, state: string): StateLimit | undefined {
  return rows.find((row) => row.signal === signal && row.unit === unit && row.states.includes(state));
}

/** Whether a number, SI, is beyond the limit by more than its half-width. */
export function isBeyond(si: number, halfWidth: number, { least, most, from, upTo }: StateLimit): boolean {
  const isBelow = least !== undefined && si + halfWidth < least;
  const isAbove = most !== undefined && si - halfWidth > most;
  if (!isBelow && !isAbove) return false;
  return (from === undefined || si >= from) && (upTo === undefined || si <= upTo);
}

/** All of them, for tests. */
export const stateLimits = rows;

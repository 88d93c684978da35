import { leanVolts, richVolts } from './oxygenSignals.ts';
import { type Random, randomFrom } from './random.ts';

/** Closed loop at a steady speed: the exhaust is rich and lean by turns, no two of them alike. */
export interface Loop {
  /** s of the mean of a turn, rich or lean, and the share by which turns differ (even). */
  readonly turn: number;
  readonly differ: number;
  /** s before it: rich throughout, as after a throttle that was opened. */
  readonly richFirst: number;
}

/** Whether the exhaust is rich, over time; the same for the same seed. */
export function exhaust(
  { turn, differ, richFirst }: Loop,
  seconds: number,
  seed: number,
): (t: number) => boolean {
  const random: Random = randomFrom(seed);
  const turns: number[] = [richFirst];
  for (let at = richFirst; at < seconds; ) {
    at += turn * (1 + differ * (2 * random() - 1));
    turns.push(at);
  }
  return (t) => {
    let k = 0;
    while (k < turns.length && t >= (turns[k] ?? 0)) k++;
    return k % 2 === 0;
  };
}

/** A sensor in that exhaust: the gas arrives late, and the voltage follows with a first-order lag in either direction. */
export interface Follower {
  readonly delay: number;
  readonly toRich: number;
  readonly toLean: number;
  /** The share of the swing that is left for it to see, about a voltage that is held. */
  readonly share?: number;
  readonly held?: number;
  readonly shift?: number;
}

/** The sensor's volts, exact from step to step. */
export function following(
  isRich: (t: number) => boolean,
  { delay, toRich, toLean, share = 1, held = (leanVolts + richVolts) / 2, shift = 0 }: Follower,
  time: Float64Array,
): Float64Array {
  const middle = (leanVolts + richVolts) / 2;
  let volts = held;
  let before = time[0] ?? 0;
  return time.map((t) => {
    const rich = isRich(t - delay);
    const towards = held + share * ((rich ? richVolts : leanVolts) - middle);
    volts = towards + (volts - towards) * Math.exp(-(t - before) / (rich ? toRich : toLean));
    before = t;
    return volts + shift;
  });
}

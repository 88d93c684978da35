import { exhaust, type Follower, following } from '../../support/signal/exhaustLoop.ts';
import { disturbed, sampled } from '../../support/signal/signal.ts';
import { csv } from './table.ts';

/** Half a minute at 100 samples a second; the first four are rich, as after the throttle was opened to 2500 rpm. */
const seconds = 30;
const clean = sampled(seconds, 100, () => 0);
const loop = { turn: 0.55, differ: 0.3, richFirst: 4 };

function channel(isRich: (t: number) => boolean, sensor: Follower, seed: number): Float64Array {
  const samples = following(isRich, sensor, clean.time);
  return disturbed({ time: clean.time, samples }, { noise: 0.004, step: 0.005 }, seed).samples;
}

const good: Follower = { delay: 0.05, toRich: 0.04, toLean: 0.06 };

function frontAndRear(rear: Follower, seed: number): string {
  const isRich = exhaust(loop, seconds, seed);
  return csv(clean.time, 2, [
    ['O2 B1S1 (V)', channel(isRich, good, seed + 1), 3],
    ['O2 B1S2 (V)', channel(isRich, rear, seed + 2), 3],
  ]);
}

/** A catalyst that stores nothing: nine tenths of the swing come through, a quarter of a second late. */
export const mirroringBefore = (): string =>
  frontAndRear({ delay: 0.3, toRich: 0.07, toLean: 0.09, share: 0.9, held: 0.47 }, 11);
/** One that does: the rear stands near 0.7 V. */
export const mirroringAfter = (): string =>
  frontAndRear({ delay: 0.4, toRich: 0.6, toLean: 0.6, share: 0.06, held: 0.69 }, 21);

function twoBanks(first: Follower, second: Follower, turns: readonly [number, number], seed: number): string {
  const ofFirst = exhaust({ ...loop, turn: turns[0] }, seconds, seed);
  const ofSecond = exhaust({ ...loop, turn: turns[1] }, seconds, seed + 5);
  return csv(clean.time, 2, [
    ['O2 B1S1 (V)', channel(ofFirst, first, seed + 1), 3],
    ['O2 B2S1 (V)', channel(ofSecond, second, seed + 2), 3],
  ]);
}

/** Bank 1 takes a third of a second each way; bank 2 is quick, and all of it lies 0.23 V too high. */
export const lazyAndBiasedBefore = (): string =>
  twoBanks({ ...good, toRich: 0.34, toLean: 0.42 }, { ...good, shift: 0.23 }, [1.1, 0.55], 31);
export const lazyAndBiasedAfter = (): string => twoBanks(good, good, [0.5, 0.55], 41);

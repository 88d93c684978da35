import type { Chance } from './chance.ts';
import { sensorVolts } from './instruments.ts';

/** Ten seconds of the sensors before and behind the catalyst, ten samples a second, in volts. */
export interface OxygenTrace {
  readonly time: readonly number[];
  readonly front: readonly number[];
  readonly rear: readonly number[];
}

/**
 * The front sensor swings between lean and rich once or twice in two seconds; a catalyst that stores oxygen passes `through` of it on.
 * `through` is the ratio of the peak-to-peak amplitudes: near 0 sound, near 1 dead.
 */
export function oxygenTrace(chance: Chance, through: number): OxygenTrace {
  const rate = chance.between(0.7, 1.6);
  const phase = chance.between(0, 1);
  const drift = chance.between(0.62, 0.72);
  const time: number[] = [];
  const front: number[] = [];
  const rear: number[] = [];
  const swing = (at: number): number => Math.tanh(2.2 * Math.sin(2 * Math.PI * (rate * at + phase)));
  for (let sample = 0; sample <= 100; sample++) {
    const at = sample / 10;
    time.push(at);
    front.push(sensorVolts(0.45 + 0.36 * swing(at) + chance.around(0.01)));
    const middle = through > 0.6 ? 0.47 : drift;
    rear.push(sensorVolts(middle + 0.36 * through * swing(at - 0.12) + chance.around(0.004)));
  }
  return { time, front, rear };
}

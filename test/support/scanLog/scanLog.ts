import { orificeShare } from '../signal/driveLog.ts';
import { normalFrom, randomFrom } from '../signal/random.ts';

/** A steady piece of a road test; values between two legs follow a ramp of a few seconds. */
export interface RoadLeg {
  readonly seconds: number;
  readonly rpm: number;
  /** kPa, absolute */
  readonly map: number;
  /** g/s, as the meter counts it */
  readonly maf: number;
  /** mph */
  readonly speed: number;
  /** What the computer has learned here, a share. */
  readonly learned: number;
  /** The trim that the fault needs here, a share. */
  readonly needed: number;
  /** Throttle closed and fuel cut, or full throttle: the loop is open and the short trim stands at 0. */
  readonly open?: boolean;
  /** By how much the idle swings about its speed, rpm, once in five seconds. */
  readonly hunts?: number;
}

/**
 * The trim for a hole behind the meter, whose flow is choked while the manifold is below 0.528 of the barometer:
 * the engine takes the counted air and that of the hole, and fuel is due for both.
 */
export function trimForHole(choked: number, map: number, barometer: number, maf: number): number {
  return (choked * orificeShare(map / barometer)) / maf;
}

/**
 * The trim for a rail pressure below the one that is due: an injector's flow goes with the root of the pressure across
 * it (Bernoulli), so the time has to grow by the inverse. Pressures in kPa, the rail's above the barometer.
 */
export function trimForRail(rail: number, due: number, map: number, barometer: number): number {
  return Math.sqrt((due + barometer - map) / (rail + barometer - map)) - 1;
}

export interface ScanLogRow {
  readonly time: number;
  readonly rpm: number;
  readonly map: number;
  readonly maf: number;
  readonly speed: number;
  readonly coolant: number;
  readonly stft: number;
  readonly ltft: number;
  /** As generic data count it: 2 closed, 4 open because of load or overrun. */
  readonly status: number;
}

const ramp = 3;

/** One reading a second, in the steps in which generic data carry them (SAE J1979): 0.25 rpm, 1 kPa, 0.01 g/s, 1/128. */
export function roadTest(legs: readonly RoadLeg[], coolant: number, seed: number): readonly ScanLogRow[] {
  const normal = normalFrom(randomFrom(seed));
  const rows: ScanLogRow[] = [];
  let wander = 0;
  let time = 0;
  legs.forEach((leg, at) => {
    const before = legs[at - 1] ?? leg;
    for (let second = 0; second < leg.seconds; second++, time++) {
      const share = Math.min(1, second / ramp);
      const between = (of: (each: RoadLeg) => number): number => of(before) + share * (of(leg) - of(before));
      const swing = leg.hunts === undefined ? 0 : (leg.hunts / leg.rpm) * Math.sin((2 * Math.PI * time) / 5);
      // The short trim follows its sensor: it wanders, and forgets within seconds.
      wander = 0.6 * wander + 0.008 * normal();
      // On the way from one leg to the next the engine fills as it does there, at the speed and pressure of the moment.
      const filling = between((each) => each.maf / (each.map * each.rpm));
      const taken = filling * between((each) => each.map) * between((each) => each.rpm);
      const isOpen = leg.open === true;
      const ltft = step(
        between((each) => each.learned),
        1 / 128,
      );
      const needed = between((each) => each.needed);
      rows.push({
        time,
        rpm: step(between((each) => each.rpm) * (1 + swing + 0.004 * normal()), 0.25),
        map: step(between((each) => each.map) * (1 - swing / 2) + 0.3 * normal(), 1),
        maf: step(taken * (1 + swing / 2 + 0.008 * normal()), 0.01),
        speed: step(between((each) => each.speed) + (leg.speed === 0 ? 0 : 0.6 * normal()), 1),
        coolant: step(coolant + 0.8 * normal(), 1),
        stft: isOpen ? 0 : step(needed - ltft + wander, 1 / 128),
        ltft,
        status: isOpen ? 4 : 2,
      });
    }
  });
  return rows.map((each) => ({ ...each, speed: Math.max(0, each.speed) }));
}

const step = (value: number, by: number): number => Math.round(value / by) * by;

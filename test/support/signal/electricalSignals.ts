import { randomFrom } from './random.ts';
import { type Signal, sampled } from './signal.ts';

/** A coil with resistance that is switched on for a time, again and again. */
export interface CoilDrive {
  /** V, Ω, H */
  readonly volts: number;
  readonly resistance: number;
  readonly inductance: number;
  /** s: how long it is on, and how often. */
  readonly on: number;
  readonly period: number;
  /** A: a driver that holds the current at this. */
  readonly limit?: number;
  /** An armature that moves from one moment after switch-on to another and raises the inductance by this share. */
  readonly armature?: { readonly from: number; readonly to: number; readonly gain: number };
}

/** The law of the RL circuit, i = V/R·(1 − exp(−tR/L)), A. */
export function rlRamp({ volts, resistance, inductance }: CoilDrive, t: number): number {
  return (volts / resistance) * (1 - Math.exp((-t * resistance) / inductance));
}

/**
 * The current of the drive. Without an armature it is the RL law; with one, the flux L(t)·i is integrated,
 * d(L·i)/dt = V − R·i (Faraday), by Runge and Kutta's fourth order in steps of a tenth of the sampling.
 * The armature moves as the square of time and stops at once. When it is switched off the current decays in 0.1 ms.
 */
export function coilCurrent(drive: CoilDrive, seconds: number, perSecond: number, delay = 0.001): Signal {
  const pulse = onePulse(drive, perSecond);
  const { on, period, limit = Number.POSITIVE_INFINITY } = drive;
  const end = Math.min(limit, pulse(on));
  return sampled(seconds, perSecond, (t) => {
    const at = t - delay - Math.floor((t - delay) / period) * period;
    if (t < delay) return 0;
    return at <= on ? Math.min(limit, pulse(at)) : end * Math.exp(-(at - on) / 1e-4);
  });
}

function onePulse(drive: CoilDrive, perSecond: number): (t: number) => number {
  const { volts, resistance, inductance, armature, on } = drive;
  if (armature === undefined) return (t) => rlRamp(drive, t);
  const { from, to, gain } = armature;
  const at = (t: number): number => {
    const moved = Math.max(0, Math.min(1, (t - from) / (to - from)));
    return inductance * (1 + gain * moved * moved);
  };
  const step = 1 / (10 * perSecond);
  const currents: number[] = [0];
  let flux = 0;
  const slope = (t: number, f: number): number => volts - (resistance * f) / at(t);
  for (let k = 0; k * step < on + step; k++) {
    const t = k * step;
    const a = slope(t, flux);
    const b = slope(t + step / 2, flux + (step / 2) * a);
    const c = slope(t + step / 2, flux + (step / 2) * b);
    const d = slope(t + step, flux + step * c);
    flux += (step / 6) * (a + 2 * b + 2 * c + d);
    currents.push(flux / at(t + step));
  }
  return (t) => {
    const place = Math.max(0, t) / step;
    const whole = Math.floor(place);
    const share = place - whole;
    return (currents[whole] ?? 0) * (1 - share) + (currents[whole + 1] ?? currents[whole] ?? 0) * share;
  };
}

/**
 * A brushed motor's current: the mean, and one rectified-sine hump for each change of bars,
 * each of its own height: |sin| of half the hump's angle, mean 2/π.
 */
export function pumpCurrent(
  of: {
    readonly mean: number;
    readonly ripple: number;
    readonly speed: number;
    readonly humps: number;
    readonly bars?: readonly number[];
  },
  seconds: number,
  perSecond: number,
): Signal {
  const { mean, ripple, speed, humps, bars = [] } = of;
  return sampled(seconds, perSecond, (t) => {
    const place = t * speed * humps;
    const height = bars[Math.floor(place) % humps] ?? 1;
    return mean + ripple * height * (Math.abs(Math.sin(Math.PI * place)) - 2 / Math.PI);
  });
}

/** A six-pulse rectifier's output: the greatest of six sines a sixth of a turn apart; open diodes leave pulses out. */
export function rectified(
  of: {
    readonly mean: number;
    readonly ripple: number;
    readonly electrical: number;
    readonly missing?: number;
  },
  seconds: number,
  perSecond: number,
): Signal {
  const { mean, ripple, electrical, missing = 0 } = of;
  const phases = [0, 1, 2, 3, 4, 5].slice(missing);
  // From 1 down to cos 30° a healthy one goes.
  const whole = 1 - Math.cos(Math.PI / 6);
  return sampled(seconds, perSecond, (t) => {
    const turn = 2 * Math.PI * electrical * t;
    const top = Math.max(...phases.map((k) => Math.cos(turn - (k * Math.PI) / 3)));
    return mean + (ripple * (top - 1 + whole / 2)) / whole;
  });
}

/** A start on the battery's voltage: rest, the dip when the starter engages, compressions while it turns, then charging. */
export interface Cranking {
  readonly rest: number;
  readonly dip: number;
  readonly turning: number;
  /** Half the way from top to bottom of one compression. */
  readonly pulse: number;
  /** Compressions a second. */
  readonly perSecond: number;
  readonly seconds: number;
  readonly after: number;
}

export function crankingVolts(
  of: Cranking,
  samplesPerSecond: number,
  seed = 1,
): Signal & { readonly begin: number } {
  const begin = 0.4 + 0.2 * randomFrom(seed)();
  const { rest, dip, turning, pulse, perSecond, seconds, after } = of;
  const signal = sampled(begin + seconds + 1.2, samplesPerSecond, (t) => {
    const at = t - begin;
    if (at < 0) return rest;
    if (at > seconds) return after - (after - turning) * Math.exp(-(at - seconds) / 0.05);
    const settled = turning - pulse * Math.cos(2 * Math.PI * perSecond * (at - 0.2));
    return at < 0.2 ? dip + (settled - dip) * (1 - Math.exp(-at / 0.04)) : settled;
  });
  return { ...signal, begin };
}

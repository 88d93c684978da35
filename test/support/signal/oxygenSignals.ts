import { type Signal, sampled } from './signal.ts';

/** Nernst: E = (RT/4F)·ln(p_air/p_exhaust), V; R and F of CODATA 2018, air with 0.209 of oxygen. */
export function nernst(kelvin: number, oxygen: number): number {
  return ((8.314462618 * kelvin) / (4 * 96485.33212)) * Math.log(0.209 / oxygen);
}

/** A warm sensor at 900 K: a little excess of oxygen, and as little as rich exhaust in equilibrium holds (values from memory). */
export const leanVolts = nernst(900, 2e-3);
export const richVolts = nernst(900, 2e-20);

/** How a control loop and a sensor behave together; all of it truth that a reading is held against. */
export interface SensorCycle {
  /** s of one whole cycle, rich and lean. */
  readonly period: number;
  /** The share of the cycle in which the exhaust is rich. */
  readonly rich: number;
  /** The sensor's first-order lag towards rich and towards lean, s. */
  readonly toRich: number;
  readonly toLean: number;
  /** Added to every sample: a ground that is lifted, a reference that is fouled, V. */
  readonly shift?: number;
  readonly lean?: number;
  readonly richest?: number;
}

/** The sensor's voltage: exhaust that goes rich and lean at once, followed by first-order lags, in its periodic state. */
export function switchingSensor(cycle: SensorCycle, seconds: number, perSecond: number): Signal {
  const { bottom, top } = endsOf(cycle);
  const { period, rich, toRich, toLean, shift = 0, lean = leanVolts, richest = richVolts } = cycle;
  return sampled(seconds, perSecond, (t) => {
    const at = ((t % period) + period) % period;
    return at < rich * period
      ? shift + richest + (bottom - richest) * Math.exp(-at / toRich)
      : shift + lean + (top - lean) * Math.exp(-(at - rich * period) / toLean);
  });
}

/** Where the voltage turns: the fixed point of one cycle after the other. */
function endsOf({ period, rich, toRich, toLean, lean = leanVolts, richest = richVolts }: SensorCycle): {
  bottom: number;
  top: number;
} {
  const up = Math.exp((-rich * period) / toRich);
  const down = Math.exp((-(1 - rich) * period) / toLean);
  const top = (richest * (1 - up) + lean * (1 - down) * up) / (1 - up * down);
  return { top, bottom: lean + (top - lean) * down };
}

/** The truth of a sensor's record, in closed form; levels before the shift is added. */
export function truthOf(cycle: SensorCycle, level = 0.45, low = 0.3, high = 0.6) {
  const { period, rich, toRich, toLean, shift = 0, lean = leanVolts, richest = richVolts } = cycle;
  const { bottom, top } = endsOf(cycle);
  const up = (v: number): number => toRich * Math.log((richest - bottom) / (richest + shift - v));
  const down = (v: number): number => toLean * Math.log((top - lean) / (v - shift - lean));
  return {
    rate: 2 / period,
    timeRich: rich + (down(level) - up(level)) / period,
    leanToRich: up(high) - up(low),
    richToLean: down(low) - down(high),
    minimum: bottom + shift,
    maximum: top + shift,
    bias: (bottom + top) / 2 + shift - level,
  };
}

/**
 * The voltage behind a catalyst: the front's, late by its way through, with the share of the swing that the catalyst lets by,
 * about the voltage that it holds.
 */
export function rearSensor(
  front: (seconds: number) => number,
  {
    share,
    delay,
    held = 0.65,
    middle = 0.45,
  }: { share: number; delay: number; held?: number; middle?: number },
  seconds: number,
  perSecond: number,
): Signal {
  return sampled(seconds, perSecond, (t) => held + share * (front(t - delay) - middle));
}

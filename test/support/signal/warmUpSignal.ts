import { type Signal, sampled } from './signal.ts';

/** A cold engine that warms up: one lump of metal and coolant (synthetic; lumped heat balance, Incropera, chapter 5). */
export interface WarmUp {
  /** °C */
  readonly outside: number;
  /** Where the thermostat begins to open, and over how many K it opens fully. */
  readonly opens: number;
  readonly range?: number;
  /** W of heat into it, and J/K that it holds. */
  readonly heat: number;
  readonly holds?: number;
  /** W/K lost by block and hoses, and by the radiator when the thermostat is open. */
  readonly block?: number;
  readonly radiator?: number;
  /** The share of the opening that it never closes. */
  readonly stuck?: number;
}

/**
 * C·dT/dt = Q − (block + opening·radiator)·(T − outside), the opening straight from 0 to 1 over its range
 * and never less than the stuck share; integrated by Runge and Kutta's fourth order, one step a sample. °C over s.
 */
export function warmUpCurve(of: WarmUp, seconds: number, perSecond: number): Signal {
  const { outside, opens, range = 10, heat, holds = 60_000, block = 25, radiator = 500, stuck = 0 } = of;
  const rate = (t: number): number => {
    const opening = Math.max(stuck, Math.min(1, Math.max(0, (t - opens) / range)));
    return (heat - (block + opening * radiator) * (t - outside)) / holds;
  };
  const step = 1 / perSecond;
  let now = outside;
  return sampled(seconds, perSecond, () => {
    const here = now;
    const a = rate(now);
    const b = rate(now + (step / 2) * a);
    const c = rate(now + (step / 2) * b);
    const d = rate(now + step * c);
    now += (step / 6) * (a + 2 * b + 2 * c + d);
    return here;
  });
}

/** When the climb without any opening reaches a temperature, s: the closed form of the same balance. */
export function reaches(of: WarmUp, celsius: number): number {
  const { outside, heat, holds = 60_000, block = 25 } = of;
  return -(holds / block) * Math.log(1 - ((celsius - outside) * block) / heat);
}

/** Where it is held: heat and loss balance with the thermostat part open, °C. */
export function held(of: WarmUp): number {
  const { outside, opens, range = 10, heat, block = 25, radiator = 500 } = of;
  let low = opens;
  let high = opens + range;
  for (let k = 0; k < 60; k++) {
    const t = (low + high) / 2;
    const opening = (t - opens) / range;
    if (heat > (block + opening * radiator) * (t - outside)) low = t;
    else high = t;
  }
  return (low + high) / 2;
}

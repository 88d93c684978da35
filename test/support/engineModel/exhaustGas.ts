import { airPerPartOfOxygen, composition, type Fuel } from './physics.ts';

/** Dry exhaust gas, per cent by volume, and the lambda that it means, with the air that joined. */
export interface DryGas {
  readonly co2: number;
  readonly co: number;
  readonly o2: number;
  readonly lambda: number;
}

/** The water-gas reaction's constant as it freezes (MIT course 2.61 takes 3.7). */
const waterGas = 3.7;

/**
 * What a fuel CHyOz leaves at a lambda, dry: all carbon to CO2 and oxygen left over when lean; CO and hydrogen by the
 * water-gas reaction when rich. `air` is the share of the sample that joined as air.
 */
export function burnt(fuel: Fuel, lambda: number, air = 0): DryGas {
  const { hydrogen: y, oxygen: z } = composition[fuel];
  const needs = 1 + y / 4 - z / 2;
  const brought = lambda * needs;
  let co = 0;
  let h2 = 0;
  if (lambda < 1) {
    // Atoms of oxygen: 2·CO2 + CO + H2O = 2·O2 + z. More CO leaves less hydrogen unburnt: halve until both agree.
    let [low, high] = [0, Math.min(1, 2 * (needs - brought))];
    for (let step = 0; step < 60; step++) {
      co = (low + high) / 2;
      h2 = 2 * (needs - brought) - co;
      if (co * (y / 2 - h2) > waterGas * (1 - co) * h2) high = co;
      else low = co;
    }
  }
  const o2 = Math.max(0, brought - needs);
  const dry = 1 + h2 + o2 + (airPerPartOfOxygen - 1) * brought;
  const mixed = (share: number, inAir: number): number => 100 * ((1 - air) * (share / dry) + air * inAir);
  const joined = ((air / (1 - air)) * dry) / (airPerPartOfOxygen * needs);
  return {
    co2: mixed(1 - co, 0),
    co: mixed(co, 0),
    o2: mixed(o2, 1 / airPerPartOfOxygen),
    lambda: lambda + joined,
  };
}

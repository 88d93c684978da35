import type { Composition } from '../../../core/engine/fuel/composition.ts';
import type { ExhaustGas } from '../../../core/engine/fuel/lambdaFromGas.ts';

/** As an analyser shows it: %, %, %, ppm hexane, %. */
export function shown(co2: number, co: number, o2: number, hc: number, no = 0): ExhaustGas {
  return { co2: co2 / 100, co: co / 100, o2: o2 / 100, hc: hc / 1e6, nox: no / 100 };
}

/**
 * The dry products of a fuel burnt at lambda, by atom balance, as shares of the volume.
 * Rich: the water-gas reaction with CO·H2O/(CO2·H2) = k divides the oxygen, found by halving.
 */
export function products(lambda: number, { carbon, hydrogen, oxygen }: Composition, k: number): ExhaustGas {
  const h = hydrogen / carbon;
  const o = oxygen / carbon;
  const demand = 1 + h / 4 - o / 2;
  const nitrogen = 3.773 * lambda * demand;
  if (lambda >= 1) {
    const o2 = (lambda - 1) * demand;
    const dry = 1 + o2 + nitrogen;
    return { co2: 1 / dry, co: 0, o2: o2 / dry, hc: 0, nox: 0 };
  }
  const wanted = 2 * lambda * demand + o;
  let low = 0;
  let high = 1;
  for (let turn = 0; turn < 200; turn++) {
    const co = (low + high) / 2;
    const water = ((h / 2) * k) / (k + co / (1 - co));
    if (2 * (1 - co) + co + water > wanted) low = co;
    else high = co;
  }
  const co = (low + high) / 2;
  const water = ((h / 2) * k) / (k + co / (1 - co));
  const dry = 1 + (h / 2 - water) + nitrogen;
  return { co2: (1 - co) / dry, co: co / dry, o2: 0, hc: 0, nox: 0 };
}

/** The same gas with this share of outside air in the sample. */
export function thinned(gas: ExhaustGas, air: number): ExhaustGas {
  const thin = 1 - air;
  return {
    co2: gas.co2 * thin,
    co: gas.co * thin,
    o2: gas.o2 * thin + 0.2095 * air,
    hc: gas.hc * thin,
    nox: gas.nox * thin,
  };
}

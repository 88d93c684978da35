import type { ExpectedCase } from '../expectedCase.ts';
import { airToFuel, gramsPerSecond, percent } from '../secondRoute.ts';

/** E10 as CH1.93O0.033, the reference fuel of UN Regulation No. 83 (value from memory). */
const ratio = airToFuel(1.93, 0.033);

export const fuelInTheOil: ExpectedCase = {
  file: 'fuel-in-the-oil.diag',
  values: {
    'trims.idle': percent(-4 - 14),
    'trims.fast': percent(-1 - 5),
    'trims.drive': percent(-1 - 3),
    'extra.air_to_fuel': ratio,
    'extra.at_idle': gramsPerSecond((3.4 / ratio) * 0.18),
    'extra.at_fast': gramsPerSecond((10.1 / ratio) * 0.06),
    'extra.at_drive': gramsPerSecond((15.3 / ratio) * 0.04),
    total_without: percent(12 - 14),
    'turned.idle_now': percent(13 - 14),
  },
  halfWidths: {},
  notHolding: {
    'expect: idle between -10 % and 10 %': 'fails',
    'expect: oil.idle.oil_pressure in spec.idle_oil_pressure': 'fails',
    'expect: oil.fast.oil_pressure in spec.fast_oil_pressure': 'fails',
    'expect: filler.hc < 1000 ppm': 'fails',
    'expect: clamped.residual_pressure in spec.residual_pressure': 'fails',
  },
  suspects: {
    'injector that drips into a cylinder and on into the oil': 'still possible',
    'fuel pressure too high': 'ruled out',
    'air-flow meter that reads high': 'ruled out',
  },
  findings: [],
};

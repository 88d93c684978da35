import type { ExpectedCase } from '../expectedCase.ts';
import { airOf, trimsOf } from '../logRoute.ts';
import { fahrenheit, filling, kPa, percent, psi } from '../secondRoute.ts';

/** Rail pressure above the air outside, plus that air, minus the manifold. */
const across = (rail: number): number => psi(rail) + kPa(101) - kPa(55);
const share = Math.sqrt(across(41) / across(50));

export const weakFuelSupply: ExpectedCase = {
  file: 'weak-fuel-supply.diag',
  values: {
    'trims.idle': percent(1 + 0),
    'trims.fast': percent(1 + 3),
    'trims.drive': percent(2 + 7),
    filled: filling({ maf: 75.9, rpm: 3500, litres: 2.7, pascal: kPa(101), kelvin: fahrenheit(86) }),
    'explained.across': across(41),
    'explained.across_due': across(50),
    'explained.flow': ((240 * 1e-6) / 60) * share,
    'explained.trim_due': 1 / share - 1,
    'feed.added_up': 10.4 + 2.9 + 0.6,
    'feed.heat': 2.9 * 4.9,
    'road.trim': trimsOf('pickup-5-climb.csv'),
    'road.air': airOf('pickup-5-climb.csv'),
    'road.pattern': 'rises with load',
  },
  halfWidths: {
    'feed.added_up': Math.hypot(0.05, 0.05, 0.05),
    'explained.across': psi(0.5),
  },
  notHolding: {
    'expect: rail.full.fuel_pressure in spec.fuel_pressure': 'fails',
    'expect: before.full.lambda_b1 within 0.03 of spec.lambda_desired': 'fails',
    'expect: electrics.fuel_pump_voltage in spec.fuel_pump_voltage': 'fails',
    'expect: heat < 3 W': 'fails',
  },
  suspects: {
    'pump short of voltage': 'still possible',
    'worn pump': 'ruled out',
    'blocked filter': 'ruled out',
    'air-flow meter that reads low': 'ruled out',
    'air past the meter': 'ruled out',
  },
  findings: [],
};

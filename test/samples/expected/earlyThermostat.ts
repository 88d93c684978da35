import type { ExpectedCase } from '../expectedCase.ts';
import { fahrenheit, fahrenheitDegrees } from '../secondRoute.ts';

export const earlyThermostat: ExpectedCase = {
  file: 'early-thermostat.diag',
  values: {
    'warming.highest_seen': fahrenheit(158),
    'warming.at_five': fahrenheit(151),
    'warming.at_ten': fahrenheit(157),
    'warming.on_highway': fahrenheit(146),
    early_gain: fahrenheitDegrees(133 - 99),
    late_gain: fahrenheitDegrees(157 - 156),
    lost: fahrenheitDegrees(157 - 146),
  },
  halfWidths: { 'shot.housing': fahrenheitDegrees(4), 'pot.opens_at': fahrenheitDegrees(2) },
  notHolding: {
    'expect: at_ten in spec.regulating': 'fails',
    'expect: highest_seen in spec.regulating': 'fails',
    'expect: pot.opens_at within 9 °F of spec.stamped': 'fails',
  },
  suspects: {
    'thermostat opens early': 'still possible',
    'coolant sensor reads low': 'ruled out',
    'fan runs all the time': 'ruled out',
    'coolant low': 'ruled out',
  },
  findings: [],
};

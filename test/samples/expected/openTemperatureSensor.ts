import type { ExpectedCase } from '../expectedCase.ts';

export const openTemperatureSensor: ExpectedCase = {
  file: 'open-temperature-sensor.diag',
  values: {
    // Between 20 °C, 2748 Ω and 25 °C, 2200 Ω on a straight line.
    due: 2748 + ((23 - 20) / (25 - 20)) * (2200 - 2748),
  },
  halfWidths: { due: (2748 - 2200) / 5 },
  notHolding: {
    'expect: shown.ect within 5 °C of raw.ect': 'fails',
    'expect: raw.ect within 5 °C of raw.iat': 'fails',
    'expect: shown.ect within 5 °C of shown.iat': 'fails',
  },
  suspects: {
    'sensor open inside': 'still possible',
    'signal wire broken': 'ruled out',
    'sensor ground broken': 'ruled out',
    'computer cannot read the sensor': 'ruled out',
    'signal wire touches ground': 'ruled out',
  },
  // What the case is about: minus forty is an open circuit, 215 °C the two wires joined.
  findings: ['failed-value', 'cold-soak-apart', 'failed-value'],
};

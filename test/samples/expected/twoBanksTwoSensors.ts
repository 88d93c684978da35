import { column, edge, shareAbove, switches } from '../capturedRoute.ts';
import type { ExpectedCase } from '../expectedCase.ts';
import { lambdaByAtoms, percent } from '../secondRoute.ts';

const window = [5, 29] as const;
const one = column('two-banks-before.csv', 'O2 B1S1 (V)', ...window);
const two = column('two-banks-before.csv', 'O2 B2S1 (V)', ...window);
const newOne = column('two-banks-after.csv', 'O2 B1S1 (V)', ...window);
const newTwo = column('two-banks-after.csv', 'O2 B2S1 (V)', ...window);

/** The middle of bank 2's whole swing, about which it is counted: it never falls to 0.3 V. */
const middle = (Math.min(...two.volts) + Math.max(...two.volts)) / 2;

const read = (of: typeof one) => ({
  verdict: 'switching',
  switches: switches(of, 0.3, 0.6),
  rate: switches(of, 0.3, 0.6) / 24,
  time_rich: shareAbove(of, 0.45),
  lean_to_rich: edge(of, 0.3, 0.6),
  rich_to_lean: edge(of, 0.6, 0.3),
  minimum: Math.min(...of.volts),
  maximum: Math.max(...of.volts),
});

export const twoBanksTwoSensors: ExpectedCase = {
  file: 'two-banks-two-sensors.diag',
  values: {
    'banks.first': percent(1 + 0),
    'banks.second': percent(-1 - 2),
    'one.sensor': { ...read(one), verdict: 'lazy' },
    'two.sensor': {
      verdict: 'biased rich',
      switches: switches(two, middle - 0.15, middle + 0.15),
      rate: switches(two, middle - 0.15, middle + 0.15) / 24,
      time_rich: shareAbove(two, 0.45),
      lean_to_rich: edge(two, middle - 0.15, middle + 0.15),
      rich_to_lean: edge(two, middle + 0.15, middle - 0.15),
      minimum: Math.min(...two.volts),
      maximum: Math.max(...two.volts),
    },
    'truth.first': lambdaByAtoms({ co2: 14.8, co: 0.3, o2: 0.45, hc: 90 }, 1.93, 0.033),
    'truth.second': lambdaByAtoms({ co2: 14.9, co: 0.28, o2: 0.4, hc: 70 }, 1.93, 0.033),
    'proof.first': read(newOne),
    'proof.second': read(newTwo),
  },
  halfWidths: {},
  notHolding: {
    'expect: sensor.lean_to_rich < 100 ms': 'fails',
    'expect: sensor.rich_to_lean < 100 ms': 'fails',
    'expect: sensor.minimum < 0.2 V': 'fails',
    'expect: sensor.bias between -0.15 V and 0.15 V': 'fails',
    'expect: sensor.maximum < 1 V': 'fails',
  },
  suspects: {
    'aged sensor in bank 1': 'still possible',
    'heater of bank 1 without current': 'ruled out',
    "lifted ground of bank 2's sensor": 'still possible',
    'bank 2 that runs rich': 'ruled out',
    'signal wire that touches a supply': 'ruled out',
    'aged sensor in bank 2': 'ruled out',
  },
  findings: [],
};

import type { ExpectedCase } from '../expectedCase.ts';
import { absoluteLoad, fahrenheit, filling, gramsPerSecond, kPa, percent } from '../secondRoute.ts';

const full = { rpm: 3000, litres: 1.8, pascal: kPa(101), kelvin: fahrenheit(84) };
const flow = (35.7 * 1.18 * 0.911) / 0.86;

/** Brettschneider's formula for E10 (CH1.93O0.033), every term written out; gases in % of the volume, 60 ppm of hexane is 0.006 %. */
const bound = ((1.93 / 4) * 3.5) / (3.5 + 0.1 / 15) - 0.033 / 2;
const lambdaGas =
  (15 + 0.1 / 2 + 0.2 + bound * (15 + 0.1)) / ((1 + 1.93 / 4 - 0.033 / 2) * (15 + 0.1 + 6 * 0.006));

export const misreadAirFlow: ExpectedCase = {
  file: 'misread-air-flow.diag',
  values: {
    'trims.idle': percent(1 + 8),
    'trims.fast': percent(2 + 13),
    'trims.drive': percent(1 + 18),
    // 9, 15, 19 and 18 % of 100: each more than the one before by more than 2 %·√2, or less by less than that.
    'trims.whole': { pattern: 'rises with load', mixture: 'lean' },
    'air.counted': filling({ maf: 35.7, ...full }),
    'air.load_counted': absoluteLoad({ maf: 35.7, rpm: 3000, litres: 1.8 }),
    'true_air.lean_by': 0.911 / 0.86,
    'true_air.flow': gramsPerSecond(flow),
    'true_air.filling': filling({ maf: flow, ...full }),
    'true_air.seen_share': 35.7 / flow,
    lambda_gas: lambdaGas,
  },
  halfWidths: {},
  notHolding: {
    'expect: drive between -10 % and 10 %': 'fails',
    'expect: counted > 75 %': 'fails',
  },
  suspects: {
    'air-flow meter that reads low': 'still possible',
    'weak fuel supply': 'ruled out',
    'blocked exhaust': 'ruled out',
    'air past the meter': 'ruled out',
  },
  findings: ['filling-unlikely'],
};

import type { ExpectedCase } from '../expectedCase.ts';
import { fahrenheit, fahrenheitDegrees, inHg, kPa, percent, psi, standard } from '../secondRoute.ts';

export const unitsWorkbook: ExpectedCase = {
  file: 'units-workbook.diag',
  values: {
    'ways.from_nothing': kPa(34),
    'ways.below_outside': inHg(29.9) - kPa(34),
    'ways.above_outside': kPa(34) - inHg(29.9),
    'ways.fuel_from_nothing': psi(51) + inHg(29.9),
    'same.sea_level': standard(0),
    'same.warm_up': fahrenheitDegrees(195 - 68),
    'same.warmth': fahrenheit(195),
    'same.nothing': 0,
    'together.sum': percent(8 + 17),
    'together.product': 1.08 * 1.17 - 1,
  },
  halfWidths: { 'ways.below_outside': kPa(0.5), 'stand.vacuum': inHg(0.3), 'same.nothing': 0 },
  notHolding: { 'expect: stand.ltft_b1 < 10': 'cannot compute' },
  suspects: {},
  findings: [
    'unit-slip',
    'decimal-comma',
    'missing-unit',
    'unknown-unit',
    'unknown-signal',
    'wrong-dimension',
    'wrong-kind',
    'kinds-in-sum',
    'percent-beside-number',
    'temperature-point-product',
  ],
};

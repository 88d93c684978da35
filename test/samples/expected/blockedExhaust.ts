import type { ExpectedCase } from '../expectedCase.ts';
import { absoluteLoad, fahrenheit, filling, inHg, percent, psi, together } from '../secondRoute.ts';

const full = { rpm: 3000, litres: 3, pascal: inHg(29.8), kelvin: fahrenheit(86) };

export const blockedExhaust: ExpectedCase = {
  file: 'blocked-exhaust.diag',
  values: {
    'filling.before_ve': filling({ maf: 45.3, ...full }),
    // Grams a second over strokes a second: 25 turns a second, six cylinders, every second turn.
    'filling.air_each_stroke': 0.0453 / ((3000 / 60 / 2) * 6),
    'filling.before_load': absoluteLoad({ maf: 45.3, rpm: 3000, litres: 3 }),
    bank1: percent(2),
    bank2: percent(3),
    'sinking.lost': inHg(20.4 - 14.6),
    'drop.across_catalyst': psi(5.8 - 0.4),
    opened_ve: filling({ maf: 62.0, ...full }),
  },
  halfWidths: {
    'sinking.lost': inHg(together(0.2, 0.2)),
    'drop.across_catalyst': psi(together(0.2, 0.2)),
  },
  notHolding: {
    'expect: before_ve > 75 %': 'fails',
    'expect: lost < 2 inHg': 'fails',
    'expect: upstream.idle.back_pressure in limit.idle_back_pressure': 'fails',
    'expect: upstream.fast.back_pressure in limit.fast_back_pressure': 'fails',
  },
  suspects: {
    'blocked catalyst': 'still possible',
    'blocked muffler': 'ruled out',
    'air-flow meter that reads low': 'ruled out',
    'blocked air filter or duct': 'ruled out',
    'worn engine or camshaft out of time': 'ruled out',
  },
  findings: ['filling-unlikely'],
};

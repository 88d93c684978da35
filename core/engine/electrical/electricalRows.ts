import type { FunctionRow } from '../../expression/functionRow.ts';
import { ofNumbers } from '../answer.ts';
import { quantity, text } from '../parameters.ts';
import { coilCurrent } from './coilCurrent.ts';
import { floodedSource, stateOfChargeOf } from './stateOfCharge.ts';
import { wireDropOf } from './wireDrop.ts';

export const electricalRows: readonly FunctionRow[] = [
  {
    form: 'scalar',
    name: 'wire_drop',
    family: 'electrical',
    summary: 'The voltage that a length of copper wire loses at a current, at 20 °C.',
    parameters: [
      text('size', 'the wire’s size: "2 AWG", "2/0 AWG", "35 mm2"'),
      quantity('length', 'm', 'length of the conductor, there and back if both are meant'),
      quantity('current', 'A', 'current'),
    ],
    result: { kind: 'fixed', unit: 'V' },
    formula: 'U = I · 1.7241e-8 Ω·m · length/area; AWG diameter = 0.005 inch · 92^((36 − n)/39)',
    range: 'annealed copper at 20 °C; 0.393 % more for each degree above',
    errors: ['The size is none that is known.', 'The length is negative.'],
    source: 'ASTM B258 and NBS Handbook 100 (1966)',
    example: { expression: 'wire_drop("18 AWG", 10 ft, 5 A)', result: '0.319 V' },
    compute: wireDropOf,
  },
  {
    form: 'scalar',
    name: 'coil_current',
    family: 'electrical',
    summary: 'The current in a coil some time after it was switched on.',
    parameters: [
      quantity('volts', 'V', 'voltage across the coil'),
      quantity('resistance', 'Ω', 'resistance of the whole circuit'),
      quantity('inductance', 'mH', 'inductance of the coil'),
      quantity('time', 'ms', 'time since it was switched on'),
    ],
    result: { kind: 'fixed', unit: 'A' },
    formula: 'i = volts/resistance · (1 − exp(−time·resistance/inductance))',
    range: 'core not saturated',
    errors: ['The resistance or the inductance is not above 0.', 'The time is negative.'],
    source: 'law of the RL circuit',
    example: { expression: 'coil_current(12 V, 0.5 Ω, 4 mH, 4 ms)', result: '9.443 A' },
    compute: ofNumbers(coilCurrent),
  },
  {
    form: 'scalar',
    name: 'state_of_charge',
    family: 'electrical',
    summary: 'How full a rested 12 V battery is, from its open-circuit voltage at 25 °C.',
    parameters: [
      quantity('volts', 'V', 'open-circuit voltage after at least three hours of rest'),
      text('chemistry', 'the battery’s build: "flooded" or "EFB"', { otherwise: 'flooded' }),
    ],
    result: { kind: 'fixed', unit: '%' },
    formula: 'table: 12.65, 12.45, 12.24, 12.06, 11.89 V are 100, 75, 50, 25, 0 %, straight between',
    range: '25 °C, rested; published tables differ by 0.05 to 0.1 V',
    errors: ['The battery’s build is none that is known.', 'The voltage is below 10.5 V or above 13.2 V.'],
    source: floodedSource,
    example: { expression: 'state_of_charge(12.45 V)', result: '75 %' },
    compute: stateOfChargeOf,
  },
];

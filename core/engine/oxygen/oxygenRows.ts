import type { FunctionRow } from '../../expression/functionRow.ts';
import { quantity, series } from '../parameters.ts';

export const oxygenRows: readonly FunctionRow[] = [
  {
    form: 'later',
    name: 'time_rich',
    family: 'oxygen',
    summary: 'The share of the time that an oxygen sensor is above its switching level.',
    parameters: [
      series('x', 'V', 'voltage of the sensor'),
      quantity('level', 'V', 'switching level', { otherwise: '0.45 V' }),
    ],
    result: { kind: 'fixed', unit: '%' },
    formula: 'time above the level / whole time, crossings interpolated',
    range: 'zirconia; a titania sensor may be the other way round',
    errors: ['The series has fewer than two samples.'],
    source: 'common practice; 0.45 V as in the oxygen sensor tests of SAE J1979 (value from memory)',
    example: { expression: 'time_rich(o2.front)', result: '50 %' },
  },
  {
    form: 'later',
    name: 'rear_to_front',
    family: 'oxygen',
    summary:
      'How much of the front oxygen sensor’s swing the rear one shows: near 0 the catalyst stores oxygen, near 1 it does not.',
    parameters: [
      series('front', 'V', 'voltage before the catalyst'),
      series('rear', 'V', 'voltage behind the catalyst'),
    ],
    result: { kind: 'fixed', unit: '1' },
    formula: 'ratio = (max − min of rear) / (max − min of front)',
    range: 'closed loop, steady speed, warm catalyst',
    errors: ['The front sensor does not move.', 'A series has fewer than two samples.'],
    source:
      'two-sensor method: Clemmens, Sabourin and Rao, SAE 900062; Koupal, Sabourin and Clemmens, SAE 910561. Limits are the maker’s',
    example: { expression: 'rear_to_front(o2.front, o2.rear)', result: '0.1' },
  },
];

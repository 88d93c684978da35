import type { Signal } from '../types.ts';
import { byteOfPercent, throttled, usually } from './usual.ts';

/** Speed, load and torque of the engine. */
export const engine: readonly Signal[] = [
  {
    name: 'rpm',
    meaning: 'Engine speed',
    family: 'engine',
    holds: 'quantity',
    forms: [
      {
        unit: 'rpm',
        encoding: { range: '0 .. 16383.75 rpm', step: '0.25 rpm', source: 'SAE J1979 $0C' },
        physical: '0 .. 20000 rpm',
        usual: [
          usually('cranking', '130 .. 400 rpm'),
          usually('cold idle', '650 .. 1800 rpm'),
          usually('warm idle', '550 .. 950 rpm'),
          usually('idle in gear', '480 .. 850 rpm'),
          usually('1500 rpm no load', '1350 .. 1650 rpm'),
          usually('2500 rpm no load', '2300 .. 2700 rpm'),
        ],
      },
    ],
    alsoCalled: ['engine speed', 'speed of the engine', 'revs', 'tach', 'crankshaft speed'],
  },
  {
    name: 'idle_desired',
    meaning: 'Idle speed that the control asks for',
    family: 'engine',
    holds: 'quantity',
    forms: [
      {
        unit: 'rpm',
        physical: '0 .. 4000 rpm',
        usual: [
          usually('cold idle', '650 .. 1800 rpm'),
          usually('warm idle', '550 .. 950 rpm'),
          usually('idle in gear', '480 .. 850 rpm'),
        ],
      },
    ],
    alsoCalled: ['desired idle', 'desired idle speed', 'target idle speed', 'idle target', 'commanded idle'],
  },
  {
    name: 'load',
    meaning: 'Calculated load: air flow now against the most that the engine could draw at this speed',
    family: 'engine',
    holds: 'quantity',
    forms: [
      {
        unit: '%',
        encoding: byteOfPercent('$04'),
        physical: '0 .. 250 %',
        usual: [
          usually('warm idle', '10 .. 45 %', throttled),
          usually('2500 rpm no load', '10 .. 45 %', throttled),
          usually('wide open throttle', '75 .. 100 %', throttled),
        ],
      },
    ],
    alsoCalled: ['engine load', 'calculated load', 'load value', 'load pct', 'calc load'],
    note: 'Makers’ own load values may pass 100 % on boosted engines; the generic one does not.',
  },
  {
    name: 'load_abs',
    meaning: 'Absolute load: air per intake stroke against a full cylinder at standard conditions',
    family: 'engine',
    holds: 'quantity',
    forms: [
      {
        unit: '%',
        encoding: {
          range: '0 .. 25700 %',
          step: '0.39215686274509803 %',
          source: 'SAE J1979 $43, value from memory',
        },
        physical: '0 .. 600 %',
        usual: [
          usually('warm idle', '8 .. 40 %', throttled),
          usually('2500 rpm no load', '8 .. 40 %', throttled),
          usually('wide open throttle', '55 .. 400 %', throttled),
        ],
      },
    ],
    alsoCalled: ['absolute load', 'absolute load value', 'abs load'],
    note: 'Not corrected for altitude: its full-throttle value falls with the barometer.',
  },
  {
    name: 'torque_demand',
    meaning: 'Torque that the driver asks for, as a share of the reference torque',
    family: 'engine',
    holds: 'quantity',
    forms: [
      {
        unit: '%',
        encoding: { range: '-125 .. 130 %', step: '1 %', source: 'SAE J1979 $61, value from memory' },
        physical: '-125 .. 130 %',
      },
    ],
    alsoCalled: ['demanded torque', 'driver demand torque', 'demand torque'],
  },
  {
    name: 'torque_actual',
    meaning: 'Torque that the engine is computed to give, as a share of the reference torque',
    family: 'engine',
    holds: 'quantity',
    forms: [
      {
        unit: '%',
        encoding: { range: '-125 .. 130 %', step: '1 %', source: 'SAE J1979 $62, value from memory' },
        physical: '-125 .. 130 %',
      },
    ],
    alsoCalled: ['actual torque', 'engine torque'],
  },
  {
    name: 'torque_reference',
    meaning: 'Reference torque that 100 % stands for',
    family: 'engine',
    holds: 'quantity',
    forms: [
      {
        unit: 'Nm',
        encoding: { range: '0 .. 65535 Nm', step: '1 Nm', source: 'SAE J1979 $63, value from memory' },
        physical: '0 .. 10000 Nm',
      },
    ],
    alsoCalled: ['reference torque'],
  },
];

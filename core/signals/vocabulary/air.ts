import type { Signal } from '../types.ts';
import { practice, seaLevel, throttled, usually } from './usual.ts';

/** Pressures and flow of the intake air. Temperatures of the air stand with the temperatures. */
export const air: readonly Signal[] = [
  {
    name: 'map',
    meaning: 'Intake manifold pressure',
    family: 'air',
    holds: 'quantity',
    forms: [
      {
        unit: 'kPa',
        kind: 'absolute',
        encoding: { range: '0 .. 255 kPa', step: '1 kPa', source: 'SAE J1979 $0B' },
        physical: '0 .. 340 kPa',
        usual: [
          usually('key on engine off', '60 .. 107 kPa'),
          usually('warm idle', '20 .. 48 kPa', throttled),
          usually('idle in gear', '22 .. 58 kPa', throttled),
          usually('2500 rpm no load', '18 .. 45 kPa', throttled),
          usually('deceleration', '8 .. 35 kPa', throttled),
          usually('wide open throttle', '58 .. 340 kPa'),
        ],
        failed: [
          {
            value: '255 kPa',
            means: 'a signal wire at its supply, or a pressure beyond the end of the generic scale,',
          },
        ],
      },
    ],
    alsoCalled: [
      'manifold pressure',
      'manifold absolute pressure',
      'intake manifold pressure',
      'intake manifold absolute pressure',
      'intake pressure',
    ],
    note: 'Key on, engine off, it is the barometer.',
  },
  {
    name: 'baro',
    meaning: 'Barometric pressure at the car',
    family: 'air',
    holds: 'quantity',
    forms: [
      {
        unit: 'kPa',
        kind: 'absolute',
        encoding: { range: '0 .. 255 kPa', step: '1 kPa', source: 'SAE J1979 $33, value from memory' },
        physical: '40 .. 110 kPa',
        usual: [usually('key on engine off', '60 .. 107 kPa')],
      },
    ],
    alsoCalled: [
      'barometer',
      'barometric pressure',
      'atmospheric pressure',
      'ambient pressure',
      'air pressure',
    ],
    note: 'The pressure at the car, not the weather report’s sea-level figure.',
  },
  {
    name: 'vacuum',
    meaning: 'Intake manifold vacuum, below the barometer',
    family: 'air',
    holds: 'quantity',
    forms: [
      {
        unit: 'inHg',
        kind: 'vacuum',
        physical: '-1 .. 32 inHg',
        usual: [
          usually('warm idle', '17 .. 22 inHg', seaLevel),
          usually('2500 rpm no load', '17 .. 24 inHg', seaLevel),
          usually('wide open throttle', '0 .. 3 inHg', throttled),
          usually('deceleration', '18 .. 28 inHg', seaLevel),
        ],
      },
    ],
    alsoCalled: ['manifold vacuum', 'intake vacuum', 'engine vacuum'],
    note: 'Falls by about 1 inHg for each 1000 ft above the sea (common practice).',
  },
  {
    name: 'maf',
    meaning: 'Air flow at the meter',
    family: 'air',
    holds: 'quantity',
    forms: [
      {
        unit: 'g/s',
        encoding: { range: '0 .. 655.35 g/s', step: '0.01 g/s', source: 'SAE J1979 $10' },
        physical: '0 .. 1500 g/s',
        usual: [usually('warm idle', '1 .. 15 g/s', 'common practice, 0.8 to 1.8 g/s for each litre')],
      },
      { unit: 'V', physical: '0 .. 6 V', usual: [usually('warm idle', '0.4 .. 2.5 V')] },
      { unit: 'Hz', physical: '0 .. 20 kHz' },
    ],
    alsoCalled: [
      'mass air flow',
      'mass airflow',
      'mass air flow rate',
      'maf air flow rate',
      'air flow',
      'airflow rate',
      'air flow rate',
      'air mass',
    ],
    note: 'Mass flow, volts and hertz are three forms; only the meter’s own curve turns one into another.',
  },
  {
    name: 'air_charge',
    meaning: 'Air drawn in per intake stroke',
    family: 'air',
    holds: 'quantity',
    forms: [{ unit: 'mg/stroke', physical: '0 .. 15000 mg/stroke' }],
    alsoCalled: ['air per stroke', 'air mass per stroke', 'cylinder air charge', 'cylinder charge'],
  },
  {
    name: 'air_charge_desired',
    meaning: 'Air per intake stroke that the control asks for',
    family: 'air',
    holds: 'quantity',
    forms: [{ unit: 'mg/stroke', physical: '0 .. 15000 mg/stroke' }],
    alsoCalled: ['desired air mass', 'specified air mass', 'target air mass'],
  },
  {
    name: 'air_filter_drop',
    meaning: 'Pressure lost across the air filter',
    family: 'air',
    holds: 'quantity',
    forms: [
      {
        unit: 'inH2O',
        kind: 'difference',
        physical: '-5 .. 100 inH2O',
        usual: [usually('warm idle', '0 .. 3 inH2O'), usually('wide open throttle', '0 .. 15 inH2O')],
      },
    ],
    alsoCalled: ['air filter restriction', 'intake restriction', 'filter restriction'],
  },
  {
    name: 'humidity',
    meaning: 'Relative humidity of the air',
    family: 'air',
    holds: 'quantity',
    forms: [{ unit: '%', physical: '0 .. 100 %' }],
    alsoCalled: ['relative humidity'],
  },
  {
    name: 'airbox_vacuum',
    meaning: 'Vacuum between the air filter and the throttle',
    family: 'air',
    holds: 'quantity',
    forms: [
      {
        unit: 'inH2O',
        kind: 'vacuum',
        physical: '-5 .. 100 inH2O',
        usual: [usually('warm idle', '0 .. 3 inH2O', practice)],
      },
    ],
    alsoCalled: ['intake duct vacuum', 'duct vacuum', 'snorkel vacuum'],
  },
];

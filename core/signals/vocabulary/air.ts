import type { Signal } from '../types.ts';

/** Speed, pressures and air of the intake. */
export const air: readonly Signal[] = [
  {
    name: 'rpm',
    meaning: 'Engine speed',
    family: 'air',
    holds: 'quantity',
    forms: [
      {
        unit: 'rpm',
        encoding: { range: '0 .. 16383.75 rpm', step: '0.25 rpm', source: 'SAE J1979 $0C' },
        physical: '0 .. 20000 rpm',
        usual: [
          { state: 'key on engine off', range: '0 .. 0 rpm', source: 'common practice' },
          { state: 'cranking', range: '130 .. 400 rpm', source: 'common practice' },
          { state: 'cold idle', range: '700 .. 1800 rpm', source: 'common practice' },
          { state: 'warm idle', range: '550 .. 950 rpm', source: 'common practice' },
          { state: 'idle in gear', range: '480 .. 850 rpm', source: 'common practice' },
          { state: '1500 rpm no load', range: '1400 .. 1600 rpm', source: 'common practice' },
          { state: '2500 rpm no load', range: '2350 .. 2650 rpm', source: 'common practice' },
        ],
      },
    ],
    alsoCalled: ['engine speed', 'speed of the engine', 'ne', 'n', 'revs', 'tach', 'crank speed'],
  },
  {
    name: 'idle_desired',
    meaning: 'Idle speed that the control asks for',
    family: 'air',
    holds: 'quantity',
    forms: [
      {
        unit: 'rpm',
        physical: '0 .. 4000 rpm',
        usual: [
          { state: 'cold idle', range: '700 .. 1800 rpm', source: 'common practice' },
          { state: 'warm idle', range: '550 .. 950 rpm', source: 'common practice' },
          { state: 'idle in gear', range: '480 .. 850 rpm', source: 'common practice' },
        ],
      },
    ],
    alsoCalled: ['desired idle', 'desired idle speed', 'target idle', 'idle target', 'commanded idle'],
  },
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
          { state: 'key on engine off', range: '60 .. 106 kPa', source: 'common practice' },
          { state: 'warm idle', range: '22 .. 48 kPa', source: 'common practice, engine with a throttle' },
          { state: 'idle in gear', range: '24 .. 58 kPa', source: 'common practice, engine with a throttle' },
          {
            state: '2500 rpm no load',
            range: '18 .. 45 kPa',
            source: 'common practice, engine with a throttle',
          },
          { state: 'deceleration', range: '8 .. 35 kPa', source: 'common practice, engine with a throttle' },
          { state: 'wide open throttle', range: '55 .. 340 kPa', source: 'common practice' },
        ],
        failed: [
          {
            value: '255 kPa',
            means:
              'the top of the generic scale: a signal wire at its supply, or more pressure than the scale holds',
          },
        ],
      },
      {
        unit: 'V',
        physical: '0 .. 5.5 V',
      },
      {
        unit: 'Hz',
        physical: '50 .. 250 Hz',
      },
    ],
    alsoCalled: [
      'manifold pressure',
      'manifold absolute pressure',
      'intake manifold pressure',
      'intake pressure',
      'intake map',
    ],
    note: 'Key on, engine off, it is the barometer. Analogue sensors are seen in volts, older ones in hertz.',
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
        encoding: { range: '0 .. 255 kPa', step: '1 kPa', source: 'SAE J1979 $33' },
        physical: '40 .. 110 kPa',
      },
    ],
    alsoCalled: [
      'barometer',
      'barometric pressure',
      'atmospheric pressure',
      'ambient pressure',
      'bp',
      'bara',
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
          { state: 'cranking', range: '0.5 .. 12 inHg', source: 'common practice' },
          { state: 'warm idle', range: '16 .. 22 inHg', source: 'common practice, near sea level' },
          { state: '2500 rpm no load', range: '17 .. 24 inHg', source: 'common practice, near sea level' },
          { state: 'wide open throttle', range: '-1 .. 3 inHg', source: 'common practice' },
          { state: 'deceleration', range: '18 .. 28 inHg', source: 'common practice, near sea level' },
        ],
      },
    ],
    alsoCalled: ['manifold vacuum', 'intake vacuum', 'engine vacuum', 'vac'],
    note: 'Falls by about 1 inHg for each 1000 ft above the sea (common practice).',
  },
];

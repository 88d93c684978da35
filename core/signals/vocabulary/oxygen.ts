import type { Form, Signal } from '../types.ts';
import { closedLoop, petrolEngine, usually } from './usual.ts';

const zirconia = 'common practice, warm zirconia sensor';

/** Oxygen sensors, wide-range sensors, and the catalyst that they watch. */
export const oxygen: readonly Signal[] = [
  sensor(1, 1, '$14'),
  sensor(1, 2, '$15'),
  sensor(1, 3, '$16'),
  sensor(2, 1, '$18'),
  sensor(2, 2, '$19'),
  sensor(2, 3, '$1A'),
  wideRange('lambda_b1', 'Lambda before the catalyst, bank 1', '$24', '$34', [
    'lambda',
    'lambda bank 1',
    'equivalence ratio',
    'wideband',
    'air fuel sensor',
    'af sensor',
    'lambda b1s1',
  ]),
  wideRange('lambda_b2', 'Lambda before the catalyst, bank 2', '$28', '$38', [
    'lambda bank 2',
    'wideband bank 2',
    'air fuel sensor bank 2',
    'lambda b2s1',
  ]),
  {
    name: 'lambda_desired',
    meaning: 'Lambda that the control asks for',
    family: 'oxygen',
    holds: 'quantity',
    forms: [
      {
        unit: '1',
        encoding: {
          range: '0 .. 1.999969482421875',
          step: '0.000030517578125',
          source: 'SAE J1979 $44, value from memory',
        },
        physical: '0.4 .. 40',
        usual: lambdaUsual(),
      },
    ],
    alsoCalled: ['commanded lambda', 'commanded equivalence ratio', 'target lambda', 'desired lambda'],
  },
  ratio('afr_b1', 'Air to fuel by mass, bank 1', ['afr', 'air fuel ratio', 'air to fuel ratio', 'a/f']),
  ratio('afr_b2', 'Air to fuel by mass, bank 2', ['afr bank 2', 'air fuel ratio bank 2']),
  heater(1, 1),
  heater(1, 2),
  heater(2, 1),
  heater(2, 2),
  catalyst(1, 1, '$3C'),
  catalyst(1, 2, '$3E'),
  catalyst(2, 1, '$3D'),
  catalyst(2, 2, '$3F'),
];

function sensor(bank: number, at: number, pid: string): Signal {
  const front = at === 1;
  const place = front ? 'before the catalyst' : at === 2 ? 'behind the catalyst' : 'third in line';
  const swing = '0.02 .. 0.98 V';
  const usual = front
    ? [
        usually('warm idle', swing, zirconia),
        usually('2500 rpm no load', swing, zirconia),
        usually('cruise', swing, zirconia),
        usually('wide open throttle', '0.7 .. 1.1 V', zirconia),
        usually('deceleration', '0 .. 0.3 V', zirconia),
      ]
    : [
        usually('warm idle', swing, zirconia),
        usually('2500 rpm no load', swing, zirconia),
        usually('cruise', swing, zirconia),
      ];
  return {
    name: `o2_b${bank}s${at}`,
    meaning: `Oxygen sensor ${at} of bank ${bank}, ${place}`,
    family: 'oxygen',
    holds: 'quantity',
    forms: [
      {
        unit: 'V',
        encoding: { range: '0 .. 1.275 V', step: '0.005 V', source: `SAE J1979 ${pid}` },
        physical: '-2 .. 6 V',
        usual,
        failed: [{ value: '1.275 V', means: 'a signal wire shorted to a supply' }],
      },
      { unit: 'Ω', physical: '0 .. 100 MΩ' },
    ],
    alsoCalled: [
      `o2 b${bank}s${at}`,
      `o2s${bank}${at}`,
      `ho2s${bank}${at}`,
      `o2 sensor bank ${bank} sensor ${at}`,
      `oxygen sensor bank ${bank} sensor ${at}`,
      ...(bank === 1 && front ? ['front o2', 'upstream o2', 'oxygen sensor', 'o2 sensor', 'o2'] : []),
      ...(bank === 1 && at === 2 ? ['rear o2', 'downstream o2', 'post-cat o2'] : []),
    ],
    note: 'Zirconia gives about 0.1 to 0.9 V. Titania is a resistor: its circuit shows up to its supply, often lean at the top.',
  };
}

function wideRange(
  name: string,
  meaning: string,
  byVolts: string,
  byCurrent: string,
  alsoCalled: readonly string[],
): Signal {
  const lambda: Form = {
    unit: '1',
    encoding: {
      range: '0 .. 1.999969482421875',
      step: '0.000030517578125',
      source: `SAE J1979 ${byVolts}, value from memory`,
    },
    physical: '0.4 .. 40',
    usual: lambdaUsual(),
  };
  const current: Form = {
    unit: 'mA',
    encoding: {
      range: '-128 .. 127.99609375 mA',
      step: '0.00390625 mA',
      source: `SAE J1979 ${byCurrent}, value from memory`,
    },
    physical: '-130 .. 130 mA',
    usual: [usually('warm idle', '-0.5 .. 0.5 mA', closedLoop)],
  };
  const volts: Form = {
    unit: 'V',
    encoding: {
      range: '0 .. 7.9998779296875 V',
      step: '0.0001220703125 V',
      source: `SAE J1979 ${byVolts}, value from memory`,
    },
    physical: '-2 .. 8 V',
  };
  return {
    name,
    meaning,
    family: 'oxygen',
    holds: 'quantity',
    forms: [lambda, current, volts],
    alsoCalled,
    note: 'Lambda, the sensor’s current and its circuit’s volts are three forms; only the maker’s curve turns one into another.',
  };
}

function lambdaUsual() {
  return [
    usually('warm idle', '0.94 .. 1.06', closedLoop),
    usually('2500 rpm no load', '0.94 .. 1.06', closedLoop),
    usually('cruise', '0.94 .. 1.06', closedLoop),
    usually('wide open throttle', '0.74 .. 1.03', petrolEngine),
  ];
}

function ratio(name: string, meaning: string, alsoCalled: readonly string[]): Signal {
  return {
    name,
    meaning,
    family: 'oxygen',
    holds: 'quantity',
    forms: [{ unit: '1', physical: '3 .. 600' }],
    alsoCalled,
    note: 'Depends on the fuel: prefer lambda.',
  };
}

function heater(bank: number, at: number): Signal {
  return {
    name: `o2_heater_b${bank}s${at}`,
    meaning: `Heater of oxygen sensor ${at}, bank ${bank}`,
    family: 'oxygen',
    holds: 'quantity',
    forms: [
      { unit: 'A', physical: '-1 .. 30 A', usual: [usually('warm idle', '0.1 .. 3 A')] },
      { unit: 'Ω', physical: '0 .. 100 MΩ' },
      { unit: '%', physical: '0 .. 100 %' },
    ],
    alsoCalled: [
      `o2 heater b${bank}s${at}`,
      `heater current b${bank}s${at}`,
      ...(bank === 1 && at === 1 ? ['o2 heater', 'o2 heater current', 'oxygen sensor heater'] : []),
    ],
  };
}

function catalyst(bank: number, at: number, pid: string): Signal {
  return {
    name: `cat_temp_b${bank}s${at}`,
    meaning: `Catalyst temperature, bank ${bank}, sensor ${at}`,
    family: 'oxygen',
    holds: 'quantity',
    forms: [
      {
        unit: '°C',
        kind: 'point',
        encoding: {
          range: '-40 .. 6513.5 °C',
          step: '0.1 °C',
          source: `SAE J1979 ${pid}, value from memory`,
        },
        physical: '-60 .. 1400 °C',
        usual: [usually('cruise', '300 .. 900 °C')],
        failed: [{ value: '-40 °C', means: 'an open circuit' }],
      },
    ],
    alsoCalled: [
      `cat temp b${bank}s${at}`,
      `catalyst temperature b${bank}s${at}`,
      ...(bank === 1 && at === 1 ? ['catalyst temperature', 'cat temp', 'converter temperature'] : []),
    ],
  };
}

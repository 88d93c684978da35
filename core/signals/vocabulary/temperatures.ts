import type { Form, Signal } from '../types.ts';
import { usually } from './usual.ts';

/** Temperatures of the engine, its air and its fluids; the sensor's circuit is also read in volts and ohms. */
export const temperatures: readonly Signal[] = [
  {
    name: 'ect',
    meaning: 'Engine coolant temperature',
    family: 'temperatures',
    holds: 'quantity',
    forms: sensed('$05', '-60 .. 160 °C', [
      usually('warm idle', '76 .. 112 °C'),
      usually('idle in gear', '76 .. 112 °C'),
      usually('2500 rpm no load', '76 .. 112 °C'),
      usually('light cruise', '76 .. 108 °C'),
      usually('cruise', '76 .. 108 °C'),
      usually('heavy load', '76 .. 115 °C'),
      usually('wide open throttle', '76 .. 115 °C'),
    ]),
    alsoCalled: [
      'coolant',
      'coolant temp',
      'coolant temperature',
      'engine coolant temperature',
      'engine coolant temp',
      'engine temperature',
      'water temperature',
      'clt',
      'cts',
    ],
  },
  {
    name: 'cht',
    meaning: 'Cylinder head metal temperature',
    family: 'temperatures',
    holds: 'quantity',
    forms: sensed(undefined, '-60 .. 320 °C', []),
    alsoCalled: ['head temperature', 'cylinder head temperature', 'cylinder head temp'],
  },
  {
    name: 'iat',
    meaning: 'Intake air temperature',
    family: 'temperatures',
    holds: 'quantity',
    forms: sensed('$0F', '-60 .. 160 °C', [
      usually('warm idle', '-30 .. 85 °C'),
      usually('cruise', '-40 .. 65 °C'),
    ]),
    alsoCalled: [
      'intake air temp',
      'intake air temperature',
      'air temperature',
      'air charge temperature',
      'charge air temperature',
      'intake temp',
      'act',
      'mat',
      'manifold air temperature',
    ],
  },
  {
    name: 'iat_2',
    meaning: 'Intake air temperature, second sensor: behind the compressor or the cooler',
    family: 'temperatures',
    holds: 'quantity',
    forms: sensed('$68, value from memory', '-60 .. 320 °C', []),
    alsoCalled: ['intake air temperature 2', 'charge temperature', 'post intercooler temperature', 'iat2'],
  },
  {
    name: 'ambient',
    meaning: 'Outside air temperature',
    family: 'temperatures',
    holds: 'quantity',
    forms: sensed('$46, value from memory', '-65 .. 80 °C', []),
    alsoCalled: [
      'ambient temperature',
      'ambient temp',
      'ambient air temperature',
      'outside temperature',
      'outside air temperature',
      'oat',
      'aat',
    ],
  },
  {
    name: 'eot',
    meaning: 'Engine oil temperature',
    family: 'temperatures',
    holds: 'quantity',
    forms: sensed('$5C, value from memory', '-60 .. 220 °C', [
      usually('warm idle', '60 .. 120 °C'),
      usually('cruise', '70 .. 135 °C'),
    ]),
    alsoCalled: ['oil temperature', 'oil temp', 'engine oil temperature', 'engine oil temp'],
  },
  {
    name: 'tft',
    meaning: 'Transmission fluid temperature',
    family: 'temperatures',
    holds: 'quantity',
    forms: sensed(undefined, '-60 .. 220 °C', [usually('cruise', '40 .. 115 °C')]),
    alsoCalled: [
      'transmission temperature',
      'transmission temp',
      'transmission fluid temperature',
      'trans temp',
      'tot',
      'atf temperature',
    ],
  },
  {
    name: 'fuel_temp',
    meaning: 'Fuel temperature',
    family: 'temperatures',
    holds: 'quantity',
    forms: sensed(undefined, '-60 .. 180 °C', []),
    alsoCalled: ['fuel temperature', 'fuel rail temperature', 'frt'],
  },
];

/** A resistor whose circuit ends at the foot of the scale when it is open, and at the top when it is shorted. */
function sensed(pid: string | undefined, physical: string, usual: NonNullable<Form['usual']>): Form[] {
  return [
    {
      unit: '°C',
      kind: 'point',
      ...(pid === undefined
        ? {}
        : { encoding: { range: '-40 .. 215 °C', step: '1 °C', source: `SAE J1979 ${pid}` } }),
      physical,
      usual,
      failed: [
        { value: '-40 °C', means: 'an open circuit' },
        { value: '215 °C', means: 'a short circuit' },
      ],
    },
    {
      unit: 'V',
      physical: '-0.5 .. 6 V',
      // Common practice: 1 and 2 % of the 5 V that its pull-up hangs on. At -40 °C a good one may reach 4.9 V.
      failed: [
        { value: '4.95 .. 6 V', means: 'an open circuit' },
        { value: '-0.5 .. 0.1 V', means: 'a short circuit' },
      ],
    },
    { unit: 'Ω', physical: '0 .. 100 MΩ' },
  ];
}

import type { Signal } from '../types.ts';
import { byteOfPercent, throttled, usually } from './usual.ts';

/** Throttle, pedal and idle air. Two tracks of one part are two signals: they are compared with each other. */
export const throttle: readonly Signal[] = [
  {
    name: 'tp',
    meaning: 'Throttle position',
    family: 'throttle',
    holds: 'quantity',
    forms: [
      {
        unit: '%',
        encoding: byteOfPercent('$11'),
        physical: '-5 .. 105 %',
        usual: [
          usually('warm idle', '0 .. 25 %', throttled),
          usually('2500 rpm no load', '0 .. 35 %', throttled),
          usually('wide open throttle', '60 .. 100 %', throttled),
        ],
      },
      { unit: 'V', physical: '0 .. 5.5 V' },
      { unit: '°', physical: '-10 .. 100 °' },
    ],
    alsoCalled: ['throttle', 'throttle position', 'tps', 'throttle angle', 'absolute throttle'],
    note: 'Absolute position: a closed throttle often shows 8 to 20 %. The relative one starts at 0.',
  },
  {
    name: 'tp_relative',
    meaning: 'Throttle position above the learned closed position',
    family: 'throttle',
    holds: 'quantity',
    forms: [
      {
        unit: '%',
        encoding: byteOfPercent('$45, value from memory'),
        physical: '-5 .. 105 %',
        usual: [usually('warm idle', '0 .. 10 %', throttled)],
      },
    ],
    alsoCalled: ['relative throttle', 'relative throttle position'],
  },
  {
    name: 'tp_desired',
    meaning: 'Throttle position that the control asks for',
    family: 'throttle',
    holds: 'quantity',
    forms: [
      { unit: '%', encoding: byteOfPercent('$4C, value from memory'), physical: '-5 .. 105 %' },
      { unit: '°', physical: '-10 .. 100 °' },
    ],
    alsoCalled: ['commanded throttle', 'desired throttle', 'throttle command', 'tac command'],
  },
  track('tp_1', 'Throttle position, first track', undefined, ['throttle sensor 1', 'tp sensor 1', 'tps1']),
  track('tp_2', 'Throttle position, second track', '$47, value from memory', [
    'throttle sensor 2',
    'tp sensor 2',
    'tps2',
    'throttle b',
  ]),
  track('app_1', 'Accelerator pedal position, first track', '$49, value from memory', [
    'pedal 1',
    'accelerator pedal',
    'accelerator pedal position',
    'pedal position',
    'app',
    'pedal d',
  ]),
  track('app_2', 'Accelerator pedal position, second track', '$4A, value from memory', [
    'pedal 2',
    'accelerator pedal 2',
    'pedal e',
  ]),
  {
    name: 'iac',
    meaning: 'Idle air control: opening of the valve',
    family: 'throttle',
    holds: 'quantity',
    forms: [
      { unit: '%', physical: '0 .. 100 %', usual: [usually('warm idle', '5 .. 60 %')] },
      { unit: '1', physical: '0 .. 400', usual: [usually('warm idle', '5 .. 80')] },
    ],
    alsoCalled: [
      'idle air control',
      'idle air',
      'iac steps',
      'iac counts',
      'iac position',
      'isc',
      'idle valve',
    ],
    note: 'In percent of the valve’s duty, or in steps of its motor: a number without a unit is steps.',
  },
  {
    name: 'idle_switch',
    meaning: 'Closed-throttle switch',
    family: 'throttle',
    holds: 'word',
    words: ['closed', 'open'],
    forms: [],
    alsoCalled: ['closed throttle switch', 'throttle switch', 'idle contact'],
  },
];

function track(name: string, meaning: string, pid: string | undefined, alsoCalled: string[]): Signal {
  return {
    name,
    meaning,
    family: 'throttle',
    holds: 'quantity',
    forms: [
      {
        unit: '%',
        ...(pid === undefined ? {} : { encoding: byteOfPercent(pid) }),
        physical: '-5 .. 105 %',
      },
      { unit: 'V', physical: '0 .. 5.5 V' },
    ],
    alsoCalled,
    note: 'Two tracks of one part may rise together, one at half the slope, or run against each other.',
  };
}

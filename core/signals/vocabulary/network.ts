import type { Signal } from '../types.ts';
import { usually } from './usual.ts';

/** The levels and the ends of the line are the standard's; nobody looked them up again for this table. */
const highSpeed = 'ISO 11898-2, value from memory';

/** The pair of a high-speed network between modules, and the single wire of a local one. */
export const network: readonly Signal[] = [
  {
    name: 'bus_resistance',
    meaning: 'Resistance between the two wires of the network, without supply',
    family: 'network',
    holds: 'quantity',
    by: 'label',
    forms: [
      {
        unit: 'Ω',
        physical: '0 .. 10000000 Ω',
        usual: [usually('key off', '54 .. 66 Ω'), usually('asleep', '54 .. 66 Ω')],
      },
    ],
    alsoCalled: ['network resistance', 'can resistance', 'termination', 'termination resistance'],
    note: 'Two ends of about 120 Ω side by side are 60 Ω. One end alone reads 120 Ω. Battery disconnected, or the network asleep: a live network spoils the reading.',
  },
  {
    name: 'bus_to_ground',
    meaning: 'Resistance from a wire of the network to ground, without supply',
    family: 'network',
    holds: 'quantity',
    by: 'label',
    forms: [{ unit: 'Ω', physical: '0 .. 1000000000 Ω' }],
    alsoCalled: ['can to ground'],
  },
  {
    name: 'bus_to_supply',
    meaning: 'Resistance from a wire of the network to the supply, battery disconnected',
    family: 'network',
    holds: 'quantity',
    by: 'label',
    forms: [{ unit: 'Ω', physical: '0 .. 1000000000 Ω' }],
    alsoCalled: ['can to supply', 'can to battery'],
  },
  {
    name: 'can_high',
    meaning: 'Mean voltage of the high wire, as a meter shows it',
    family: 'network',
    holds: 'quantity',
    by: 'label',
    forms: [
      {
        unit: 'V',
        physical: '-32 .. 32 V',
        usual: [usually('key on engine off', '2.5 .. 3.2 V'), usually('warm idle', '2.5 .. 3.2 V')],
      },
    ],
    alsoCalled: ['can h', 'canh', 'bus high'],
    note: 'A meter averages: the busier the network, the further from 2.5 V.',
  },
  {
    name: 'can_low',
    meaning: 'Mean voltage of the low wire, as a meter shows it',
    family: 'network',
    holds: 'quantity',
    by: 'label',
    forms: [
      {
        unit: 'V',
        physical: '-32 .. 32 V',
        usual: [usually('key on engine off', '1.8 .. 2.5 V'), usually('warm idle', '1.8 .. 2.5 V')],
      },
    ],
    alsoCalled: ['can l', 'canl', 'bus low'],
    note: 'A meter averages: the busier the network, the further from 2.5 V.',
  },
  {
    name: 'can_high_recessive',
    meaning: 'Level of the high wire at rest, from the scope',
    family: 'network',
    holds: 'quantity',
    by: 'label',
    forms: [
      {
        unit: 'V',
        physical: '-32 .. 32 V',
        usual: [
          usually('key on engine off', '2 .. 3 V', highSpeed),
          usually('warm idle', '2 .. 3 V', highSpeed),
        ],
      },
    ],
    alsoCalled: ['can h recessive', 'canh recessive'],
  },
  {
    name: 'can_high_dominant',
    meaning: 'Level of the high wire while a bit is sent, from the scope',
    family: 'network',
    holds: 'quantity',
    by: 'label',
    forms: [
      {
        unit: 'V',
        physical: '-32 .. 32 V',
        usual: [
          usually('key on engine off', '2.75 .. 4.5 V', highSpeed),
          usually('warm idle', '2.75 .. 4.5 V', highSpeed),
        ],
      },
    ],
    alsoCalled: ['can h dominant', 'canh dominant'],
  },
  {
    name: 'can_low_recessive',
    meaning: 'Level of the low wire at rest, from the scope',
    family: 'network',
    holds: 'quantity',
    by: 'label',
    forms: [
      {
        unit: 'V',
        physical: '-32 .. 32 V',
        usual: [
          usually('key on engine off', '2 .. 3 V', highSpeed),
          usually('warm idle', '2 .. 3 V', highSpeed),
        ],
      },
    ],
    alsoCalled: ['can l recessive', 'canl recessive'],
  },
  {
    name: 'can_low_dominant',
    meaning: 'Level of the low wire while a bit is sent, from the scope',
    family: 'network',
    holds: 'quantity',
    by: 'label',
    forms: [
      {
        unit: 'V',
        physical: '-32 .. 32 V',
        usual: [
          usually('key on engine off', '0.5 .. 2.25 V', highSpeed),
          usually('warm idle', '0.5 .. 2.25 V', highSpeed),
        ],
      },
    ],
    alsoCalled: ['can l dominant', 'canl dominant'],
  },
  {
    name: 'can_difference',
    meaning: 'High wire minus low wire while a bit is sent, from the scope',
    family: 'network',
    holds: 'quantity',
    by: 'label',
    forms: [
      {
        unit: 'V',
        physical: '-32 .. 32 V',
        usual: [
          usually('key on engine off', '1.5 .. 3 V', highSpeed),
          usually('warm idle', '1.5 .. 3 V', highSpeed),
        ],
      },
    ],
    alsoCalled: ['can diff', 'differential bus voltage'],
  },
  {
    name: 'bus_load',
    meaning: 'Share of the time in which the network carries a message',
    family: 'network',
    holds: 'quantity',
    by: 'label',
    forms: [
      {
        unit: '%',
        physical: '0 .. 100 %',
        usual: [usually('key on engine off', '5 .. 70 %'), usually('warm idle', '5 .. 70 %')],
      },
    ],
    alsoCalled: ['can load', 'network load', 'bus utilization'],
  },
  {
    name: 'bus_errors',
    meaning: 'Error frames counted on the network',
    family: 'network',
    holds: 'quantity',
    by: 'label',
    forms: [{ unit: '1', physical: '0 .. 1000000000' }],
    alsoCalled: ['error frames', 'can errors'],
  },
  {
    name: 'bus_state',
    meaning: 'What the network does',
    family: 'network',
    holds: 'word',
    words: ['active', 'asleep', 'silent', 'stuck dominant', 'disturbed'],
    forms: [],
    alsoCalled: ['can state', 'network state'],
  },
  {
    name: 'modules_answering',
    meaning: 'Modules that answer on the network',
    family: 'network',
    holds: 'quantity',
    by: 'label',
    forms: [{ unit: '1', physical: '0 .. 255' }],
    alsoCalled: ['modules online', 'nodes answering'],
  },
  {
    name: 'lin_high',
    meaning: 'Level of the single-wire network at rest',
    family: 'network',
    holds: 'quantity',
    by: 'label',
    forms: [
      {
        unit: 'V',
        physical: '-32 .. 32 V',
        usual: [usually('key on engine off', '10.5 .. 12.8 V'), usually('warm idle', '11.5 .. 15 V')],
      },
    ],
    alsoCalled: ['lin recessive', 'lin voltage'],
  },
  {
    name: 'lin_low',
    meaning: 'Level of the single-wire network while a bit is sent',
    family: 'network',
    holds: 'quantity',
    by: 'label',
    forms: [
      {
        unit: 'V',
        physical: '-32 .. 32 V',
        usual: [usually('key on engine off', '0 .. 2.4 V'), usually('warm idle', '0 .. 2.8 V')],
      },
    ],
    alsoCalled: ['lin dominant'],
  },
];

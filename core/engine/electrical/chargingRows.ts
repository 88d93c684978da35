import type { FunctionRow } from '../../expression/functionRow.ts';
import { ofNumbers } from '../answer.ts';
import { numbersInWords } from '../inWords.ts';
import { anySpeed, quantity, temperaturePoint } from '../parameters.ts';
import {
  chargingPattern,
  chargingSayings,
  crankingPattern,
  crankingSayings,
  internalResistance,
  loadTestLimit,
  rippleFrequency,
  ripplePattern,
  rippleSayings,
} from './charging.ts';
import { drawPattern, drawSayings, parkedCharge, timeParked } from './parasiticDraw.ts';

const tooClose = 'A reading is too close to a limit for its uncertainty.';
const noDraw = 'A current is negative.';

/** Battery, starter, alternator and the draw of a parked car. */
export const chargingRows: readonly FunctionRow[] = [
  {
    form: 'scalar',
    name: 'internal_resistance',
    family: 'electrical',
    summary: 'The resistance inside a battery from its voltage at rest and under load.',
    parameters: [
      quantity('rested', 'V', 'voltage before the load'),
      quantity('loaded', 'V', 'voltage under the load'),
      quantity('current', 'A', 'the load', { within: { above: '0 A' } }),
    ],
    result: { kind: 'fixed', unit: 'mΩ' },
    formula: 'R = (U₀ − U)/I',
    where: [
      ['R', 'resistance inside the battery', 'mΩ'],
      ['U₀', 'rested'],
      ['U', 'loaded'],
      ['I', 'current'],
    ],
    range: 'a steady load of a few seconds; probes on the posts, not on the clamps',
    errors: ['The load is not above 0.', 'The voltage rises under load.'],
    source: 'Ohm’s law',
    example: { expression: 'internal_resistance(12.60 V, 10.35 V, 180 A)', result: '12.5 mΩ' },
    compute: ofNumbers(internalResistance),
  },
  {
    form: 'scalar',
    name: 'load_test_limit',
    family: 'electrical',
    summary:
      'The least voltage that a charged 12 V battery may show at the end of a load test. It is no cranking limit.',
    parameters: [
      temperaturePoint('temperature', 'temperature of the battery', {
        within: { from: '0 °F', to: '140 °F' },
      }),
    ],
    result: { kind: 'fixed', unit: 'V' },
    formula:
      '9.6 V from 70 °F on\n9.5, 9.4, 9.3, 9.1, 8.9, 8.7, 8.5 V at 60, 50, 40, 30, 20, 10, 0 °F, straight between',
    range: 'half the cold-cranking current for 15 s',
    errors: ['The temperature is outside 0 .. 140 °F.'],
    source: 'battery council load test (value from memory)',
    example: { expression: 'load_test_limit(40 °F)', result: '9.3 V' },
    compute: ofNumbers(loadTestLimit),
  },
  {
    name: 'charging_pattern',
    family: 'electrical',
    summary: 'What the voltage of a running 12 V system usually means, in words.',
    parameters: [
      quantity('volts', 'V', 'voltage at the battery’s posts, engine running', {
        within: { from: '0 V', to: '20 V' },
      }),
    ],
    formula:
      'not charging below 12.8 V, low below 13.5 V, charging up to 14.7 V, high up to 15.0 V, overcharging above',
    range: 'at the posts; managed charging moves between 12.4 and 15 V on purpose',
    errors: ['The voltage is none of a 12 V system.', tooClose],
    source: 'common practice',
    says: chargingSayings,
    example: { expression: 'charging_pattern(14.2 V)', result: 'charging' },
    ...numbersInWords('charging_pattern', chargingPattern),
  },
  {
    name: 'cranking_pattern',
    family: 'electrical',
    summary: 'What the voltage of a 12 V battery while cranking usually means, in words.',
    parameters: [
      quantity('volts', 'V', 'voltage at the battery’s posts while the starter turns', {
        within: { from: '0 V', to: '14 V' },
      }),
    ],
    formula: 'cranks well from 10 V on, weak from 9 V on, collapses below',
    range: 'mild weather; cold lowers it',
    errors: ['The voltage is none of a cranking 12 V battery.', tooClose],
    source: 'common practice',
    says: crankingSayings,
    example: { expression: 'cranking_pattern(8.4 V)', result: 'collapses' },
    ...numbersInWords('cranking_pattern', crankingPattern),
  },
  {
    name: 'ripple_pattern',
    family: 'electrical',
    summary: 'What the ripple at the battery of a charging system usually means, in words.',
    parameters: [
      quantity('ripple', 'V', 'ripple from peak to peak, alternator under load', { within: { from: '0 V' } }),
    ],
    formula: 'smooth up to 0.5 V, raised up to 1 V, far too high above',
    range: 'at the battery’s posts, several consumers on',
    errors: ['The ripple is negative.', tooClose],
    source: 'common practice',
    says: rippleSayings,
    example: { expression: 'ripple_pattern(0.18 V)', result: 'smooth' },
    ...numbersInWords('ripple_pattern', ripplePattern),
  },
  {
    form: 'scalar',
    name: 'ripple_frequency',
    family: 'electrical',
    summary: 'The frequency of a sound alternator’s ripple; a failed diode shows at a sixth of it.',
    parameters: [
      anySpeed,
      quantity('pulley', '1', 'turns of the alternator for one of the engine', { within: { above: '0' } }),
      quantity('pole_pairs', '1', 'pairs of poles', { within: { from: '1' }, otherwise: '6' }),
    ],
    result: { kind: 'fixed', unit: 'Hz' },
    formula: 'f = 6 · pole_pairs · pulley · rpm/60',
    where: [['f', 'frequency of the ripple', 'Hz']],
    range: 'three phases, six diodes',
    errors: [
      'The speed is negative.',
      'The pulleys’ ratio is not above 0.',
      'The pole pairs are no whole number.',
    ],
    source: 'arithmetic of the three-phase bridge',
    example: { expression: 'ripple_frequency(800 rpm, 2.5, 6)', result: '1200 Hz' },
    compute: ofNumbers(rippleFrequency),
  },
  {
    form: 'scalar',
    name: 'parked_charge',
    family: 'electrical',
    summary:
      'The charge that a parked car takes from its battery, with the time that it takes to fall asleep.',
    parameters: [
      quantity('awake', 'A', 'draw until it falls asleep', { within: { from: '0 A' } }),
      quantity('time_to_sleep', 'min', 'how long that takes', { within: { from: '0 min' } }),
      quantity('asleep', 'A', 'draw from then on', { within: { from: '0 A' } }),
      quantity('parked', 'h', 'how long the car stands', { within: { from: '0 h' } }),
    ],
    result: { kind: 'fixed', unit: 'Ah' },
    formula: 'Q = awake · time_to_sleep + asleep · (parked − time_to_sleep)',
    where: [['Q', 'charge taken from the battery', 'Ah']],
    range: '',
    errors: [noDraw, 'A time is negative.'],
    source: 'arithmetic',
    example: { expression: 'parked_charge(6 A, 20 min, 0.03 A, 72 h)', result: '4.15 Ah' },
    compute: ofNumbers(parkedCharge),
  },
  {
    form: 'scalar',
    name: 'time_parked',
    family: 'electrical',
    summary: 'How long a battery lasts at a steady draw, from one state of charge to another.',
    parameters: [
      quantity('capacity', 'Ah', 'capacity of the battery', { within: { above: '0 Ah' } }),
      quantity('draw', 'A', 'steady draw', { within: { above: '0 A' } }),
      quantity('at_start', '%', 'state of charge at the start', {
        within: { to: '100 %' },
        otherwise: '100 %',
      }),
      quantity('at_end', '%', 'state of charge at which it no longer starts', {
        within: { from: '0 %' },
        otherwise: '50 %',
      }),
    ],
    result: { kind: 'fixed', unit: 'day' },
    formula: 't = capacity · (at_start − at_end)/draw',
    where: [['t', 'time that the battery lasts', 'day']],
    range: 'a healthy battery; self-discharge and cold come on top',
    errors: ['The capacity or the draw is not above 0.', 'The states of charge do not go down.'],
    source: 'arithmetic; that half a charge still starts an engine is common practice',
    example: { expression: 'time_parked(60 Ah, 0.03 A, 90 %, 50 %)', result: '33.3 day' },
    compute: ofNumbers(timeParked),
  },
  {
    name: 'draw_pattern',
    family: 'electrical',
    summary: 'What the draw of a parked car some time after locking usually means, in words.',
    parameters: [
      quantity('draw', 'A', 'current from the battery', { within: { from: '0 A' } }),
      quantity('since', 'min', 'time since the car was locked', { within: { from: '0 min' } }),
      quantity('limit', 'A', 'what a sleeping car may draw', {
        within: { above: '0 A' },
        otherwise: '0.05 A',
      }),
      quantity('sleep', 'min', 'how long it may take to fall asleep', {
        within: { from: '0 min' },
        otherwise: '45 min',
      }),
    ],
    formula: 'asleep: draw ≤ limit\nnot asleep yet: since < sleep',
    range: 'the maker’s limit and time where they are known; some cars take an hour',
    errors: [noDraw, 'A time or the limit is negative.', tooClose],
    source: 'common practice',
    says: drawSayings,
    example: { expression: 'draw_pattern(0.42 A, 70 min)', result: 'something stays awake' },
    ...numbersInWords('draw_pattern', drawPattern),
  },
];

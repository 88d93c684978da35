import type { FunctionRow, Plain } from '../../expression/functionRow.ts';
import { type Answer, noAnswer, ofNumbers } from '../answer.ts';
import { inWords, type Wording } from '../inWords.ts';
import { anySpeed, cylinders, engineSpeed, quantity, text } from '../parameters.ts';
import {
  companionOf,
  engineOrder,
  firesAfter,
  firingFrequency,
  firingInterval,
  orderFits,
  orderFrequency,
  orderSayings,
  toothSpeed,
} from './firingOrder.ts';

const cylinder = quantity('cylinder', '1', 'number of the cylinder');
const order = text('order', 'the firing order, "1-3-4-2"', { header: 'engine.firing_order' });
const notThere = 'The cylinder is not in the firing order.';
const unreadable = 'The firing order cannot be read.';
const noCount = 'The number of cylinders is not a whole number.';
const negativeSpeed = 'The speed is negative.';
const ofCycle = 'arithmetic of the four-stroke cycle';

/** The order of firing, what follows from it, and how often things happen in a turn. */
export const orderRows: readonly FunctionRow[] = [
  {
    name: 'order_check',
    family: 'mechanical',
    summary: 'Whether a firing order names every cylinder of the engine once, in words.',
    parameters: [order, cylinders],
    formula: 'every number from 1 to cylinders, once',
    range: '',
    errors: [unreadable, noCount],
    source: 'definition',
    says: orderSayings,
    example: { expression: 'order_check("1-3-4-3", 4)', result: 'a cylinder stands twice' },
    ...inWords('order_check', ([written, count]: readonly Plain[]): Wording => {
      if (typeof written !== 'string') return noAnswer('The firing order must be a text, such as "1-3-4-2".');
      return typeof count === 'number'
        ? orderFits(written, count)
        : noAnswer('One of the values is no number.');
    }),
  },
  {
    form: 'scalar',
    name: 'companion_of',
    family: 'mechanical',
    fourStroke: true,
    summary: 'The cylinder at top dead centre together with this one; on waste spark they share a coil.',
    parameters: [cylinder, order],
    result: { kind: 'fixed', unit: '1' },
    formula: 'half the order further',
    range: 'an even number of cylinders that fire evenly',
    errors: [notThere, unreadable, 'The number of cylinders is odd.'],
    source: ofCycle,
    example: { expression: 'companion_of(1, "1-3-4-2")', result: '4' },
    compute: ofOrder(companionOf),
  },
  {
    form: 'scalar',
    name: 'fires_after',
    family: 'mechanical',
    summary: 'The cylinder that fires next after this one.',
    parameters: [cylinder, order],
    result: { kind: 'fixed', unit: '1' },
    formula: 'one place further in the order; after the last the first',
    range: '',
    errors: [notThere, unreadable],
    source: ofCycle,
    example: { expression: 'fires_after(4, "1-3-4-2")', result: '2' },
    compute: ofOrder(firesAfter),
  },
  {
    form: 'scalar',
    name: 'firing_interval',
    family: 'mechanical',
    fourStroke: true,
    summary: 'The crank angle from one firing to the next.',
    parameters: [cylinders],
    result: { kind: 'fixed', unit: '°CA', quantityKind: 'difference' },
    formula: 'interval = 720°/cylinders',
    where: [['interval', 'crank angle from firing to firing', '°CA']],
    range: 'engines that fire evenly',
    errors: [noCount],
    source: ofCycle,
    example: { expression: 'firing_interval(6)', result: '120 °CA' },
    compute: ofNumbers(firingInterval),
  },
  {
    form: 'scalar',
    name: 'firing_frequency',
    family: 'mechanical',
    fourStroke: true,
    summary: 'How often the engine fires.',
    parameters: [anySpeed, cylinders],
    result: { kind: 'fixed', unit: 'Hz' },
    formula: 'f = rpm/60 · cylinders/2',
    where: [['f', 'firings in a second', 'Hz']],
    range: '',
    errors: [negativeSpeed, noCount],
    source: ofCycle,
    example: { expression: 'firing_frequency(800 rpm, 4)', result: '26.667 Hz' },
    compute: ofNumbers(firingFrequency),
  },
  {
    form: 'scalar',
    name: 'order_frequency',
    family: 'mechanical',
    summary: 'The frequency of an engine order at a speed. One weak cylinder shows at order 0.5.',
    parameters: [
      quantity('order', '1', 'how often it happens in a turn', { within: { above: '0' } }),
      anySpeed,
    ],
    result: { kind: 'fixed', unit: 'Hz' },
    formula: 'f = order · rpm/60',
    where: [['f', 'frequency of the order', 'Hz']],
    range: '',
    errors: ['The order is not above 0.', negativeSpeed],
    source: 'definition; half-order excitation of the four-stroke cycle: f = N·p/60',
    example: { expression: 'order_frequency(0.5, 1500 rpm)', result: '12.5 Hz' },
    compute: ofNumbers(orderFrequency),
  },
  {
    form: 'scalar',
    name: 'engine_order',
    family: 'mechanical',
    summary: 'The engine order of a frequency: how often it happens in a turn.',
    parameters: [
      quantity('frequency', 'Hz', 'a vibration’s or a ripple’s frequency', { within: { from: '0 Hz' } }),
      engineSpeed,
    ],
    result: { kind: 'fixed', unit: '1' },
    formula: 'order = f/(rpm/60)',
    where: [
      ['order', 'how often it happens in a turn', ''],
      ['f', 'frequency'],
    ],
    range: '0.5 one cylinder, cylinders/2 the firing of all; others belong to what turns at another speed',
    errors: ['The engine stands still.', 'The frequency is negative.'],
    source: 'definition',
    example: { expression: 'engine_order(12.5 Hz, 1500 rpm)', result: '0.5' },
    compute: ofNumbers(engineOrder),
  },
  {
    form: 'scalar',
    name: 'tooth_speed',
    family: 'mechanical',
    summary: 'The speed from the time of one tooth pitch on a wheel.',
    parameters: [
      quantity('time', 'ms', 'time from one tooth to the next', { within: { above: '0 ms' } }),
      quantity('pitches', '1', 'pitches in a turn, missing teeth counted: 60 for a 60−2 wheel', {
        within: { from: '1' },
        otherwise: '60',
      }),
    ],
    result: { kind: 'fixed', unit: 'rpm' },
    formula: 'rpm = 60/(time · pitches)',
    where: [['rpm', 'engine speed', 'rpm']],
    range: '',
    errors: ['The time is not above 0.', 'The number of pitches is not a whole number.'],
    source: 'arithmetic',
    example: { expression: 'tooth_speed(0.25 ms, 60)', result: '4000 rpm' },
    compute: ofNumbers(toothSpeed),
  },
];

/** A row's `compute` for a cylinder and the firing order. */
function ofOrder(formula: (cylinder: number, order: string) => Answer): (args: readonly Plain[]) => Answer {
  return ([number, written]) => {
    if (typeof number !== 'number' || !Number.isFinite(number))
      return noAnswer('One of the values is no number.');
    if (typeof written !== 'string') return noAnswer('The firing order must be a text, such as "1-3-4-2".');
    return formula(number, written);
  };
}

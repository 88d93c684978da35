import type { ComputedType, FunctionRow, Parameter } from '../../expression/functionRow.ts';
import type { Type } from '../../expression/type.ts';
import { current, voltage } from '../../quantity/dimension.ts';
import { typeIn } from '../../waveform/arguments.ts';
import { cylinders, quantity, text } from '../parameters.ts';
import { crankingSpeed, humpBalance, relativeCompression } from './cranked.ts';

const load: Parameter = {
  name: 'current',
  takes: { what: 'series' },
  meaning: 'starter current while cranking, or the battery’s voltage',
};
const sync: Parameter = {
  name: 'sync',
  takes: { what: 'series' },
  meaning: 'a channel that marks one cylinder once in two turns; without it humps are not given to cylinders',
  optional: true,
};
const order = text('firing_order', 'firing order', { header: 'engine.firing_order' });
const marked = quantity('cylinder', '1', 'the cylinder that the sync channel marks; the first of the order', {
  optional: true,
});
const errors = [
  'No stretch of cranking, or nothing that repeats, is found.',
  'There are not two whole engine cycles.',
  'The firing order does not name every cylinder once.',
  'The sync channel marks every turn, now one hump and now another, or none.',
];

/** What a starter’s current, or the battery’s dips, tell while the engine is cranked and does not fire. */
export const crankingRows: readonly FunctionRow[] = [
  {
    form: 'whole',
    name: 'relative_compression',
    family: 'mechanical',
    fourStroke: true,
    summary:
      'Each cylinder’s share of the highest compression, from starter current or battery voltage while cranking.',
    parameters: [
      load,
      sync,
      order,
      marked,
      quantity('ratio', '1', 'compression ratio', {
        within: { above: '1' },
        header: 'engine.compression_ratio',
        otherwise: '10',
      }),
    ],
    result: {
      kind: 'computed',
      says: 'a percentage a cylinder; a hump where there is no sync',
      typeOf: shares,
    },
    formula: 'load = Σ C·M(θ) behind the starter’s lag, C by least squares\nresult = C/highest C',
    where: [
      ['load', 'load of the starter over the crank angle', ''],
      ['C', 'compression of each cylinder', ''],
      ['M', 'torque of one compression at a crank angle', ''],
      ['θ', 'crank angle', '°CA'],
      ['result', 'share of the highest', '%'],
    ],
    range:
      '± from cycle to cycle (95 %) and what the method is off by on synthetic engines; steady cranking without firing; the humps alone would make a weak cylinder look weaker and the next stronger',
    errors: [...errors, 'The load does not follow the compressions of that many cylinders.'],
    source:
      'common practice; slider-crank and polytropic law after Heywood, Internal Combustion Engine Fundamentals, chapters 2 and 9; JCGM 100:2008, 4.2',
    example: { expression: 'lowest(relative_compression(cranked.current, cranked.sync))', result: '4' },
    evaluate: relativeCompression,
  },
  {
    form: 'whole',
    name: 'hump_balance',
    family: 'mechanical',
    fourStroke: true,
    summary:
      'Each hump of starter current, or dip of the battery, against the mean of all in its engine cycle.',
    parameters: [load, sync, order, marked],
    result: {
      kind: 'computed',
      says: 'a percentage a cylinder; a hump where there is no sync',
      typeOf: shares,
    },
    formula: 'hump = (top − mean of the valleys on both sides)/mean of the cycle',
    where: [['hump', 'height of a hump against the others', '%']],
    range:
      '± from cycle to cycle (95 %); as the trace shows it: what one cylinder lacks also lifts the next one’s hump',
    errors,
    source: 'common practice; JCGM 100:2008, 4.2',
    example: { expression: 'lowest(hump_balance(cranked.current, cranked.sync))', result: '4' },
    evaluate: humpBalance,
  },
  {
    form: 'whole',
    name: 'cranking_speed',
    family: 'mechanical',
    fourStroke: true,
    summary: 'How fast the starter turns the engine, by the rhythm of its compressions.',
    parameters: [load, cylinders],
    result: { kind: 'fixed', unit: 'rpm' },
    formula: 'rpm = 2 turns/time of as many humps as cylinders',
    where: [['rpm', 'cranking speed', 'rpm']],
    answers: { from: '90 rpm', to: '420 rpm' },
    range: '± from cycle to cycle (95 %)',
    errors: errors.slice(0, 2),
    source: 'definition; every cylinder of a four-stroke engine compresses once in two turns',
    example: { expression: 'cranking_speed(cranked.current)', result: '218.48 ± 0.77 rpm' },
    evaluate: crankingSpeed,
  },
];

function shares([x, marks]: readonly (Type | undefined)[]): ComputedType {
  const takes = 'samples of a current or a voltage';
  if (x?.kind !== 'series') return { wrong: 0, takes };
  if (x.quantity.dimension !== current && x.quantity.dimension !== voltage) return { wrong: 0, takes };
  if (marks !== undefined && (marks.kind !== 'series' || marks.capture !== x.capture))
    return { wrong: 1, takes: 'samples of the same capture' };
  return {
    type: { kind: 'members', by: marks === undefined ? 'label' : 'cylinder', quantity: typeIn('%') },
  };
}

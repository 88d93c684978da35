import { over, time } from '../../quantity/dimension.ts';
import { quotientUnit, unitOf } from '../../quantity/unit.ts';
import type { ComputedType, FunctionRow, Parameter, Result } from '../functionRow.ts';
import type { Type } from '../type.ts';
import { one, quantityIn } from './numbers.ts';
import { percentile, rate, valueAt } from './sampled.ts';

const samples: Parameter = { name: 'x', takes: { what: 'series' }, meaning: 'samples of one channel' };

const oneOfX: Result = {
  kind: 'computed',
  says: 'one value of the same sort',
  typeOf: ([x]) => one(quantityIn(x)),
};

/** Functions of single moments and shares of samples; what reads a signal as a whole belongs to `waveform/`. */
export const seriesFunctions: readonly FunctionRow[] = [
  {
    form: 'whole',
    name: 'at',
    family: 'series',
    summary: 'The value at a moment, straight between the neighbouring samples.',
    parameters: [samples, { name: 't', takes: { what: 'quantity', unit: 's' }, meaning: 'the moment' }],
    result: oneOfX,
    formula: 'x(t) = x₁ + (t − t₁)·(x₂ − x₁)/(t₂ − t₁)',
    where: [
      ['x₁', 'the sample before the moment', ''],
      ['t₁', 'its time', 's'],
      ['x₂', 'the sample behind it', ''],
      ['t₂', 'its time', 's'],
    ],
    range: 'from the first to the last sample',
    errors: ['The moment lies before the first or after the last sample.', 'A sample is missing there.'],
    source: 'linear interpolation',
    example: { expression: 'at(log.front, 1.5 s)', result: '0.55 V' },
    evaluate: valueAt,
  },
  {
    form: 'whole',
    name: 'percentile',
    family: 'series',
    summary: 'The value that a given share of the values does not exceed.',
    parameters: [
      { name: 'x', takes: { what: 'many' }, meaning: 'samples, or one value by cylinder, label or state' },
      {
        name: 'p',
        takes: { what: 'quantity', unit: '%' },
        meaning: 'the share',
        within: { from: '0 %', to: '100 %' },
      },
    ],
    result: oneOfX,
    formula: 'straight between the ordered values at place 1 + (n − 1)·p',
    where: [['n', 'how many there are', '']],
    range: '',
    errors: ['The share is outside 0 to 100 %.', 'There are no values in it.'],
    source: 'Hyndman and Fan, The American Statistician 50 (1996) 361–365, definition 7',
    example: { expression: 'percentile(log.front, 25 %)', result: '0.25 V' },
    evaluate: percentile,
  },
  {
    form: 'whole',
    name: 'rate',
    family: 'series',
    summary: 'How fast the samples change, per second, at each sample.',
    parameters: [samples],
    result: { kind: 'computed', says: 'samples of x per second', typeOf: rateOf },
    formula: '(xᵢ₊₁ − xᵢ₋₁)/(tᵢ₊₁ − tᵢ₋₁)\nat the ends from the nearest two samples',
    where: [
      ['xᵢ₊₁', 'the next sample', ''],
      ['xᵢ₋₁', 'the sample before', ''],
      ['tᵢ₊₁', 'time of the next', 's'],
      ['tᵢ₋₁', 'time of the one before', 's'],
    ],
    range: 'two samples or more',
    errors: ['There are fewer than two samples.'],
    source: 'central difference',
    example: { expression: 'max(rate(log.front))', result: '0.7 V/s' },
    evaluate: rate,
  },
];

const second = unitOf('s');

function rateOf([x]: readonly (Type | undefined)[]): ComputedType {
  if (x?.kind !== 'series' || second === undefined) return { wrong: 0, takes: 'samples of a capture' };
  const { dimension, unit } = x.quantity;
  const quantity = {
    dimension: over(dimension, time),
    kind: 'none',
    unit: quotientUnit(unit, second),
  } as const;
  return { type: { ...x, quantity } };
}

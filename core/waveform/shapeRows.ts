import { absentOf, cannotCompute } from '../expression/absent.ts';
import type { ComputedType, FunctionRow } from '../expression/functionRow.ts';
import { aligned, samplesAt } from '../expression/series.ts';
import type { Type } from '../expression/type.ts';
import type { Absent, One, Series, Value } from '../expression/value.ts';
import { differenceOf } from '../quantity/kinds.ts';
import { ofOneCapture, pairOf, sameSort, samplesOfX, samplesOfY, typeIn } from './arguments.ts';
import { carried } from './carry.ts';
import { lagBetween, lagCautions } from './lag.ts';
import { correlationOf } from './likeness.ts';
import { orderAmplitude } from './order.ts';
import { peaksOf } from './peaks.ts';
import { isRecorded, recorded } from './recorded.ts';
import { resample } from './resample.ts';
import { turnsAlong } from './turns.ts';

/** What is read off the shape of a signal, or off two together. */
export const shapeRows: readonly FunctionRow[] = [
  {
    form: 'whole',
    name: 'peaks',
    family: 'series',
    summary: 'The highest points between the valleys.',
    parameters: [
      samplesOfX,
      {
        name: 'prominence',
        takes: { what: 'any' },
        meaning: 'how far a peak stands above the valleys on both sides; a tenth of the swing when left out',
        optional: true,
      },
    ],
    result: { kind: 'computed', says: 'samples of x at its peaks only', typeOf: peaksType },
    formula: 'local maxima from which x falls by the prominence on both sides before it is higher again',
    range: 'the ends of the record are no peaks',
    errors: ['There are no peaks.', 'The prominence is not above 0.'],
    source: 'definition',
    example: { expression: 'count(peaks(crank.pressure))', result: '4' },
    evaluate: peaks,
  },
  {
    form: 'whole',
    name: 'correlation',
    family: 'series',
    summary: 'How alike two channels move: 1 together, -1 against each other, 0 without relation.',
    parameters: [samplesOfX, samplesOfY],
    result: { kind: 'computed', says: 'a plain number', typeOf: (types) => ofOneCapture(types, typeIn('1')) },
    formula: 'r = Σ(x − x̄)·(y − ȳ)/√(Σ(x − x̄)² · Σ(y − ȳ)²)',
    where: [
      ['r', 'correlation, −1 to 1', ''],
      ['x̄', 'mean of x', ''],
      ['ȳ', 'mean of y', ''],
    ],
    range: 'two samples or more of both at the same moments',
    errors: ['One of the channels does not change.', 'There are fewer than two moments that both have.'],
    source: 'Pearson’s product-moment coefficient; ISO 3534-1:2006, 2.44',
    example: { expression: 'correlation(log.rpm, log.map)', result: '-0.8' },
    evaluate: pairOf('1', (x, y) => {
      const [a, b] = aligned(x, y);
      return correlationOf(a.samples, b.samples);
    }),
  },
  {
    form: 'whole',
    name: 'lag',
    family: 'series',
    summary: 'By how much y comes later than x.',
    parameters: [samplesOfX, samplesOfY],
    result: { kind: 'computed', says: 'a time in ms', typeOf: (types) => ofOneCapture(types, typeIn('ms')) },
    formula: 'the shift with the greatest cross-correlation, positive when y comes later',
    range:
      'up to half of the record; of a steady rhythm only within half a cycle, which is said where another shift is at least five sixths as alike',
    errors: [
      'One of the channels does not change.',
      'The channels do not move together at any shift.',
      'The record has a gap.',
    ],
    source: 'definition; by fast Fourier transform (Cooley and Tukey, 1965)',
    example: { expression: 'lag(log.tp, log.flow)', result: '120 ms' },
    evaluate: pairOf('ms', lagBetween),
    cautions: lagCautions,
  },
  {
    form: 'whole',
    name: 'order_amplitude',
    family: 'series',
    summary: 'How strong the part is that repeats a given number of times a turn of the crankshaft.',
    parameters: [
      samplesOfX,
      {
        name: 'rpm',
        takes: { what: 'quantity', unit: 'rpm' },
        meaning: 'engine speed, steady or as samples',
        within: { above: '0 rpm' },
      },
      {
        name: 'order',
        takes: { what: 'quantity', unit: '1' },
        meaning: 'cycles a turn: 2 is the firing of four cylinders',
        within: { above: '0' },
      },
    ],
    result: { kind: 'computed', says: 'one value, a difference of the same sort', typeOf: amplitudeType },
    formula: 'amplitude of the sine at order · turns, fitted by least squares over whole engine cycles',
    range: 'below half the sample rate; one cycle of the order or more',
    errors: [
      'The samples are too sparse for this order.',
      'There is no whole cycle of this order.',
      'The speed or the order is not above 0.',
    ],
    source: 'discrete Fourier transform; firing order of n cylinders is n/2, a single cylinder’s 0.5',
    example: { expression: 'order_amplitude(shake.level, 780 rpm, 0.5)', result: '0.02 V' },
    evaluate: amplitude,
  },
  {
    form: 'whole',
    name: 'resample',
    family: 'series',
    summary: 'The samples of x at the moments of another capture.',
    parameters: [
      samplesOfX,
      { name: 'like', takes: { what: 'series' }, meaning: 'samples whose moments are taken' },
    ],
    result: {
      kind: 'computed',
      says: 'samples of x, of the other capture',
      typeOf: ([of, like]) =>
        of?.kind === 'series' && like?.kind === 'series'
          ? { type: { ...of, capture: like.capture } }
          : { wrong: 0, takes: 'samples of a capture' },
    },
    formula: 'linear between the neighbouring samples',
    range: 'where both were recorded, both clocks from one moment; nothing across a gap',
    errors: ['The captures do not overlap.'],
    source: 'linear interpolation',
    example: { expression: 'max(resample(scan.rpm, log.map))', result: '925 rpm' },
    evaluate: ([x, like]) =>
      x?.kind === 'series' && like?.kind === 'series' ? resample(x, like) : noSamples,
  },
];

const noSamples = cannotCompute('it has no samples');

function peaksType([of, prominence]: readonly (Type | undefined)[]): ComputedType {
  if (of?.kind !== 'series') return { wrong: 0, takes: 'samples of a capture' };
  const difference = { ...of, quantity: differenceOf(of.quantity) };
  // A temperature says its difference in the words of a temperature.
  const fits = sameSort(difference, prominence) || (prominence?.kind === 'one' && sameSort(of, prominence));
  return fits ? { type: of } : { wrong: 1, takes: 'a difference of the same sort as the samples' };
}

function peaks([x, prominence]: readonly (Value | undefined)[]): Value {
  if (x?.kind !== 'series') return noSamples;
  const least = prominence?.kind === 'one' ? differenceIn(prominence) : undefined;
  if (least !== undefined && !(least > 0)) return cannotCompute('the prominence must be above 0');
  const places = peaksOf(x.samples, least);
  return places.length > 0 ? samplesAt(x, places) : cannotCompute('there are no peaks in it');
}

function differenceIn({ amount, type }: One): number {
  return type.kind === 'point' ? amount.si - type.unit.offset : amount.si;
}

function amplitudeType([of, rpm, order]: readonly (Type | undefined)[]): ComputedType {
  if (of?.kind !== 'series') return { wrong: 0, takes: 'samples of a capture' };
  if (rpm?.kind !== 'one' && !(rpm?.kind === 'series' && rpm.capture === of.capture)) {
    return { wrong: 1, takes: 'one engine speed, or its samples of the same capture' };
  }
  if (order?.kind !== 'one') return { wrong: 2, takes: 'one plain number' };
  return { type: { kind: 'one', quantity: differenceOf(of.quantity) } };
}

function amplitude([x, rpm, order]: readonly (Value | undefined)[]): Value {
  const absent = absentOf([x, rpm, order]);
  if (absent !== undefined) return absent;
  if (x?.kind !== 'series' || order?.kind !== 'one') return noSamples;
  if (rpm?.kind !== 'one' && rpm?.kind !== 'series') return noSamples;
  const read = (of: Series | undefined, speed: number | Series | undefined, at = 0): number | Absent => {
    if (of === undefined || speed === undefined) return noSamples;
    const record = recorded(of);
    if (!isRecorded(record)) return record;
    const turns = turnsAlong(record, speed);
    return turns instanceof Float64Array ? orderAmplitude(record, turns, at) : turns;
  };
  const amount =
    rpm.kind === 'series'
      ? carried([x, rpm], [order.amount], ([of, speed], [at]) => read(of, speed, at))
      : carried([x], [rpm.amount, order.amount], ([of], [speed, at]) => read(of, speed, at));
  return 'si' in amount ? { kind: 'one', type: differenceOf(x.type), amount } : amount;
}

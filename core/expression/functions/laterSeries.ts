import type { FunctionRow, Parameter, Result } from '../functionRow.ts';
import { one, quantityIn } from './numbers.ts';

const x: Parameter = { name: 'x', takes: { what: 'series' }, meaning: 'samples of one channel' };
const volts: Parameter = { name: 'x', takes: { what: 'series', unit: 'V' }, meaning: 'samples of a voltage' };
const y: Parameter = {
  name: 'y',
  takes: { what: 'series' },
  meaning: 'samples of another channel of the same capture',
};

function voltage(name: string, meaning: string, otherwise: string): Parameter {
  return { name, takes: { what: 'quantity', unit: 'V' }, meaning, otherwise };
}

const level = voltage('level', 'the level that is crossed', '0.45 V');
const hysteresis: Parameter = {
  name: 'hysteresis',
  takes: { what: 'quantity', unit: 'V' },
  meaning: 'how far it must go beyond the level to count',
  optional: true,
};
const low = voltage('low', 'the lower level', '0.3 V');
const high = voltage('high', 'the upper level', '0.6 V');

const noCrossing = ['The level is never crossed.'];
const likeX: Result = {
  kind: 'computed',
  says: 'one value of the same sort',
  typeOf: ([of]) => one(quantityIn(of)),
};

/** Declared with their types, so that cases written now need no change when they are built. */
export const laterSeriesFunctions: readonly FunctionRow[] = [
  {
    form: 'later',
    name: 'crossings',
    family: 'series',
    summary: 'How often a voltage crosses a level, in either direction.',
    parameters: [volts, level, hysteresis],
    result: { kind: 'fixed', unit: '1' },
    formula: 'n of crossings, each counted once it has gone beyond level ± hysteresis / 2',
    range: '',
    errors: [],
    source: 'common practice',
    example: { expression: 'crossings(o2.front)', result: '18' },
  },
  {
    form: 'later',
    name: 'switch_rate',
    family: 'series',
    summary: 'Crossings of a level per second: two make one cycle.',
    parameters: [volts, level, hysteresis],
    result: { kind: 'fixed', unit: 'Hz' },
    formula: 'crossings / (last time − first time)',
    range: '',
    errors: ['There are fewer than two samples.'],
    source: 'common practice',
    example: { expression: 'switch_rate(o2.front)', result: '1.8 Hz' },
  },
  {
    form: 'later',
    name: 'frequency',
    family: 'series',
    summary: 'How many whole cycles there are per second.',
    parameters: [x],
    result: { kind: 'fixed', unit: 'Hz' },
    formula: '1 / period',
    range: 'one whole cycle or more',
    errors: ['There is no whole cycle.'],
    source: 'definition',
    example: { expression: 'frequency(o2.front)', result: '0.9 Hz' },
  },
  {
    form: 'later',
    name: 'period',
    family: 'series',
    summary: 'How long one cycle takes.',
    parameters: [x],
    result: { kind: 'fixed', unit: 's' },
    formula: 'mean time from one rising crossing of the middle to the next',
    range: 'one whole cycle or more',
    errors: ['There is no whole cycle.'],
    source: 'definition',
    example: { expression: 'period(o2.front)', result: '1.11 s' },
  },
  {
    form: 'later',
    name: 'duty',
    family: 'series',
    summary: 'The share of the time that a signal is above a level.',
    parameters: [
      x,
      {
        name: 'level',
        takes: { what: 'any' },
        meaning: 'the level; the middle when left out',
        optional: true,
      },
    ],
    result: { kind: 'fixed', unit: '%' },
    formula: 'time above level / whole time, over whole cycles',
    range: '',
    errors: noCrossing,
    source: 'definition',
    example: { expression: 'duty(purge.drive, 6 V)', result: '35 %' },
  },
  {
    form: 'later',
    name: 'rise_time',
    family: 'series',
    summary: 'How long a voltage takes from a lower to an upper level.',
    parameters: [volts, low, high],
    result: { kind: 'fixed', unit: 'ms' },
    formula: 'median of t(high) − t(low) over the rising edges',
    range: '',
    errors: noCrossing,
    source: 'common practice',
    example: { expression: 'rise_time(o2.front)', result: '60 ms' },
  },
  {
    form: 'later',
    name: 'fall_time',
    family: 'series',
    summary: 'How long a voltage takes from an upper to a lower level.',
    parameters: [volts, high, low],
    result: { kind: 'fixed', unit: 'ms' },
    formula: 'median of t(low) − t(high) over the falling edges',
    range: '',
    errors: noCrossing,
    source: 'common practice',
    example: { expression: 'fall_time(o2.front)', result: '75 ms' },
  },
  {
    form: 'later',
    name: 'peaks',
    family: 'series',
    summary: 'The highest points between the valleys.',
    parameters: [x],
    result: {
      kind: 'computed',
      says: 'samples of x at its peaks only',
      typeOf: ([of]) => (of?.kind === 'series' ? { type: of } : { wrong: 0, takes: 'samples of a capture' }),
    },
    formula: 'local maxima that rise above both neighbouring valleys',
    range: '',
    errors: ['There are no peaks.'],
    source: 'definition',
    example: { expression: 'count(peaks(crank.pressure))', result: '8' },
  },
  {
    form: 'later',
    name: 'correlation',
    family: 'series',
    summary: 'How alike two channels move: 1 together, -1 against each other, 0 without relation.',
    parameters: [x, y],
    result: { kind: 'fixed', unit: '1' },
    formula: 'Σ(x − x̄)(y − ȳ) / √(Σ(x − x̄)²·Σ(y − ȳ)²)',
    range: 'two samples or more',
    errors: ['One of the channels does not change.'],
    source: 'Pearson’s product-moment coefficient; ISO 3534-1:2006, 2.44',
    example: { expression: 'correlation(log.rpm, log.map)', result: '-0.94' },
  },
  {
    form: 'later',
    name: 'lag',
    family: 'series',
    summary: 'By how much y comes later than x.',
    parameters: [x, y],
    result: { kind: 'fixed', unit: 'ms' },
    formula: 'the shift with the greatest cross-correlation, positive when y comes later',
    range: 'up to half of the record',
    errors: ['One of the channels does not change.'],
    source: 'definition',
    example: { expression: 'lag(log.tp, log.map)', result: '120 ms' },
  },
  {
    form: 'later',
    name: 'order_amplitude',
    family: 'series',
    summary: 'How strong the part is that repeats a given number of times a turn of the crankshaft.',
    parameters: [
      x,
      {
        name: 'rpm',
        takes: { what: 'quantity', unit: 'rpm' },
        meaning: 'engine speed, steady or as samples',
      },
      {
        name: 'order',
        takes: { what: 'quantity', unit: '1' },
        meaning: 'cycles a turn: 2 is the firing of four cylinders',
      },
    ],
    result: likeX,
    formula: 'amplitude of the Fourier component at order · rpm / 60',
    range: 'below half the sample rate',
    errors: ['The samples are too sparse for this order.'],
    source: 'discrete Fourier transform',
    example: { expression: 'order_amplitude(shake.level, 780 rpm, 0.5)', result: '0.02 V' },
  },
  {
    form: 'later',
    name: 'resample',
    family: 'series',
    summary: 'The samples of x at the moments of another capture.',
    parameters: [x, { name: 'like', takes: { what: 'series' }, meaning: 'samples whose moments are taken' }],
    result: {
      kind: 'computed',
      says: 'samples of x, of the other capture',
      typeOf: ([of, like]) =>
        of?.kind === 'series' && like?.kind === 'series'
          ? { type: { ...of, capture: like.capture } }
          : { wrong: 0, takes: 'samples of a capture' },
    },
    formula: 'linear between the neighbouring samples',
    range: 'where both were recorded',
    errors: ['The captures do not overlap.'],
    source: 'linear interpolation',
    example: {
      expression: 'resample(scan.rpm, scope.ignition)',
      result: 'samples at the times of scope.ignition',
    },
  },
];

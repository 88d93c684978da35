import type { FunctionRow, Parameter } from '../expression/functionRow.ts';
import { countOf, readingOf, sameSort, samplesOfX, typeIn, voltage, volts } from './arguments.ts';
import { countCrossings, dutyOf, frequencyOf, periodOf, switchRate } from './cycles.ts';
import { fallTime, riseTime } from './edges.ts';

const x = volts('x', 'samples of a voltage');
const level = voltage('level', 'the level that is crossed', '0.45 V');
const hysteresis: Parameter = {
  name: 'hysteresis',
  within: { from: '0 V' },
  takes: { what: 'quantity', unit: 'V' },
  meaning: 'the band around the level that noise must leave to count; none when left out',
  optional: true,
};
const low = voltage('low', 'the lower level', '0.3 V');
const high = voltage('high', 'the upper level', '0.6 V');
const noSamples = 'There are no samples.';
const noChange = 'The samples do not change.';
const noCycle = 'There is no whole cycle.';
const noEdge = 'No edge passes both levels.';
const tooSlow = 'Most edges pass both levels between two samples.';
const switchTimes = 'common practice; levels as in the oxygen sensor tests of SAE J1979 (values from memory)';

/** What is read off a signal that goes up and down. */
export const switchingRows: readonly FunctionRow[] = [
  {
    form: 'whole',
    name: 'crossings',
    family: 'series',
    summary: 'How often a voltage crosses a level, in either direction.',
    parameters: [x, level, hysteresis],
    result: { kind: 'fixed', unit: '1' },
    formula: 'every crossing, counted once a sample lies beyond level ± hysteresis/2',
    range: 'by nominal values; none across a gap in the record',
    errors: [noSamples, 'The hysteresis is below 0.'],
    source: 'common practice; 0.45 V as in the oxygen sensor tests of SAE J1979 (value from memory)',
    example: { expression: 'crossings(o2.front, hysteresis = 0.3 V)', result: '19' },
    evaluate: countOf('1', (record, at = 0, band = 0) => countCrossings(record, at, band)),
  },
  {
    form: 'whole',
    name: 'switch_rate',
    family: 'series',
    summary: 'Crossings of a level per second: two make one cycle.',
    parameters: [x, level, hysteresis],
    result: { kind: 'fixed', unit: 'Hz' },
    formula: 'crossings / recorded time, without gaps',
    range: 'by nominal values',
    errors: ['There are not two samples at two moments.', 'The hysteresis is below 0.'],
    source: 'common practice',
    example: { expression: 'switch_rate(o2.front, hysteresis = 0.3 V)', result: '1.9 Hz' },
    evaluate: countOf('Hz', (record, at = 0, band = 0) => switchRate(record, at, band)),
  },
  {
    form: 'whole',
    name: 'frequency',
    family: 'series',
    summary: 'How many whole cycles there are per second.',
    parameters: [samplesOfX],
    result: { kind: 'fixed', unit: 'Hz' },
    formula: 'f = 1/period',
    where: [
      ['f', 'cycles in a second', 'Hz'],
      ['period', 'time of one cycle', 's'],
    ],
    range: 'one whole cycle or more',
    errors: [noCycle, noChange],
    source: 'definition',
    example: { expression: 'frequency(o2.front)', result: '1 Hz' },
    evaluate: readingOf('Hz', frequencyOf),
  },
  {
    form: 'whole',
    name: 'period',
    family: 'series',
    summary: 'How long one cycle takes.',
    parameters: [samplesOfX],
    result: { kind: 'fixed', unit: 's' },
    formula:
      'mean time from one rising crossing of (least + greatest)/2 to the next; a tenth of the swing counts as noise',
    range: 'one whole cycle or more',
    errors: [noCycle, noChange],
    source: 'definition',
    example: { expression: 'period(o2.front)', result: '1 s' },
    evaluate: readingOf('s', periodOf),
  },
  {
    form: 'whole',
    name: 'duty',
    family: 'series',
    summary: 'The share of the time that a signal is above a level.',
    parameters: [
      samplesOfX,
      {
        name: 'level',
        takes: { what: 'any' },
        meaning: 'the level; the middle between least and greatest when left out',
        optional: true,
      },
    ],
    result: {
      kind: 'computed',
      says: 'a percentage',
      typeOf: ([of, at]) =>
        sameSort(of, at)
          ? { type: { kind: 'one', quantity: typeIn('%') } }
          : { wrong: 1, takes: 'a level of the same sort as the samples' },
    },
    formula: 'time above level / whole time, from the first rising crossing to the last',
    range: 'one whole cycle or more',
    errors: ['The level is never crossed.', noCycle, noChange],
    source: 'definition',
    example: { expression: 'duty(purge.drive, 6 V)', result: '35 %' },
    evaluate: readingOf('%', dutyOf),
  },
  {
    form: 'whole',
    name: 'rise_time',
    family: 'series',
    summary: 'How long a voltage takes from a lower to an upper level.',
    parameters: [x, low, high],
    result: { kind: 'fixed', unit: 'ms' },
    formula: 'median of t(high) − t(low) over the rising edges, straight between the samples',
    where: [['t', 'moment at which a level is passed', 's']],
    range: 'two samples or more on most edges',
    errors: [noEdge, tooSlow, 'The lower level is not below the upper one.'],
    source: switchTimes,
    example: { expression: 'rise_time(o2.front)', result: '140.98 ms' },
    evaluate: readingOf('ms', (record, from = 0, to = 0) => riseTime(record, from, to)),
  },
  {
    form: 'whole',
    name: 'fall_time',
    family: 'series',
    summary: 'How long a voltage takes from an upper to a lower level.',
    parameters: [x, high, low],
    result: { kind: 'fixed', unit: 'ms' },
    formula: 'median of t(low) − t(high) over the falling edges, straight between the samples',
    where: [['t', 'moment at which a level is passed', 's']],
    range: 'two samples or more on most edges',
    errors: [noEdge, tooSlow, 'The lower level is not below the upper one.'],
    source: switchTimes,
    example: { expression: 'fall_time(o2.front)', result: '140.98 ms' },
    evaluate: readingOf('ms', (record, from = 0, to = 0) => fallTime(record, from, to)),
  },
];

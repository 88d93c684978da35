import type { FunctionRow, Limits, Parameter, Plain } from '../../expression/functionRow.ts';
import { noAnswer, ofNumbers } from '../answer.ts';
import { inWords, numbersInWords, type Wording } from '../inWords.ts';
import { absolutePressure, engineSpeed, quantity, text } from '../parameters.ts';
import { backPressurePattern, backPressureSayings } from './backPressurePattern.ts';
import {
  compressionPattern,
  puffPattern,
  puffSayings,
  runningSayings,
  wetPattern,
  wetSayings,
} from './compressionPattern.ts';
import { compressionAt, compressionExponent } from './compressionPressure.ts';
import { leakagePattern, leakageSayings } from './leakagePattern.ts';

function gaugePressure(name: string, meaning: string, more: { readonly within?: Limits } = {}): Parameter {
  return quantity(name, 'kPa', meaning, { kind: 'gauge', ...more });
}

const best = gaugePressure('best', 'the highest cranking figure among the cylinders');
const patternErrors = [
  'A figure is negative, or above the one that it is compared with.',
  'A reading is too close to a limit for its uncertainty.',
];

/** Gauge readings of cylinders, and what they usually mean. */
export const compressionRows: readonly FunctionRow[] = [
  {
    form: 'scalar',
    name: 'compression_exponent',
    family: 'mechanical',
    summary: 'The polytropic exponent between the start and the end of a compression.',
    parameters: [
      absolutePressure('start', 'pressure when compression starts', { within: { above: '0 kPa' } }),
      absolutePressure('end', 'pressure at its end', { within: { above: '0 kPa' } }),
      quantity('ratio', '1', 'compression ratio, the effective one where it is known', {
        within: { above: '1' },
        header: 'engine.compression_ratio',
      }),
    ],
    result: { kind: 'fixed', unit: '1' },
    formula: 'n = ln(p₂/p₁)/ln r',
    where: [
      ['n', 'polytropic exponent', ''],
      ['p₂', 'end'],
      ['p₁', 'start'],
      ['r', 'ratio'],
    ],
    answers: { above: '0', to: '1.4' },
    range: 'usually 1.1 to 1.25 when cranking, about 1.3 running',
    errors: [
      'A pressure is not above absolute zero.',
      'The ratio is not above 1.',
      'The exponent would be below 0 or above 1.4.',
    ],
    source:
      'polytropic law; usual values after Heywood, Internal Combustion Engine Fundamentals, chapter 9 (from memory)',
    example: { expression: 'compression_exponent(14.7 psi, 194.7 psi, 10)', result: '1.12205' },
    compute: ofNumbers(compressionExponent),
  },
  {
    form: 'scalar',
    name: 'compression_at',
    family: 'mechanical',
    summary: 'What a compression gauge read at one barometer would show at another.',
    parameters: [
      gaugePressure('compression', 'compression on the gauge', { within: { from: '0 kPa' } }),
      absolutePressure('baro', 'barometer where it was read', { within: { above: '0 kPa' } }),
      absolutePressure('other', 'barometer of the other place', { within: { above: '0 kPa' } }),
    ],
    result: { kind: 'like', parameter: 'compression', quantityKind: 'gauge' },
    formula: 'p = compression · other/baro',
    where: [['p', 'reading at the other place', 'as compression']],
    range: 'the same engine, speed and temperature',
    errors: ['A barometer is not above absolute zero.', 'The compression is negative.'],
    source: 'polytropic law: the end and the start of compression are in one proportion',
    example: { expression: 'compression_at(278.53 psi, 101.325 kPa, 84.307 kPa)', result: '231.75 psi' },
    compute: ofNumbers(compressionAt),
  },
  {
    name: 'compression_pattern',
    family: 'mechanical',
    summary:
      'What cranking, running and snap-throttle compression of one cylinder together usually mean, in words.',
    parameters: [
      gaugePressure('cranking', 'compression when cranking', { within: { from: '0 kPa' } }),
      gaugePressure('running', 'compression at idle, this cylinder not firing', {
        within: { from: '0 kPa' },
      }),
      gaugePressure('snap', 'highest compression as the throttle is snapped', { within: { from: '0 kPa' } }),
      best,
    ],
    formula: 'leaks: cranking < 75 % of best\nusual: running 28 to 55 %, snap 60 to 105 % of cranking',
    range: 'warm engine, throttle open when cranking, one gauge for all three',
    errors: patternErrors,
    source: 'common practice',
    says: runningSayings,
    example: { expression: 'compression_pattern(178 psi, 44 psi, 92 psi, 182 psi)', result: 'cannot fill' },
    ...numbersInWords('compression_pattern', compressionPattern),
  },
  {
    name: 'puff_pattern',
    family: 'mechanical',
    summary: 'What the first puff on a compression gauge against the fifth usually means, in words.',
    parameters: [
      gaugePressure('first', 'the first puff', { within: { from: '0 kPa' } }),
      gaugePressure('fifth', 'the fifth puff', { within: { from: '0 kPa' } }),
      best,
    ],
    formula: 'fair: fifth ≥ 75 % of best\nquick: first ≥ 50 % of what is fair',
    range: 'a gauge that holds its reading, throttle open, steady cranking',
    errors: patternErrors,
    source: 'common practice',
    says: puffSayings,
    example: { expression: 'puff_pattern(42 psi, 150 psi, 178 psi)', result: 'builds up slowly' },
    ...numbersInWords('puff_pattern', puffPattern),
  },
  {
    name: 'wet_pattern',
    family: 'mechanical',
    summary: 'What a low compression does with a spoon of oil in the cylinder usually means, in words.',
    parameters: [
      gaugePressure('dry', 'compression without oil', { within: { from: '0 kPa' } }),
      gaugePressure('wet', 'compression with a spoon of oil', { within: { from: '0 kPa' } }),
      best,
    ],
    formula: 'gain = (wet − dry)/(best − dry)\nthe oil seals it from 70 % on, and does not help below 25 %',
    where: [['gain', 'share of what is missing that the oil brings back', '%']],
    range: 'a dry figure below 75 % of best',
    errors: patternErrors,
    source: 'common practice',
    says: wetSayings,
    example: { expression: 'wet_pattern(95 psi, 160 psi, 175 psi)', result: 'oil seals it' },
    ...numbersInWords('wet_pattern', wetPattern),
  },
  {
    name: 'leakage_pattern',
    family: 'mechanical',
    summary: 'What leaks, by where the air of a leak-down test comes out, in words.',
    parameters: [
      quantity('leakdown', '%', 'leakage of the tester', { within: { from: '0 %', to: '100 %' } }),
      text(
        'place',
        'where the air comes out: "tailpipe", "throttle", "oil filler", "radiator", "neighbour", or a reading of `leakdown_from`',
      ),
    ],
    formula:
      'up to 20 % past rings or valves is within the usual; above it, and in the coolant or a neighbour always, the place decides',
    range: 'piston at top dead centre of compression; the figure depends on the tester',
    errors: [
      'The leakage is outside 0 .. 100 %.',
      'The place is none that is known.',
      'A reading is too close to a limit for its uncertainty.',
    ],
    source: 'common practice',
    says: leakageSayings,
    example: { expression: 'leakage_pattern(42 %, "tailpipe")', result: 'exhaust valve' },
    ...inWords('leakage_pattern', leakageOf),
  },
  {
    name: 'back_pressure_pattern',
    family: 'mechanical',
    summary: 'Whether the exhaust flows freely at a speed without load, in words.',
    parameters: [
      gaugePressure('back_pressure', 'exhaust back pressure', { within: { from: '-1 psi' } }),
      engineSpeed,
    ],
    formula:
      'limit: 1.5 psi up to 1000 rpm, 3 psi from 2500 rpm on, straight between\nblocked: from twice the limit on',
    range: 'warm engine, no load',
    errors: [
      'The engine stands still.',
      'The pressure is far below 0.',
      'A reading is too close to a limit for its uncertainty.',
    ],
    source: 'common practice',
    says: backPressureSayings,
    example: { expression: 'back_pressure_pattern(8.5 psi, 2500 rpm)', result: 'blocked' },
    ...numbersInWords('back_pressure_pattern', backPressurePattern),
  },
];

function leakageOf([leakage, place]: readonly Plain[]): Wording {
  if (typeof place !== 'string') return noAnswer('The place must be a text, such as "tailpipe".');
  return typeof leakage === 'number'
    ? leakagePattern(leakage, place)
    : noAnswer('One of the values is no number.');
}

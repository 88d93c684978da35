import type { FunctionRow } from '../../expression/functionRow.ts';
import { ofNumbers, ofNumbersAndFuel } from '../answer.ts';
import { numbersInWords } from '../inWords.ts';
import {
  absolutePressure,
  caseBarometer,
  cylinders,
  engineSpeed,
  fuelName,
  quantity,
} from '../parameters.ts';
import { gasolineDensity } from './ethanolBlend.ts';
import { fuelCut, fuelCutSayings } from './fuelCut.ts';
import { airForFuel, injectedFuel, injectorPressure, pressureTrim } from './injectedFuel.ts';
import { injectorDuty, injectorFlow } from './injector.ts';

const standstill = 'The engine stands still (0 rpm).';

export const injectionRows: readonly FunctionRow[] = [
  {
    form: 'scalar',
    name: 'injector_duty',
    family: 'fuel',
    fourStroke: true,
    summary: 'The share of the time that an injector is energised, one injection in two turns.',
    parameters: [
      quantity('pulse_width', 'ms', 'injector pulse width', { within: { from: '0 ms' } }),
      engineSpeed,
    ],
    result: { kind: 'fixed', unit: '%' },
    formula: 'duty = pulse_width · cycles\ncycles = rpm/120',
    where: [
      ['duty', 'share of the time that the injector is energised', '%'],
      ['cycles', 'engine cycles in a second', '1/s'],
    ],
    answers: {
      to: '100 %',
      caution:
        'The injector would have to stay open all the time: it no longer follows the command, or the pulse width is that of several pulses.',
    },
    range: 'sequential injection; twice this where an injector fires every turn',
    errors: [standstill, 'The pulse width is negative.'],
    source: 'arithmetic of the four-stroke cycle',
    example: { expression: 'injector_duty(15 ms, 3000 rpm)', result: '37.5 %' },
    compute: ofNumbers(injectorDuty),
  },
  {
    form: 'scalar',
    name: 'injector_flow',
    family: 'fuel',
    summary: 'An injector’s flow at another pressure than it was rated at.',
    parameters: [
      { name: 'flow', takes: { what: 'any' }, meaning: 'rated flow, by mass or volume' },
      quantity('rated', 'kPa', 'pressure across the injector when it was rated', {
        within: { above: '0 kPa' },
        kind: 'difference',
      }),
      quantity('actual', 'kPa', 'pressure across it now: rail minus manifold', {
        within: { from: '0 kPa' },
        kind: 'difference',
      }),
    ],
    result: { kind: 'like', parameter: 'flow' },
    formula: 'q = flow · √(actual/rated)',
    where: [['q', 'flow at the actual pressure', 'as flow']],
    range: 'liquid fuel, injector fully open',
    errors: ['The rated pressure is not above 0.', 'The actual pressure or the flow is negative.'],
    source: 'Bernoulli’s law; common practice',
    example: { expression: 'injector_flow(24 lb/h, 43.5 psi, 58 psi)', result: '27.713 lb/h' },
    compute: ofNumbers(injectorFlow),
  },
  {
    form: 'scalar',
    name: 'injector_pressure',
    family: 'fuel',
    summary: 'The pressure across an injector: what really drives its flow.',
    parameters: [
      quantity('fuel_pressure', 'kPa', 'rail pressure on the gauge', { kind: 'gauge' }),
      absolutePressure('map', 'manifold pressure', { within: { above: '0 kPa' } }),
      caseBarometer('baro', 'the barometer at the site'),
    ],
    result: { kind: 'like', parameter: 'fuel_pressure', quantityKind: 'difference' },
    formula: 'Δp = fuel_pressure + baro − map',
    where: [['Δp', 'pressure across the injector', 'kPa']],
    answers: { from: '0 kPa' },
    range: 'port injection; an injector in the cylinder works against the cylinder',
    errors: ['An absolute pressure is not above 0.', 'The manifold’s pressure is above the rail’s.'],
    source: 'definition of gauge pressure, ISO 80000-4:2019',
    example: { expression: 'injector_pressure(300 kPa, 35 kPa, 101.3 kPa)', result: '366.3 kPa' },
    compute: ofNumbers(injectorPressure),
  },
  {
    form: 'scalar',
    name: 'pressure_trim',
    family: 'fuel',
    summary: 'The trim that makes up for another pressure across the injectors at the same pulse width.',
    parameters: [
      quantity('rated', 'kPa', 'pressure across the injector as it should be', {
        within: { above: '0 kPa' },
        kind: 'difference',
      }),
      quantity('actual', 'kPa', 'pressure across it now', { within: { above: '0 kPa' }, kind: 'difference' }),
    ],
    result: { kind: 'fixed', unit: '%' },
    formula: 'trim = √(rated/actual) − 1',
    where: [['trim', 'trim that makes up for it', '%']],
    range: 'long pulses; at short ones the dead time changes too',
    errors: ['A pressure is not above 0.'],
    source: 'Bernoulli’s law; common practice',
    example: { expression: 'pressure_trim(300 kPa, 200 kPa)', result: '22.474 %' },
    compute: ofNumbers(pressureTrim),
  },
  {
    form: 'scalar',
    name: 'injected_fuel',
    family: 'fuel',
    fourStroke: true,
    summary: 'The fuel that all injectors deliver, from pulse width and speed (four-stroke).',
    parameters: [
      quantity('pulse_width', 'ms', 'injector pulse width', { within: { from: '0 ms' } }),
      engineSpeed,
      quantity('dead_time', 'ms', 'time the injector needs to open', {
        within: { from: '0 ms' },
        otherwise: '0.8 ms',
      }),
      quantity('flow', 'cc/min', 'an injector’s flow at the pressure across it', {
        within: { from: '0 cc/min' },
        header: 'engine.injector_flow',
      }),
      { ...cylinders, name: 'injectors', meaning: 'number of injectors' },
      quantity('density', 'kg/L', 'the fuel’s density', {
        within: { above: '0 kg/L' },
        otherwise: `${gasolineDensity} kg/L`,
      }),
    ],
    result: { kind: 'fixed', unit: 'g/s' },
    formula: 'fuel = cycles · injectors · flow · density · (pulse_width − dead_time)\ncycles = rpm/120',
    where: [
      ['fuel', 'fuel that all injectors deliver', 'g/s'],
      ['cycles', 'engine cycles in a second', '1/s'],
    ],
    range: 'one injection in two turns; a pulse within the dead time delivers nothing',
    errors: [
      standstill,
      'The pulse width or dead time is negative.',
      'The flow or density is not above 0.',
      'The number of injectors is no whole number.',
    ],
    source: 'arithmetic of the four-stroke cycle; dead time and density are common practice and from memory',
    example: {
      expression: 'injected_fuel(2.5 ms, 750 rpm, 0.8 ms, 240 cc/min, 4, 0.745 kg/L)',
      result: '0.12665 g/s',
    },
    compute: ofNumbers(injectedFuel),
  },
  {
    form: 'scalar',
    name: 'air_for_fuel',
    family: 'fuel',
    summary: 'The air that burns this much fuel at this lambda: what a meter should show for a pulse width.',
    parameters: [
      quantity('fuel_flow', 'g/s', 'fuel mass flow', { within: { from: '0 g/s' } }),
      quantity('lambda', '1', 'lambda', { within: { above: '0' }, otherwise: '1' }),
      fuelName,
    ],
    result: { kind: 'fixed', unit: 'g/s' },
    formula: 'air = fuel_flow · λ · stoichiometric_ratio(fuel)',
    where: [
      ['air', 'air mass flow', 'g/s'],
      ['λ', 'lambda'],
    ],
    range: '',
    errors: ['The fuel flow is negative.', 'Lambda is not above 0.', 'The fuel’s name is not known.'],
    source:
      'definition; stoichiometric ratio after Heywood, Internal Combustion Engine Fundamentals, chapter 3',
    example: { expression: 'air_for_fuel(0.12665 g/s, 1, "E0")', result: '1.849 g/s' },
    compute: ofNumbersAndFuel(([flow = Number.NaN, lambda = Number.NaN], fuel) =>
      airForFuel(flow, lambda, fuel),
    ),
  },
  {
    name: 'fuel_cut',
    family: 'fuel',
    summary: 'Whether a moment of a coast-down shows the fuel cut off, in words.',
    parameters: [
      engineSpeed,
      quantity('pulse_width', 'ms', 'injector pulse width', { within: { from: '0 ms' } }),
      quantity('throttle', '%', 'throttle position now'),
      quantity('closed', '%', 'throttle position with the foot off'),
      quantity('longest', 'ms', 'the longest pulse that counts as cut', { otherwise: '1.2 ms' }),
      quantity('front_sensor', 'V', 'voltage of the switching sensor before the catalyst', {
        optional: true,
      }),
    ],
    formula:
      'fuel cut: throttle ≤ closed + 1.5 %, rpm ≥ 1200 rpm, pulse_width ≤ longest\nproved by front_sensor ≤ 0.45 V',
    range: 'one set of readings, warm engine',
    errors: [
      standstill,
      'The pulse width is negative.',
      'A reading is too close to a limit for its uncertainty.',
    ],
    source: 'common practice',
    says: fuelCutSayings,
    example: { expression: 'fuel_cut(2200 rpm, 0.9 ms, 14.5 %, 14.1 %)', result: 'fuel cut' },
    ...numbersInWords('fuel_cut', fuelCut),
  },
];

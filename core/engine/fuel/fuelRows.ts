import type { FunctionRow } from '../../expression/functionRow.ts';
import { ofNumbers, ofNumbersAndFuel } from '../answer.ts';
import { engineSpeed, fuelName, quantity } from '../parameters.ts';
import { injectorDuty, injectorFlow } from './injector.ts';
import { lambdaFromGas } from './lambdaFromGas.ts';
import { lambdaOf, stoichiometricRatio } from './stoichiometry.ts';
import { fuelCorrection, totalTrim } from './trim.ts';

const trims = [
  quantity('stft', '%', 'short-term fuel trim'),
  quantity('ltft', '%', 'long-term fuel trim of the same bank and moment'),
];
const noTrim = 'A trim is below -100 %.';
const noFuel = 'The fuel’s name is not known.';

export const fuelRows: readonly FunctionRow[] = [
  {
    form: 'scalar',
    name: 'total_trim',
    family: 'fuel',
    summary: 'Short and long fuel trim together, as the trade adds them.',
    parameters: trims,
    result: { kind: 'fixed', unit: '%' },
    formula: 'total = stft + ltft',
    range: 'generic data carry -100 .. 99.2 % each; closed loop only',
    errors: [noTrim],
    source: 'common practice',
    example: { expression: 'total_trim(8 %, 17 %)', result: '25 %' },
    compute: ofNumbers(totalTrim),
  },
  {
    form: 'scalar',
    name: 'fuel_correction',
    family: 'fuel',
    summary: 'What both trims do to the fuel, as a change in percent: one multiplies the other.',
    parameters: trims,
    result: { kind: 'fixed', unit: '%' },
    formula: 'correction = (1 + stft)·(1 + ltft) − 1',
    range: 'generic data carry -100 .. 99.2 % each; closed loop only',
    errors: [noTrim],
    source: 'arithmetic of two multiplying corrections; common practice that both multiply',
    example: { expression: 'fuel_correction(8 %, 17 %)', result: '26.36 %' },
    compute: ofNumbers(fuelCorrection),
  },
  {
    form: 'scalar',
    name: 'injector_duty',
    family: 'fuel',
    summary: 'The share of the time that an injector is energised, one injection in two turns.',
    parameters: [quantity('pulse_width', 'ms', 'injector pulse width'), engineSpeed],
    result: { kind: 'fixed', unit: '%' },
    formula: 'duty = pulse_width · rpm/60/2',
    range: 'sequential injection; twice this where an injector fires every turn. Above 100 % it never closes',
    errors: ['The engine stands still (0 rpm).', 'The pulse width is negative.'],
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
      quantity('rated', 'kPa', 'pressure across the injector when it was rated', { kind: 'difference' }),
      quantity('actual', 'kPa', 'pressure across it now: rail minus manifold', { kind: 'difference' }),
    ],
    result: { kind: 'like', parameter: 'flow' },
    formula: 'q = flow · √(actual/rated)',
    range: 'liquid fuel, injector fully open',
    errors: ['The rated pressure is not above 0.', 'The actual pressure or the flow is negative.'],
    source: 'Bernoulli’s law; common practice',
    example: { expression: 'injector_flow(24 lb/h, 43.5 psi, 58 psi)', result: '27.713 lb/h' },
    compute: ofNumbers(injectorFlow),
  },
  {
    form: 'scalar',
    name: 'stoichiometric_ratio',
    family: 'fuel',
    summary: 'The mass of air that burns one mass of the fuel completely.',
    parameters: [fuelName],
    result: { kind: 'fixed', unit: '1' },
    formula: 'A/F = 34.56·(4c + h − 2o)/(12.011·c + 1.008·h + 15.999·o), c, h, o the fuel’s atoms',
    range: 'E0 to E100, ethanol, methanol, isooctane, propane, LPG, methane, diesel, hydrogen',
    errors: [noFuel],
    source: 'Heywood, Internal Combustion Engine Fundamentals, chapter 3; air as O2 + 3.773 N2',
    example: { expression: 'stoichiometric_ratio("methane")', result: '17.234' },
    compute: ofNumbersAndFuel((_, fuel) => stoichiometricRatio(fuel)),
  },
  {
    form: 'scalar',
    name: 'lambda_of',
    family: 'fuel',
    summary: 'Lambda from an air-fuel ratio by mass. Above 1 is lean.',
    parameters: [quantity('ratio', '1', 'air-fuel ratio by mass'), fuelName],
    result: { kind: 'fixed', unit: '1' },
    formula: 'λ = ratio / stoichiometric_ratio(fuel)',
    range:
      'a gauge that shows a ratio multiplies lambda by its own figure, often 14.7: divide by that figure instead',
    errors: ['The ratio is not above 0.', noFuel],
    source:
      'definition; stoichiometric ratio after Heywood, Internal Combustion Engine Fundamentals, chapter 3',
    example: { expression: 'lambda_of(8.1, "ethanol")', result: '0.8998' },
    compute: ofNumbersAndFuel(([ratio = Number.NaN], fuel) => lambdaOf(ratio, fuel)),
  },
  {
    form: 'scalar',
    name: 'lambda_from_gas',
    family: 'fuel',
    summary: 'Lambda from a five-gas analysis of the exhaust. Air leaking into the pipe makes it too lean.',
    parameters: [
      quantity('co2', '%', 'carbon dioxide, dry'),
      quantity('co', '%', 'carbon monoxide, dry'),
      quantity('o2', '%', 'oxygen, dry'),
      quantity('hc', 'ppm', 'hydrocarbons as hexane'),
      quantity('nox', 'ppm', 'nitrogen oxides as NO', { otherwise: '0 ppm' }),
      fuelName,
    ],
    result: { kind: 'fixed', unit: '1' },
    formula:
      'λ = (CO2 + CO/2 + O2 + NO/2 + (h/4·3.5/(3.5 + CO/CO2) − o/2)·(CO2 + CO)) / ((1 + h/4 − o/2)·(CO2 + CO + 6·HC)), h and o the fuel’s atoms per carbon atom',
    range: 'about 0.75 .. 1.5',
    errors: [
      'CO2 is 0.',
      'A gas is negative, or all together are more than 100 %.',
      'The fuel’s name is not known, or it has no carbon.',
    ],
    source:
      'J. Brettschneider, Bosch Technische Berichte 6 (1979) no. 4, 177–186; UN Regulation No. 83; OIML R 99 (values from memory)',
    example: { expression: 'lambda_from_gas(14 %, 2 %, 0.5 %, 100 ppm, fuel = "E0")', result: '0.9625' },
    compute: ofNumbersAndFuel(
      ([co2 = Number.NaN, co = Number.NaN, o2 = Number.NaN, hc = Number.NaN, nox = Number.NaN], fuel) =>
        lambdaFromGas({ co2, co, o2, hc, nox }, fuel),
    ),
  },
];

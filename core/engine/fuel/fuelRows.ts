import type { FunctionRow } from '../../expression/functionRow.ts';
import { ofNumbers, ofNumbersAndFuel } from '../answer.ts';
import { fuelName, quantity } from '../parameters.ts';
import { blendRatio } from './blendRatio.ts';
import { ethanolDensity, gasolineDensity } from './ethanolBlend.ts';
import { gasRows } from './gasRows.ts';
import { injectionRows } from './injectionRows.ts';
import {
  equivalenceOf,
  lambdaOf,
  ratioOf,
  ratioOfComposition,
  stoichiometricRatio,
} from './stoichiometry.ts';

const noFuel = 'The fuel’s name is not known.';

export const fuelRows: readonly FunctionRow[] = [
  ...injectionRows,
  {
    form: 'scalar',
    name: 'stoichiometric_ratio',
    family: 'fuel',
    summary: 'The mass of air that burns one mass of the fuel completely.',
    parameters: [fuelName],
    result: { kind: 'fixed', unit: '1' },
    formula: 'A/F = 34.56·(4c + h − 2o)/(12.011·c + 1.008·h + 15.999·o)',
    where: [
      ['A/F', 'air to fuel by mass', ''],
      ['c', 'carbon atoms of the fuel', ''],
      ['h', 'its hydrogen atoms', ''],
      ['o', 'its oxygen atoms', ''],
    ],
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
    parameters: [quantity('ratio', '1', 'air-fuel ratio by mass', { within: { above: '0' } }), fuelName],
    result: { kind: 'fixed', unit: '1' },
    formula: 'λ = ratio/stoichiometric_ratio(fuel)',
    where: [['λ', 'lambda', '']],
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
    name: 'ratio_of',
    family: 'fuel',
    summary: 'The air-fuel ratio by mass at this lambda.',
    parameters: [quantity('lambda', '1', 'lambda', { within: { above: '0' } }), fuelName],
    result: { kind: 'fixed', unit: '1' },
    formula: 'ratio = λ · stoichiometric_ratio(fuel)',
    where: [
      ['ratio', 'air to fuel by mass', ''],
      ['λ', 'lambda'],
    ],
    range: '',
    errors: ['Lambda is not above 0.', noFuel],
    source:
      'definition; stoichiometric ratio after Heywood, Internal Combustion Engine Fundamentals, chapter 3',
    example: { expression: 'ratio_of(0.85, "E0")', result: '12.409' },
    compute: ofNumbersAndFuel(([lambda = Number.NaN], fuel) => ratioOf(lambda, fuel)),
  },
  {
    form: 'scalar',
    name: 'equivalence_of',
    family: 'fuel',
    summary: 'The equivalence ratio φ from lambda, and lambda from φ. φ above 1 is rich.',
    parameters: [quantity('lambda', '1', 'lambda, or φ', { within: { above: '0' } })],
    result: { kind: 'fixed', unit: '1' },
    formula: 'φ = 1/λ',
    where: [
      ['φ', 'equivalence ratio', ''],
      ['λ', 'lambda'],
    ],
    range: '',
    errors: ['Lambda is not above 0.'],
    source: 'definition; Heywood, Internal Combustion Engine Fundamentals, chapter 3',
    example: { expression: 'equivalence_of(0.85)', result: '1.17647' },
    compute: ofNumbers(equivalenceOf),
  },
  {
    form: 'scalar',
    name: 'ratio_of_composition',
    family: 'fuel',
    summary: 'The stoichiometric ratio of a fuel by its hydrogen and oxygen atoms for each carbon atom.',
    parameters: [
      quantity('hydrogen', '1', 'hydrogen atoms for each carbon atom', { within: { from: '0' } }),
      quantity('oxygen', '1', 'oxygen atoms for each carbon atom', { within: { from: '0' }, otherwise: '0' }),
    ],
    result: { kind: 'fixed', unit: '1' },
    formula: 'A/F = 34.56·(4 + h − 2o)/(12.011 + 1.008·h + 15.999·o)',
    where: [
      ['A/F', 'air to fuel by mass', ''],
      ['h', 'hydrogen'],
      ['o', 'oxygen'],
    ],
    range: 'fuels with carbon',
    errors: ['The atoms are negative, or the composition is burnt already.'],
    source: 'Heywood, Internal Combustion Engine Fundamentals, chapter 3; air as O2 + 3.773 N2',
    example: { expression: 'ratio_of_composition(1.93, 0.033)', result: '13.992' },
    compute: ofNumbers(ratioOfComposition),
  },
  {
    form: 'scalar',
    name: 'blend_ratio',
    family: 'fuel',
    summary: 'The stoichiometric ratio of two fuels mixed by volume; left out, ethanol in gasoline.',
    parameters: [
      quantity('share', '%', 'the added fuel’s share by volume', { within: { from: '0 %', to: '100 %' } }),
      quantity('base', '1', 'stoichiometric ratio of the base fuel', {
        within: { above: '0' },
        otherwise: '14.6',
      }),
      quantity('added', '1', 'stoichiometric ratio of the added fuel', {
        within: { above: '0' },
        otherwise: '9.0',
      }),
      quantity('base_density', 'kg/L', 'density of the base fuel', {
        within: { above: '0 kg/L' },
        otherwise: `${gasolineDensity} kg/L`,
      }),
      quantity('added_density', 'kg/L', 'density of the added fuel', {
        within: { above: '0 kg/L' },
        otherwise: `${ethanolDensity} kg/L`,
      }),
    ],
    result: { kind: 'fixed', unit: '1' },
    formula: 'A/F = (1 − w)·base + w·added\nw = v·ρ₂/(v·ρ₂ + (1 − v)·ρ₁)',
    where: [
      ['A/F', 'air to fuel by mass', ''],
      ['w', 'the added fuel’s share by mass', '%'],
      ['v', 'share'],
      ['ρ₂', 'added_density'],
      ['ρ₁', 'base_density'],
    ],
    range: '',
    errors: ['The share is outside 0 .. 100 %.', 'A ratio or a density is not above 0.'],
    source: 'mass balance; densities from memory',
    example: { expression: 'blend_ratio(85 %, 14.7)', result: '9.814' },
    compute: ofNumbers(blendRatio),
  },
  ...gasRows,
];

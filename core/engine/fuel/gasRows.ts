import type { FunctionRow, Plain } from '../../expression/functionRow.ts';
import { noAnswer, ofNumbers, ofNumbersAndFuel } from '../answer.ts';
import { inWords, type Wording } from '../inWords.ts';
import { fuelName, quantity } from '../parameters.ts';
import { exhaustAir, unburntFuel } from './exhaustAir.ts';
import { gasPattern, gasSayings } from './gasPattern.ts';
import { lambdaFromComposition, lambdaFromGas } from './lambdaFromGas.ts';

const dioxide = quantity('co2', '%', 'carbon dioxide, dry', { within: { above: '0 %' } });
const monoxide = quantity('co', '%', 'carbon monoxide, dry', { within: { from: '0 %' } });
const hydrocarbons = quantity('hc', 'ppm', 'hydrocarbons as hexane', { within: { from: '0 ppm' } });
const gases = [
  dioxide,
  monoxide,
  quantity('o2', '%', 'oxygen, dry', { within: { from: '0 %' } }),
  hydrocarbons,
];
const nitrogenOxides = quantity('nox', 'ppm', 'nitrogen oxides as NO', {
  otherwise: '0 ppm',
  within: { from: '0 ppm' },
});
const noGas = ['CO2 is 0.', 'A gas is negative, or all together are more than 100 %.'];
const noFuel = 'The fuel’s name is not known, or it has no carbon.';
const brettschneiderSource = 'J. Brettschneider (1979); UN Regulation No. 83; OIML R 99 (values from memory)';

/** Functions of an exhaust-gas analysis, all of dry gas. */
export const gasRows: readonly FunctionRow[] = [
  {
    form: 'scalar',
    name: 'lambda_from_gas',
    family: 'fuel',
    summary: 'Lambda from a five-gas analysis of the exhaust. Air leaking into the pipe makes it too lean.',
    parameters: [...gases, nitrogenOxides, fuelName],
    result: { kind: 'fixed', unit: '1' },
    formula:
      'λ = (CO₂ + CO/2 + O₂ + NO/2 + (k·h/4 − o/2)·(CO₂ + CO)) / ((1 + h/4 − o/2)·(CO₂ + CO + 6·HC))\nk = 3.5/(3.5 + CO/CO₂)',
    where: [
      ['λ', 'lambda', ''],
      ['CO₂', 'co2'],
      ['CO', 'co'],
      ['O₂', 'o2'],
      ['NO', 'nox'],
      ['HC', 'hc'],
      ['k', 'share of the hydrogen that burns to water (water-gas balance)', ''],
      ['h', 'the fuel’s hydrogen atoms for each carbon atom', ''],
      ['o', 'its oxygen atoms for each carbon atom', ''],
    ],
    answers: {
      from: '0.75',
      to: '1.5',
      caution:
        'Misfire, air in the pipe and gas that did not burn make such figures: take it as a direction, not as a number.',
    },
    range: '',
    errors: [...noGas, noFuel],
    source: brettschneiderSource,
    example: { expression: 'lambda_from_gas(14 %, 2 %, 0.5 %, 100 ppm, fuel = "E0")', result: '0.9625' },
    compute: ofNumbersAndFuel(
      ([co2 = Number.NaN, co = Number.NaN, o2 = Number.NaN, hc = Number.NaN, nox = Number.NaN], fuel) =>
        lambdaFromGas({ co2, co, o2, hc, nox }, fuel),
    ),
  },
  {
    form: 'scalar',
    name: 'lambda_from_composition',
    family: 'fuel',
    summary: 'Lambda from a four- or five-gas analysis for a fuel given by its atoms; left out, NOx is 0.',
    parameters: [
      ...gases,
      quantity('hydrogen', '1', 'the fuel’s hydrogen atoms for each carbon atom', {
        within: { from: '0' },
        otherwise: '1.7261',
      }),
      quantity('oxygen', '1', 'the fuel’s oxygen atoms for each carbon atom', {
        within: { from: '0' },
        otherwise: '0.0176',
      }),
      nitrogenOxides,
    ],
    result: { kind: 'fixed', unit: '1' },
    formula:
      'λ = (CO₂ + CO/2 + O₂ + NO/2 + (k·h/4 − o/2)·(CO₂ + CO)) / ((1 + h/4 − o/2)·(CO₂ + CO + 6·HC))\nk = 3.5/(3.5 + CO/CO₂)',
    where: [
      ['λ', 'lambda', ''],
      ['CO₂', 'co2'],
      ['CO', 'co'],
      ['O₂', 'o2'],
      ['NO', 'nox'],
      ['HC', 'hc'],
      ['k', 'share of the hydrogen that burns to water (water-gas balance)', ''],
      ['h', 'hydrogen'],
      ['o', 'oxygen'],
    ],
    answers: {
      from: '0.75',
      to: '1.5',
      caution:
        'Misfire, air in the pipe and gas that did not burn make such figures: take it as a direction, not as a number.',
    },
    range: '',
    errors: [...noGas, 'The composition is none that burns.'],
    source: brettschneiderSource,
    example: {
      expression: 'lambda_from_composition(12.801 %, 3.724 %, 0 %, 0 ppm, 1.87, 0)',
      result: '0.8988',
    },
    compute: ofNumbers((co2, co, o2, hc, hydrogen, oxygen, nox) =>
      lambdaFromComposition(
        {
          co2: co2 ?? Number.NaN,
          co: co ?? Number.NaN,
          o2: o2 ?? Number.NaN,
          hc: hc ?? Number.NaN,
          nox: nox ?? Number.NaN,
        },
        hydrogen ?? Number.NaN,
        oxygen ?? Number.NaN,
      ),
    ),
  },
  {
    form: 'scalar',
    name: 'exhaust_air',
    family: 'fuel',
    summary: 'The share of a gas sample that is outside air, when the lambda before the leak is known.',
    parameters: [
      ...gases,
      quantity('lambda', '1', 'lambda upstream of the leak, from a sensor', { within: { above: '0' } }),
      nitrogenOxides,
      fuelName,
    ],
    result: { kind: 'fixed', unit: '%' },
    formula: 'air = (λ − lambda) · (1 + h/4 − o/2)·(CO₂ + CO + 6·HC)/0.2095\nλ = lambda_from_gas(…)',
    where: [
      ['air', 'share of the sample that is air', '%'],
      ['λ', 'lambda of the gas as it was sampled', ''],
      ['CO₂', 'co2'],
      ['CO', 'co'],
      ['HC', 'hc'],
      ['h', 'the fuel’s hydrogen atoms for each carbon atom', ''],
      ['o', 'its oxygen atoms for each carbon atom', ''],
    ],
    answers: { from: '-5 %', below: '100 %' },
    range: 'air that joins after burning; a little below 0 is the instruments’ error',
    errors: [
      ...noGas,
      noFuel,
      'The lambda given is not above 0, or so lean that no air could explain the gas.',
    ],
    source: `rearranged from ${brettschneiderSource}; oxygen in dry air 20.95 %, U.S. Standard Atmosphere 1976`,
    example: {
      expression: 'exhaust_air(12.30 %, 0.40 %, 4.05 %, 80 ppm, 1.00, fuel = "E0")',
      result: '17.8 %',
    },
    compute: ofNumbersAndFuel(
      (
        [
          co2 = Number.NaN,
          co = Number.NaN,
          o2 = Number.NaN,
          hc = Number.NaN,
          lambda = Number.NaN,
          nox = Number.NaN,
        ],
        fuel,
      ) => exhaustAir({ co2, co, o2, hc, nox }, lambda, fuel),
    ),
  },
  {
    form: 'scalar',
    name: 'unburnt_fuel',
    family: 'fuel',
    summary: 'The share of the fuel that left as hydrocarbons. One dead cylinder of four makes about 25 %.',
    parameters: [dioxide, monoxide, hydrocarbons],
    result: { kind: 'fixed', unit: '%' },
    formula: 'share = 6·HC/(CO₂ + CO + 6·HC)',
    where: [
      ['share', 'share of the fuel that left as hydrocarbons', '%'],
      ['HC', 'hc'],
      ['CO₂', 'co2'],
      ['CO', 'co'],
    ],
    range: 'before the catalyst; analysers count only part of raw fuel, so the true share is higher',
    errors: noGas,
    source: 'carbon balance',
    example: { expression: 'unburnt_fuel(11.2 %, 0.4 %, 4200 ppm)', result: '17.8 %' },
    compute: ofNumbers(unburntFuel),
  },
  {
    name: 'gas_pattern',
    family: 'fuel',
    summary: 'What CO2, CO, O2 and HC together usually mean, in words.',
    parameters: [...gases, fuelName],
    formula: 'CO above 1 %, O₂ above 1.5 % (2 % beside CO), HC above 300 ppm, lambda_from_gas above 1.05',
    where: [
      ['CO', 'co'],
      ['O₂', 'o2'],
      ['HC', 'hc'],
    ],
    range: 'warm engine, gas from before the catalyst or with it cold',
    errors: [...noGas, noFuel, 'A reading is too close to a limit for its uncertainty.'],
    source: 'common practice; lambda after Brettschneider',
    says: gasSayings,
    example: {
      expression: 'gas_pattern(12.3 %, 0.4 %, 4.05 %, 80 ppm, "E10")',
      result: 'lean, or air in the exhaust',
    },
    ...inWords('gas_pattern', gasPatternOf),
  },
];

function gasPatternOf([co2, co, o2, hc, fuel]: readonly Plain[]): Wording {
  if (typeof fuel !== 'string') return noAnswer('The fuel must be named, for instance "E10".');
  if (typeof co2 !== 'number' || typeof co !== 'number' || typeof o2 !== 'number' || typeof hc !== 'number')
    return noAnswer('One of the values is no number.');
  return gasPattern({ co2, co, o2, hc, nox: 0 }, fuel);
}

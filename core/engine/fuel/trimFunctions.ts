import type { FunctionRow } from '../../expression/functionRow.ts';
import { ofNumbers } from '../answer.ts';
import { quantity } from '../parameters.ts';
import { fuelCorrection, totalTrim } from './trim.ts';

/** The functions of fuel trims: the ones that cases ask for most. */
export function trimFunctions(): readonly FunctionRow[] {
  return trimRows;
}

const trims = [
  quantity('stft', '%', 'short-term fuel trim', { within: { from: '-100 %' } }),
  quantity('ltft', '%', 'long-term fuel trim of the same bank and moment', { within: { from: '-100 %' } }),
];
const noTrim = 'A trim is below -100 %.';

const trimRows: readonly FunctionRow[] = [
  {
    form: 'scalar',
    name: 'total_trim',
    family: 'fuel',
    summary: 'Short and long fuel trim together, as the trade adds them.',
    parameters: trims,
    result: { kind: 'fixed', unit: '%' },
    formula: 'total = stft + ltft',
    where: [['total', 'both trims together', '%']],
    range: 'generic data carry up to 99.2 % each; closed loop only',
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
    formula: 'c = (1 + stft)·(1 + ltft) − 1',
    where: [['c', 'change of the fuel', '%']],
    range: 'generic data carry up to 99.2 % each; closed loop only',
    errors: [noTrim],
    source: 'arithmetic of two multiplying corrections; common practice that both multiply',
    example: { expression: 'fuel_correction(8 %, 17 %)', result: '26.36 %' },
    compute: ofNumbers(fuelCorrection),
  },
];

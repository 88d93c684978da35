import type { FunctionRow, ResultField } from '../../expression/functionRow.ts';
import type { Absent } from '../../expression/value.ts';
import { volts } from '../arguments.ts';
import { isRecorded } from '../recorded.ts';
import { type Given, isAbsent, type Readings, recordIn, severalOf } from '../several.ts';
import { rippleOf } from './ripple.ts';

const fields: readonly ResultField[] = [
  { name: 'mean', meaning: 'mean voltage', unit: 'V', like: 'x' },
  { name: 'ripple', meaning: 'bottom to top of the strongest rhythm', unit: 'V', like: 'x' },
  { name: 'frequency', meaning: 'of that rhythm', unit: 'Hz' },
];

/** What an alternator's ripple can be, Hz: from a slow idle with one phase left to a fast engine with six poles' pairs. */
const lowest = 20;
const highest = 20_000;

export const chargingRippleRow: FunctionRow = {
  form: 'whole',
  name: 'charging_ripple',
  family: 'electrical',
  summary: 'Reads the ripple on the charging voltage: how high, and how fast.',
  parameters: [volts('x', 'voltage at the battery or the alternator while it charges')],
  result: { kind: 'fields', fields },
  formula: 'strongest line of the spectrum from 20 Hz to 20 kHz; height of its humps laid over each other',
  range:
    'four samples a hump or more, eight humps or more. Six humps an electrical turn when every diode works; `ripple_frequency` says how many that is a second',
  errors: ['There are no samples, or a gap in them.', 'The samples are too sparse, or no rhythm stands out.'],
  source: 'six-pulse rectifier; discrete Fourier transform',
  example: { expression: 'charging_ripple(charge.volts).frequency', result: '1800 Hz' },
  evaluate: severalOf(fields, read),
};

function read([x]: readonly Given[]): Readings | Absent {
  const record = recordIn(x);
  if (!isRecorded(record)) return record;
  const found = rippleOf(record, lowest, highest);
  if (isAbsent(found)) return found;
  return { mean: found.mean, ripple: found.height, frequency: found.frequency };
}

import type { FunctionRow, ResultField } from '../../expression/functionRow.ts';
import type { Absent } from '../../expression/value.ts';
import { isRecorded } from '../recorded.ts';
import { type Given, isAbsent, numberOr, type Readings, recordIn, severalOf } from '../several.ts';
import { pumpCurrent } from './pumpCurrent.ts';

const fields: readonly ResultField[] = [
  { name: 'mean', meaning: 'mean current', unit: 'A', like: 'x' },
  { name: 'ripple', meaning: 'bottom to top of a usual hump', unit: 'A', like: 'x' },
  { name: 'frequency', meaning: 'humps per second', unit: 'Hz' },
  { name: 'speed', meaning: 'speed of the pump', unit: 'rpm' },
  { name: 'weakest_bar', meaning: 'the lowest hump of a turn against the mean of all', unit: '%' },
];

export const pumpCurrentRow: FunctionRow = {
  form: 'whole',
  name: 'pump_current',
  family: 'electrical',
  summary: 'Reads the current of a brushed fuel pump: the commutator’s ripple, and the pump’s speed from it.',
  parameters: [
    { name: 'x', takes: { what: 'series', unit: 'A' }, meaning: 'current of the pump while it runs' },
    {
      name: 'bars',
      takes: { what: 'quantity', unit: '1' },
      meaning: 'bars of its commutator',
      otherwise: '8',
      within: { from: '3', to: '40' },
    },
  ],
  result: { kind: 'fields', fields },
  formula: 'speed = frequency/humps a turn\nas many humps as bars, with an odd number of bars twice as many',
  where: [
    ['speed', 'turns of the pump', 'rpm'],
    ['frequency', 'humps in a second', 'Hz'],
  ],
  range:
    'pumps of 1000 to 12,000 rpm with two brushes; ten thousand samples a second or more; humps by the strongest line of the spectrum',
  errors: [
    'There are no samples, or a gap in them.',
    'The samples are too sparse, or no rhythm stands out.',
    'The number of bars is not whole, or not from 3 to 40.',
  ],
  source:
    'humps a turn = bars · poles / gcd(bars, poles), here with two poles (value from memory); eight bars: common practice',
  example: { expression: 'pump_current(pump.amps, bars = 8).speed', result: '5400 rpm' },
  evaluate: severalOf(fields, read),
};

function read([x, bars]: readonly Given[]): Readings | Absent {
  const record = recordIn(x);
  if (!isRecorded(record)) return record;
  const found = pumpCurrent(record, numberOr(bars, Number.NaN));
  if (isAbsent(found)) return found;
  const { mean, ripple, frequency, speed, weakest } = found;
  return { mean, ripple, frequency, speed, weakest_bar: weakest };
}

import type { FunctionRow, ResultField, Saying } from '../../expression/functionRow.ts';
import type { Absent } from '../../expression/value.ts';
import { isRecorded } from '../recorded.ts';
import { type Given, isAbsent, numberOr, type Readings, recordIn, severalOf } from '../several.ts';
import { lambdaSensor } from './lambdaSensor.ts';

const fields: readonly ResultField[] = [
  { name: 'verdict', meaning: 'on target, lean, rich or stuck', unit: 'text' },
  { name: 'mean', meaning: 'mean lambda', unit: '1' },
  { name: 'deviation', meaning: 'mean minus what is asked for: above 0 is lean', unit: '1' },
  { name: 'time_rich', meaning: 'share of the time below the lambda asked for', unit: '%' },
  { name: 'rate', meaning: 'times a second that it passes the lambda asked for', unit: 'Hz' },
  { name: 'minimum', meaning: 'least lambda', unit: '1' },
  { name: 'maximum', meaning: 'greatest lambda', unit: '1' },
];

const says: readonly Saying[] = [
  { words: 'on target', meaning: 'the control holds what it asks for' },
  { words: 'lean', meaning: 'the mean lies above what is asked for' },
  { words: 'rich', meaning: 'the mean lies below what is asked for' },
  { words: 'stuck', meaning: 'it does not move as a live sensor in closed loop does' },
];

export const lambdaSensorRow: FunctionRow = {
  form: 'whole',
  name: 'lambda_sensor',
  family: 'oxygen',
  summary: 'Reads a wide-range sensor as lambda: where it holds the mixture, and how it moves about it.',
  parameters: [
    { name: 'x', takes: { what: 'series', unit: '1' }, meaning: 'lambda' },
    {
      name: 'desired',
      takes: { what: 'quantity', unit: '1' },
      meaning: 'lambda that is asked for',
      otherwise: '1',
      within: { above: '0' },
    },
    {
      name: 'most',
      takes: { what: 'quantity', unit: '1' },
      meaning: 'deviation that is still on target',
      otherwise: '0.03',
    },
  ],
  result: { kind: 'fields', fields },
  formula:
    'deviation = mean − desired\na pass counts once a sample lies beyond desired ± a twentieth of the swing',
  where: [
    ['deviation', 'how far the mean lies off', ''],
    ['mean', 'mean of x', ''],
  ],
  range: 'lambda itself: the sensor’s current or volts need the maker’s curve first',
  errors: ['There are no samples.', 'The lambda asked for is not above 0.'],
  source: 'definition; the limit of 0.03 is common practice',
  example: { expression: 'lambda_sensor(wide.lambda).deviation', result: '0.02' },
  says,
  evaluate: severalOf(fields, read),
};

function read([x, desired, most]: readonly Given[]): Readings | Absent {
  const record = recordIn(x);
  if (!isRecorded(record)) return record;
  const found = lambdaSensor(record, numberOr(desired, 1), numberOr(most, Number.NaN));
  if (isAbsent(found)) return found;
  return {
    verdict: found.word,
    mean: found.mean,
    deviation: found.deviation,
    time_rich: found.timeRich,
    rate: found.rate,
    minimum: found.minimum,
    maximum: found.maximum,
  };
}

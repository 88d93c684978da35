import type { FunctionRow, ResultField } from '../../expression/functionRow.ts';
import type { Absent } from '../../expression/value.ts';
import { volts } from '../arguments.ts';
import { isRecorded } from '../recorded.ts';
import { type Given, isAbsent, type Readings, recordIn, severalOf } from '../several.ts';
import { crankingVoltage } from './crankingVoltage.ts';

const fields: readonly ResultField[] = [
  { name: 'rest', meaning: 'before the starter engages', unit: 'V', like: 'x' },
  { name: 'dip', meaning: 'the lowest of all, when it engages', unit: 'V', like: 'x' },
  { name: 'minimum', meaning: 'the lowest while it turns', unit: 'V', like: 'x' },
  { name: 'mean', meaning: 'the mean while it turns', unit: 'V', like: 'x' },
  { name: 'time', meaning: 'how long it turns', unit: 's' },
  { name: 'after', meaning: 'after the start', unit: 'V', like: 'x' },
];

export const startVoltageRow: FunctionRow = {
  form: 'whole',
  name: 'start_voltage',
  family: 'electrical',
  summary: 'Reads a start off the battery’s voltage: at rest, the first dip, while the starter turns, after.',
  parameters: [volts('x', 'voltage across the battery’s posts, from before the start on')],
  result: { kind: 'fields', fields },
  formula:
    'turning: from 0.2 s after the voltage falls by a quarter of its dip until it is back above that for 0.25 s',
  range: 'one start in the record, which begins at rest; a hundred samples a second or more',
  errors: [
    'There are no samples.',
    'The voltage does not fall by half a volt.',
    'The starter turned for less than 0.3 s.',
  ],
  source: 'common practice',
  example: { expression: 'start_voltage(start.volts).rest', result: '12.6 V' },
  evaluate: severalOf(fields, read),
};

function read([x]: readonly Given[]): Readings | Absent {
  const record = recordIn(x);
  if (!isRecorded(record)) return record;
  const found = crankingVoltage(record);
  if (isAbsent(found)) return found;
  return { ...found };
}

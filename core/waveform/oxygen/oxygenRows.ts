import type { FunctionRow } from '../../expression/functionRow.ts';
import { readingOf, voltage, volts } from '../arguments.ts';
import { shareAbove } from '../cycles.ts';
import { catalystRow } from './catalystRow.ts';
import { lambdaSensorRow } from './lambdaSensorRow.ts';
import { oxygenSensorRow } from './oxygenSensorRow.ts';
import { rearToFrontRow } from './rearToFrontRow.ts';

const timeRichRow: FunctionRow = {
  form: 'whole',
  name: 'time_rich',
  family: 'oxygen',
  summary: 'The share of the time that an oxygen sensor is above its switching level.',
  parameters: [volts('x', 'voltage of the sensor'), voltage('level', 'switching level', '0.45 V')],
  result: { kind: 'fixed', unit: '%' },
  formula: 'time above the level / recorded time, crossings interpolated',
  range: 'zirconia; a titania sensor may be the other way round: `oxygen_sensor` takes its polarity',
  errors: ['The series has no samples at two moments.'],
  source: 'common practice; 0.45 V as in the oxygen sensor tests of SAE J1979 (value from memory)',
  example: { expression: 'time_rich(o2.front)', result: '50 %' },
  evaluate: readingOf('%', (record, level = 0) => shareAbove(record, level)),
};

/** What oxygen sensors say over time. */
export const oxygenRows: readonly FunctionRow[] = [
  timeRichRow,
  rearToFrontRow,
  oxygenSensorRow,
  catalystRow,
  lambdaSensorRow,
];

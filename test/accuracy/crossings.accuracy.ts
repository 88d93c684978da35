import type { Absent } from '../../core/expression/value.ts';
import { periodOf } from '../../core/waveform/cycles.ts';
import { riseTime } from '../../core/waveform/edges.ts';
import { isRecorded, type Recorded, recorded } from '../../core/waveform/recorded.ts';
import { disturbed, sampled } from '../support/signal/signal.ts';
import type { AccuracySection, AccuracyTable } from './table.ts';

const frequencies = [0.5, 1, 2, 4];
const noises = [0, 0.005, 0.01, 0.02];

/** A front oxygen sensor, v = 0.45 + 0.35·sin(2πft), 10 s at 200 samples a second, in steps of 5 mV. */
const sensor = (frequency: number) =>
  sampled(10, 200, (t) => 0.45 + 0.35 * Math.sin(2 * Math.PI * frequency * t));

function table(
  of: string,
  unit: string,
  read: (record: Recorded) => number | Absent,
  truth: (frequency: number) => number,
): AccuracyTable {
  return {
    of,
    about: [
      'A sensor that swings as 0.45 + 0.35·sin(2πft) V for 10 s, 200 samples a second in steps of 5 mV.',
    ],
    unit,
    rowsAre: 'swings per second',
    rows: frequencies.map(String),
    columnsAre: 'noise (standard deviation)',
    columns: noises.map((each) => `${each} V`),
    error: (row, column, seed) => {
      const frequency = frequencies[row] ?? 1;
      const record = recorded(
        disturbed(sensor(frequency), { noise: noises[column] ?? 0, step: 0.005 }, seed),
      );
      const got = isRecorded(record) ? read(record) : record;
      return typeof got === 'number' ? 1000 * (got - truth(frequency)) : undefined;
    },
  };
}

const section: AccuracySection = {
  page: 'core/waveform/ACCURACY.md',
  title: 'Crossings, periods and edges',
  tables: [
    table('period(x)', 'ms', periodOf, (frequency) => 1 / frequency),
    table(
      'rise_time(x)',
      'ms',
      (record) => riseTime(record, 0.3, 0.6),
      (frequency) => (2 * Math.asin(0.15 / 0.35)) / (2 * Math.PI * frequency),
    ),
  ],
};

export default section;

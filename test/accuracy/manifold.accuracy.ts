import { intakeBalance } from '../../core/engine/mechanical/intakeBalance.ts';
import type { Series } from '../../core/expression/value.ts';
import { typeIn } from '../../core/waveform/arguments.ts';
import { manifold } from '../support/signal/manifold.ts';
import { disturbed, type Signal } from '../support/signal/signal.ts';
import type { AccuracySection, AccuracyTable } from './table.ts';

const engines: readonly (readonly [order: readonly number[], weak: number])[] = [
  [[1, 2, 3], 2],
  [[1, 3, 4, 2], 3],
  [[1, 5, 3, 6, 2, 4], 3],
  [[1, 8, 4, 3, 6, 5, 7, 2], 4],
];
const draws = [0.9, 0.7, 0.4];
const noises = [0, 0.05, 0.2];

const series = ({ time, samples }: Signal, unit: string): Series => ({
  kind: 'series',
  type: typeIn(unit),
  capture: 'idle',
  time,
  samples,
  spread: [],
});

function table([order, weak]: (typeof engines)[number]): AccuracyTable {
  return {
    of: `intake_balance(manifold, sync) of the weak one of ${order.length} cylinders`,
    about: [
      'A manifold that a throttle at the speed of sound fills and each piston’s intake stroke empties; 780 rpm, 36 kPa, 3 s at 2000 samples a second in steps of 0.02 kPa.',
      'The function takes the intake stroke for a half sine and does not know the manifold’s volume.',
    ],
    unit: '% of the mean',
    rowsAre: 'draws of what it should',
    rows: draws.map((each) => `${100 * each} %`),
    columnsAre: 'noise (standard deviation)',
    columns: noises.map((each) => `${each} kPa`),
    error: (row, column, seed) => {
      const own = draws[row] ?? 1;
      const made = manifold({
        order,
        draws: { [weak]: own },
        rpm: 780,
        mean: 36,
        seconds: 3,
        perSecond: 2000,
      });
      const noisy = disturbed(made.pressure, { noise: noises[column] ?? 0, step: 0.02 }, seed);
      const value = intakeBalance([
        series(noisy, 'kPa'),
        series(made.sync, 'V'),
        { kind: 'words', text: order.join('-') },
      ]);
      const found = value.kind === 'members' ? value.members.get(String(weak)) : undefined;
      if (found === undefined || !('si' in found)) return undefined;
      return 100 * (found.si - own / ((order.length - 1 + own) / order.length));
    },
  };
}

const section: AccuracySection = {
  page: 'core/waveform/ACCURACY.md',
  title: 'Manifold pressure',
  tables: engines.map(table),
};

export default section;

import { crankingSpeed, humpBalance, relativeCompression } from '../../core/engine/mechanical/cranked.ts';
import type { Series, Value } from '../../core/expression/value.ts';
import { exact } from '../../core/quantity/amount.ts';
import { unitOf } from '../../core/quantity/unit.ts';
import { typeIn } from '../../core/waveform/arguments.ts';
import { type Cranked, type Cranking, cranking } from '../support/signal/cranking.ts';
import { type Disturbance, disturbed, type Signal } from '../support/signal/signal.ts';
import type { AccuracySection, AccuracyTable } from './table.ts';

const about = [
  'A starter with a permanent field turns an engine that does not fire: J·dω/dt and L·di/dt against the polytropic compression of every cylinder (slider-crank).',
  'The generator’s compression ratio, exponent, valve timing and losses are not those that the function assumes.',
  '5 s at 1000 samples a second, in steps of 1 A; friction that comes and goes by a tenth; the spark of cylinder 1 as sync.',
];

const engines: readonly (readonly [order: readonly number[], weak: number])[] = [
  [[1, 2, 3], 2],
  [[1, 3, 4, 2], 3],
  [[1, 5, 3, 6, 2, 4], 3],
  [[1, 8, 4, 3, 6, 5, 7, 2], 7],
];
const disturbances: readonly (readonly [string, Disturbance])[] = [
  ['clean', { step: 1 }],
  ['noise 3 A', { step: 1, noise: 3 }],
  ['noise 10 A', { step: 1, noise: 10 }],
  ['noise 3 A, 5 % lost, clock ± 0.2 ms', { step: 1, noise: 3, dropouts: 0.05, jitter: 2e-4 }],
];
const columns = disturbances.map(([name]) => name);

const made = new Map<string, Cranked>();

function crankedOf(of: Cranking): Cranked {
  const key = JSON.stringify(of);
  const known = made.get(key) ?? cranking(of);
  made.set(key, known);
  return known;
}

function series({ time, samples }: Signal, unit: 'A' | 'V'): Series {
  return { kind: 'series', type: typeIn(unit), capture: 'cranked', time, samples, spread: [] };
}

const words = (order: readonly number[]): Value => ({ kind: 'words', text: order.join('-') });

const of = (order: readonly number[], weak: number, keeps: number): Cranked =>
  crankedOf({ order, keeps: { [weak]: keeps }, seconds: 5, perSecond: 1000, unsteady: 0.1 });

function shareOf(value: Value, cylinder: number): number | undefined {
  const found = value.kind === 'members' ? value.members.get(String(cylinder)) : undefined;
  return found !== undefined && 'si' in found ? 100 * found.si : undefined;
}

const keepings = [1, 0.9, 0.75, 0.6, 0.3, 0];

function weakCylinder([order, weak]: (typeof engines)[number]): AccuracyTable {
  return {
    of: `relative_compression(current, sync) of the weak one of ${order.length} cylinders`,
    about,
    unit: '% of the highest',
    rowsAre: 'keeps of its compression',
    rows: keepings.map((each) => `${100 * each} %`),
    columnsAre: 'what disturbs the current',
    columns,
    error: (row, column, seed) => {
      const { current, sync } = of(order, weak, keepings[row] ?? 1);
      const x = series(disturbed(current, disturbances[column]?.[1] ?? {}, seed), 'A');
      const found = shareOf(relativeCompression([x, series(sync, 'V'), words(order)]), weak);
      return found === undefined ? undefined : found - 100 * (keepings[row] ?? 1);
    },
  };
}

const fourCylinders = engines[1] ?? [[1, 3, 4, 2], 3];

const battery: AccuracyTable = {
  of: 'relative_compression(battery, sync) of the weak one of 4 cylinders',
  about: [...about.slice(0, 2), 'The battery’s voltage instead, in steps of 10 mV.'],
  unit: '% of the highest',
  rowsAre: 'keeps of its compression',
  rows: keepings.map((each) => `${100 * each} %`),
  columnsAre: 'noise (standard deviation)',
  columns: ['none', '0.02 V', '0.05 V'],
  error: (row, column, seed) => {
    const [order, weak] = fourCylinders;
    const cranked = of(order, weak, keepings[row] ?? 1);
    const noise = [0, 0.02, 0.05][column] ?? 0;
    const x = series(disturbed(cranked.battery, { noise, step: 0.01 }, seed), 'V');
    const found = shareOf(relativeCompression([x, series(cranked.sync, 'V'), words(order)]), weak);
    return found === undefined ? undefined : found - 100 * (keepings[row] ?? 1);
  },
};

const humps: AccuracyTable = {
  of: 'hump_balance(current, sync) of the weak one of 4 cylinders',
  about: [
    ...about.slice(0, 1),
    'The plain humps against their mean, beside what the compressions are against theirs: the difference is no fault of the reading but what inertia and expansion do to the humps.',
  ],
  unit: '% of the mean',
  rowsAre: 'keeps of its compression',
  rows: keepings.map((each) => `${100 * each} %`),
  columnsAre: 'what disturbs the current',
  columns,
  error: (row, column, seed) => {
    const [order, weak] = fourCylinders;
    const keeps = keepings[row] ?? 1;
    const { current, sync } = of(order, weak, keeps);
    const x = series(disturbed(current, disturbances[column]?.[1] ?? {}, seed), 'A');
    const found = shareOf(humpBalance([x, series(sync, 'V'), words(order)]), weak);
    return found === undefined ? undefined : found - (100 * keeps) / ((3 + keeps) / 4);
  },
};

const speed: AccuracyTable = {
  of: 'cranking_speed(current)',
  about: about.slice(0, 1),
  unit: 'rpm',
  rowsAre: 'cylinders, one without compression',
  rows: engines.map(([order]) => String(order.length)),
  columnsAre: 'what disturbs the current',
  columns,
  error: (row, column, seed) => {
    const [order, weak] = engines[row] ?? fourCylinders;
    const { current, rpm } = of(order, weak, 0);
    const x = series(disturbed(current, disturbances[column]?.[1] ?? {}, seed), 'A');
    const found = crankingSpeed([x, { kind: 'one', type: typeIn('1'), amount: exact(order.length) }]);
    const perMinute = unitOf('rpm')?.factor ?? Number.NaN;
    return found.kind === 'one' ? found.amount.si / perMinute - rpm : undefined;
  },
};

const section: AccuracySection = {
  page: 'core/waveform/ACCURACY.md',
  title: 'Cranking: starter current and battery voltage',
  tables: [...engines.map(weakCylinder), battery, humps, speed],
};

export default section;

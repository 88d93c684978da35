import type { Absent } from '../../core/expression/value.ts';
import { catalystReading } from '../../core/waveform/oxygen/catalyst.ts';
import { oxygenSensor, type SensorReading } from '../../core/waveform/oxygen/oxygenSensor.ts';
import { zirconia } from '../../core/waveform/oxygen/sensorBuild.ts';
import { isRecorded, recorded } from '../../core/waveform/recorded.ts';
import { rearSensor, type SensorCycle, switchingSensor, truthOf } from '../support/signal/oxygenSignals.ts';
import { disturbed, type Signal, sampled } from '../support/signal/signal.ts';
import type { AccuracySection, AccuracyTable } from './table.ts';

const noises = [0, 0.005, 0.01, 0.02];
const columns = noises.map((each) => `${each} V`);
const columnsAre = 'noise (standard deviation)';
/** What a recorder adds beside noise. */
const recorder = { step: 0.005, dropouts: 0.005, jitter: 2e-4, drift: 2e-4 };

const cycle = (lag: number): SensorCycle => ({ period: 1.2, rich: 0.5, toRich: lag, toLean: 1.4 * lag });
const lags = [0.02, 0.05, 0.1, 0.2];

function sensorTable(
  of: string,
  unit: string,
  scale: number,
  read: (found: SensorReading) => number | Absent,
  truth: (cycle: SensorCycle) => number,
): AccuracyTable {
  return {
    of,
    about: [
      'A zirconia sensor at 900 K (Nernst) behind exhaust that turns rich and lean every 0.6 s, with a first-order lag towards rich and 1.4 times that towards lean.',
      '20 s at 200 samples a second in steps of 5 mV, half a per cent of them lost, 0.2 ms of jitter, 0.2 mV/s of drift.',
    ],
    unit,
    rowsAre: 'lag towards rich',
    rows: lags.map((each) => `${1000 * each} ms`),
    columnsAre,
    columns,
    error: (row, column, seed) => {
      const of = cycle(lags[row] ?? 0);
      const by = { ...recorder, noise: noises[column] ?? 0 };
      const record = recorded(disturbed(switchingSensor(of, 20, 200), by, seed));
      if (!isRecorded(record)) return undefined;
      const limits = { leastRate: 0.8, mostTime: 0.1, mostBias: 0.15 };
      const found = oxygenSensor(record, zirconia, limits);
      const got = 'kind' in found ? found : read(found);
      return typeof got === 'number' ? scale * (got - truth(of)) : undefined;
    },
  };
}

const shares = [0.1, 0.3, 0.6, 0.9];
/** A front that switches unevenly, so that no shift fits by chance. */
const uneven = (t: number): number =>
  0.45 + 0.38 * Math.tanh(3 * (Math.sin(2 * Math.PI * 0.9 * t) + 0.5 * Math.sin(2 * Math.PI * 0.37 * t)));

function catalystTable(
  of: string,
  unit: string,
  read: (front: Signal, rear: Signal) => number | Absent | undefined,
  truth: (share: number) => number,
  scale: number,
): AccuracyTable {
  return {
    of,
    about: [
      'A front sensor that swings unevenly between 0.07 and 0.83 V, and a rear with a share of that swing, 0.15 s later about 0.65 V.',
      '30 s at 100 samples a second in steps of 5 mV; turns below 0.02 V, or below six times the noise that the samples show, are no way.',
    ],
    unit,
    rowsAre: 'share of the swing that comes through',
    rows: shares.map(String),
    columnsAre,
    columns,
    error: (row, column, seed) => {
      const by = { noise: noises[column] ?? 0, step: 0.005 };
      const share = shares[row] ?? 0;
      const front = disturbed(sampled(30, 100, uneven), by, seed);
      const rear = disturbed(rearSensor(uneven, { share, delay: 0.15 }, 30, 100), by, seed + 100);
      const got = read(front, rear);
      return typeof got === 'number' ? scale * (got - truth(share)) : undefined;
    },
  };
}

function catalystOf(front: Signal, rear: Signal) {
  const [before, behind] = [recorded(front), recorded(rear)];
  if (!isRecorded(before) || !isRecorded(behind)) return undefined;
  return catalystReading(before, behind, {
    level: 0.45,
    noise: 0.02,
    mirrorRatio: 0.7,
    mirrorCorrelation: 0.7,
  });
}

const section: AccuracySection = {
  page: 'core/waveform/ACCURACY.md',
  title: 'Oxygen sensors and catalyst',
  tables: [
    sensorTable(
      'oxygen_sensor(x).lean_to_rich',
      'ms',
      1000,
      (found) => found.leanToRich,
      (of) => truthOf(of).leanToRich,
    ),
    sensorTable(
      'oxygen_sensor(x).rich_to_lean',
      'ms',
      1000,
      (found) => found.richToLean,
      (of) => truthOf(of).richToLean,
    ),
    sensorTable(
      'oxygen_sensor(x).rate',
      'switches per second',
      1,
      (found) => found.rate,
      (of) => truthOf(of).rate,
    ),
    sensorTable(
      'oxygen_sensor(x).time_rich',
      '%',
      100,
      (found) => found.timeRich,
      (of) => truthOf(of).timeRich,
    ),
    sensorTable(
      'oxygen_sensor(x).bias',
      'mV',
      1000,
      (found) => found.bias,
      (of) => truthOf(of).bias,
    ),
    catalystTable(
      'catalyst(front, rear).ratio',
      'plain numbers',
      (a, b) => catalystOf(a, b)?.ratio,
      (share) => share,
      1,
    ),
    catalystTable(
      'catalyst(front, rear).arc_ratio',
      'plain numbers',
      (a, b) => catalystOf(a, b)?.arcRatio,
      (share) => share,
      1,
    ),
    catalystTable(
      'catalyst(front, rear).lag',
      'ms',
      (a, b) => catalystOf(a, b)?.lag,
      () => 0.15,
      1000,
    ),
  ],
};

export default section;

import { crankAngle, valveEvents } from '../../core/engine/mechanical/inCylinder.ts';
import type { Series } from '../../core/expression/value.ts';
import { typeIn } from '../../core/waveform/arguments.ts';
import { baseline } from '../../core/waveform/baseline.ts';
import { steadyCranking } from '../../core/waveform/cylinder/cranking.ts';
import { humpsOf } from '../../core/waveform/cylinder/humps.ts';
import { crankingPace } from '../../core/waveform/cylinder/rhythm.ts';
import { isRecorded, recorded } from '../../core/waveform/recorded.ts';
import { smooth } from '../../core/waveform/smooth.ts';
import { cranking } from '../support/signal/cranking.ts';
import { breathing } from '../support/signal/cylinderPressure.ts';
import { disturbed, type Signal } from '../support/signal/signal.ts';
import { contest } from './harness.ts';

/**
 * Captures of a million samples (synthetic), against passes that only copy them: what is read off one goes over it a
 * fixed number of times, however many cycles it holds.
 */
const count = 1_000_000;
const pressure = disturbed(
  breathing({ rpm: 810, ripple: 0.01, intake: -62, exhaust: 2, seconds: 20, perSecond: count / 20 }).pressure,
  { noise: 0.5 },
  1,
);
const amps = disturbed(
  cranking({ order: [1, 3, 4, 2], keeps: { 3: 0.7 }, seconds: 10, perSecond: 1000 }).current,
  { noise: 3 },
  2,
);
/** The same cranking as a fast recorder would hold it. */
const current: Signal = {
  time: Float64Array.from({ length: count }, (_, i) => (i * 10) / count),
  samples: Float64Array.from(
    { length: count },
    (_, i) => amps.samples[Math.floor((i * 10_000) / count)] ?? 0,
  ),
};

const series = ({ time, samples }: Signal): Series => ({
  kind: 'series',
  type: typeIn('kPa'),
  capture: 'snap',
  time,
  samples: samples.map((each) => 1000 * each),
  spread: [],
});
const snap = series(pressure);

function copied({ time, samples }: Signal): number {
  const out = new Float64Array(samples.length);
  for (let i = 0; i < out.length; i++) out[i] = (samples[i] ?? 0) - (time[i] ?? 0);
  return out[count >> 1] ?? 0;
}

function humps(): unknown {
  const record = recorded(current);
  if (!isRecorded(record)) return record;
  const load = steadyCranking(record, 1);
  return 'kind' in load ? load : humpsOf(load, 4, crankingPace);
}

const floor = 'one copy of the samples';

contest({
  title: 'A million samples smoothed, and the level that they stand on',
  operations: 1,
  sides: [
    { name: 'smooth', run: () => smooth(pressure.time, pressure.samples, 0.01) },
    { name: 'baseline', run: () => baseline(pressure.time, pressure.samples, 0.5, 0.5) },
    { name: floor, run: () => copied(pressure) },
  ],
  bounds: [{ to: floor, atMost: 20 }],
});

contest({
  title: 'Valve events and crank angle of a million samples',
  operations: 1,
  sides: [
    { name: 'valve events', run: () => valveEvents([snap, undefined, undefined]) },
    { name: 'crank angle', run: () => crankAngle([snap]) },
    { name: floor, run: () => copied(pressure) },
  ],
  bounds: [{ to: floor, atMost: 100 }],
});

contest({
  title: 'Humps of a million samples of starter current',
  operations: 1,
  sides: [
    { name: 'humps', run: humps },
    { name: floor, run: () => copied(current) },
  ],
  bounds: [{ to: floor, atMost: 100 }],
});

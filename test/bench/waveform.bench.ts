import FFT from 'fft.js';
import { switchRate } from '../../core/waveform/cycles.ts';
import { decimate } from '../../core/waveform/decimate.ts';
import { transform } from '../../core/waveform/fourier.ts';
import { lagOf } from '../../core/waveform/likeness.ts';
import { oxygenSensor } from '../../core/waveform/oxygen/oxygenSensor.ts';
import { zirconia } from '../../core/waveform/oxygen/sensorBuild.ts';
import { peaksOf } from '../../core/waveform/peaks.ts';
import { isRecorded, recorded } from '../../core/waveform/recorded.ts';
import { contest } from './harness.ts';

/** Reading a million samples of a switching sensor (synthetic), against one plain pass for the least and the greatest. */
const count = 1_000_000;
const time = Float64Array.from({ length: count }, (_, i) => i / 10_000);
const sensor = (t: number): number =>
  0.45 + 0.35 * Math.sin(2 * Math.PI * 1.3 * t) + 0.01 * Math.sin(t * 7919);
const front = time.map(sensor);
const later = time.map((t) => sensor(t - 0.05));

function plainPass(samples: Float64Array): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < samples.length; i++) {
    const sample = samples[i] ?? 0;
    if (sample < low) low = sample;
    if (sample > high) high = sample;
  }
  return high - low;
}

function rateOf(samples: Float64Array): unknown {
  const record = recorded({ time, samples });
  return isRecorded(record) ? switchRate(record, 0.45, 0.3) : record;
}

const floor = 'plain pass for least and greatest';

contest({
  title: 'Switching rate of a million samples',
  operations: 1,
  sides: [
    { name: 'casebook', run: () => rateOf(front) },
    { name: floor, run: () => plainPass(front) },
  ],
  bounds: [{ to: floor, atMost: 3 }],
});

function sensorOf(samples: Float64Array): unknown {
  const record = recorded({ time, samples });
  const limits = { leastRate: 0.8, mostTime: 0.1, mostBias: 0.15 };
  return isRecorded(record) ? oxygenSensor(record, zirconia, limits) : record;
}

contest({
  title: 'An oxygen sensor of a million samples: rate, share, times, ends, verdict',
  operations: 1,
  sides: [
    { name: 'casebook', run: () => sensorOf(front) },
    { name: floor, run: () => plainPass(front) },
  ],
  bounds: [{ to: floor, atMost: 3 }],
});

contest({
  title: 'Peaks of a million samples',
  operations: 1,
  sides: [
    { name: 'casebook', run: () => peaksOf(front).length },
    { name: floor, run: () => plainPass(front) },
  ],
  bounds: [{ to: floor, atMost: 3 }],
});

contest({
  title: 'A million samples drawn in 2,000 columns',
  operations: 1,
  sides: [
    { name: 'casebook', run: () => decimate(time, front, 2000).samples.length },
    { name: floor, run: () => plainPass(front) },
  ],
  bounds: [{ to: floor, atMost: 3 }],
});

/** 131,072 samples: large enough to leave the caches, small enough for many rounds. */
const short = 2 ** 17;
const [x, y] = [front.subarray(0, short), later.subarray(0, short)];
const transforms = 'three transforms of that size';
const peer = 'three of that size by fft.js';

/** Its transform of complex numbers, its tables and arrays made beforehand. */
const byPeer = new FFT(2 * short);
const complexIn = byPeer.createComplexArray();
const complexOut = byPeer.createComplexArray();
for (let i = 0; i < short; i++) complexIn[2 * i] = x[i] ?? 0;

contest({
  title: 'Lag between two channels',
  operations: 1,
  sides: [
    { name: 'casebook', run: () => lagOf(x, y) },
    { name: transforms, run: threeTransforms },
    { name: peer, run: threeByPeer },
  ],
  bounds: [
    { to: transforms, atMost: 2 },
    { to: peer, atMost: 2 },
  ],
});

/** Of the size that the correlation needs: the record and half of it again, to a power of two. */
function threeTransforms(): number {
  let sum = 0;
  for (let k = 0; k < 3; k++) {
    const re = new Float64Array(2 * short);
    const im = new Float64Array(2 * short);
    re.set(x);
    transform(re, im);
    sum += re[k] ?? 0;
  }
  return sum;
}

function threeByPeer(): number {
  let sum = 0;
  for (let k = 0; k < 3; k++) {
    byPeer.transform(complexOut, complexIn);
    sum += complexOut[k] ?? 0;
  }
  return sum;
}

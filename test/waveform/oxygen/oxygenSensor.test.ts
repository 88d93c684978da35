import { describe, expect, it } from 'vitest';
import { nernstVolts } from '../../../core/engine/sensors/nernstVolts.ts';
import { oxygenSensor, type SensorReading } from '../../../core/waveform/oxygen/oxygenSensor.ts';
import { titania, zirconia } from '../../../core/waveform/oxygen/sensorBuild.ts';
import { isRecorded, type Recorded, recorded } from '../../../core/waveform/recorded.ts';
import {
  leanVolts,
  nernst,
  richVolts,
  switchingSensor,
  truthOf,
} from '../../support/signal/oxygenSignals.ts';
import { disturbed, type Signal } from '../../support/signal/signal.ts';
import { number, switching } from '../signals.ts';

const limits = { leastRate: 0.8, mostTime: 0.1, mostBias: 0.15 };

function recordOf(signal: Signal): Recorded {
  const of = recorded(signal);
  if (!isRecorded(of)) expect.fail(of.why);
  return of;
}

function read(signal: Signal, build = zirconia): SensorReading {
  const found = oxygenSensor(recordOf(signal), build, limits);
  if ('kind' in found) expect.fail(found.why);
  return found;
}

function wordOf({ verdict }: SensorReading): string {
  return 'kind' in verdict ? verdict.why : verdict.word;
}

const cycle = { period: 0.8, rich: 0.5, toRich: 0.03, toLean: 0.05 };

describe('the generated sensor', () => {
  // Check values O1 to O4: E at 900 K of 1e-2, 1e-10 and 1e-20, at 1000 K of 0.0209 (calculated from the equation).
  it.each([
    [900, 1e-2, 0.058938],
    [900, 1e-10, 0.416096],
    [900, 1e-20, 0.862544],
    [1000, 0.0209, 0.049605],
  ])('is built on Nernst: %f K, %f gives %f V', (kelvin, oxygen, volts) => {
    expect(nernst(kelvin, oxygen)).toBeCloseTo(volts, 5);
    expect(nernstVolts(kelvin, oxygen)).toBeCloseTo(volts, 4);
  });

  it('swings as a warm zirconia sensor does', () => {
    expect(leanVolts).toBeGreaterThan(0.05);
    expect(leanVolts).toBeLessThan(0.15);
    expect(richVolts).toBeGreaterThan(0.8);
    expect(richVolts).toBeLessThan(0.9);
  });
});

describe('what is read off a switching sensor', () => {
  // Analytic: v = 0.45 + 0.35·sin(2πft): 2·asin(0.15/0.35)/(2πf) between 0.3 and 0.6 V, half the time rich, 0.10 to 0.80 V.
  it.each([1, 2])('a sine of %f Hz', (frequency) => {
    const time = Float64Array.from({ length: 20_001 }, (_, i) => i / 2000);
    const found = read({ time, samples: time.map(switching(frequency)) });
    const seconds = (2 * Math.asin(0.15 / 0.35)) / (2 * Math.PI * frequency);
    expect(number(found.leanToRich)).toBeCloseTo(seconds, 5);
    expect(number(found.richToLean)).toBeCloseTo(seconds, 5);
    expect(number(found.timeRich)).toBeCloseTo(0.5, 6);
    expect(found.minimum).toBeCloseTo(0.1, 6);
    expect(found.maximum).toBeCloseTo(0.8, 6);
    expect(found.bias).toBeCloseTo(0, 6);
    // The first half cycle begins between the levels and ends nothing.
    expect(found.switches).toBe(10 * frequency * 2 - 1);
  });

  const lags = [0.01, 0.03, 0.06, 0.12, 0.2];
  const periods = [0.5, 1, 2];
  const shares = [0.35, 0.5, 0.65];
  const grid = lags.flatMap((lag) =>
    periods.flatMap((period) => shares.map((rich) => ({ lag, period, rich }))),
  );
  it.each(grid.filter(({ lag, period, rich }) => passes({ period, rich, toRich: lag, toLean: 1.5 * lag })))(
    'lags of $lag s, a cycle of $period s, rich for $rich of it',
    ({ lag, period, rich }) => {
      const of = { period, rich, toRich: lag, toLean: 1.5 * lag };
      const truth = truthOf(of);
      const found = read(switchingSensor(of, 20 * period, 2000));
      expect(number(found.leanToRich)).toBeCloseTo(truth.leanToRich, 4);
      expect(number(found.richToLean)).toBeCloseTo(truth.richToLean, 4);
      expect(number(found.timeRich)).toBeCloseTo(truth.timeRich, 2);
      expect(Math.abs(number(found.rate) - truth.rate)).toBeLessThan(truth.rate / 19);
      // Its turns are sharp: a sample may miss them by half a step at the steepest.
      expect(found.minimum).toBeCloseTo(truth.minimum, 1);
      expect(Math.abs(found.minimum - truth.minimum)).toBeLessThan(0.6 / (2000 * lag));
      expect(Math.abs(found.maximum - truth.maximum)).toBeLessThan(0.6 / (2000 * lag));
      expect(Math.abs(found.bias - truth.bias)).toBeLessThan(0.6 / (2000 * lag));
    },
  );

  function passes(of: typeof cycle): boolean {
    const { minimum, maximum } = truthOf(of);
    return minimum < 0.29 && maximum > 0.61;
  }

  it('noise, quantisation, dropouts, jitter and drift move it little', () => {
    const truth = truthOf(cycle);
    for (let seed = 1; seed <= 5; seed++) {
      const found = read(
        disturbed(
          switchingSensor(cycle, 20, 500),
          { noise: 0.01, step: 0.005, dropouts: 0.01, jitter: 2e-4, drift: 5e-4 },
          seed,
        ),
      );
      expect(Math.abs(number(found.leanToRich) - truth.leanToRich)).toBeLessThan(0.002);
      expect(Math.abs(number(found.richToLean) - truth.richToLean)).toBeLessThan(0.003);
      expect(Math.abs(number(found.rate) - truth.rate)).toBeLessThan(0.15);
      expect(Math.abs(number(found.timeRich) - truth.timeRich)).toBeLessThan(0.02);
      expect(Math.abs(found.bias - truth.bias)).toBeLessThan(0.03);
    }
  });

  it('a spike moves the maximum, and neither bias nor verdict', () => {
    const clean = switchingSensor(cycle, 10, 500);
    const spiked = { ...clean, samples: Float64Array.from(clean.samples) };
    spiked.samples[1234] = 3;
    expect(read(spiked).maximum).toBe(3);
    expect(read(spiked).bias).toBeCloseTo(read(clean).bias, 3);
    expect(wordOf(read(spiked))).toBe('switching');
  });
});

describe('the verdict', () => {
  const of = (more: Partial<Parameters<typeof switchingSensor>[0]>) =>
    wordOf(read(switchingSensor({ ...cycle, ...more }, 12, 200)));

  it('of a good sensor', () => {
    expect(of({})).toBe('switching');
  });

  // Time between 0.3 and 0.6 V of a lag τ towards rich: τ·ln((0.85 − 0.3)/(0.85 − 0.6)), about 0.75 τ.
  it.each([0.2, 0.3, 0.4])('of one with a lag of %f s is lazy', (lag) => {
    expect(of({ period: 2.4, toRich: lag, toLean: lag })).toBe('lazy');
  });

  it('of one that is slow in one direction only is lazy, and says in which', () => {
    const { verdict } = read(switchingSensor({ ...cycle, period: 2, toLean: 0.3 }, 12, 200));
    if ('kind' in verdict) expect.fail(verdict.why);
    expect(verdict.word).toBe('lazy');
    expect(verdict.because).toMatch(/from rich to lean/);
    expect(verdict.because).not.toMatch(/from lean to rich/);
  });

  it('of one that switches once in five seconds is lazy by its rate', () => {
    // Four rises and four falls in four cycles that begin at the bottom.
    const { verdict } = read(switchingSensor({ ...cycle, period: 10 }, 40, 200));
    if ('kind' in verdict) expect.fail(verdict.why);
    expect(verdict).toMatchObject({
      word: 'lazy',
      because: 'It switches 8 times in 40 s, fewer than 0.8 a second.',
    });
  });

  // A shift beyond 0.2 V keeps the sensor from ever going below 0.3 V: it switches all the same.
  it.each([
    [0.16, 'biased rich'],
    [0.25, 'biased rich'],
    [0.35, 'biased rich'],
    [-0.2, 'biased lean'],
    [-0.3, 'biased lean'],
  ])('of one that is shifted by %f V', (shift, word) => {
    expect(of({ shift })).toBe(word);
  });

  it.each([
    [0.82, 'stuck rich'],
    [0.08, 'stuck lean'],
    [0.45, 'stuck midway'],
  ])('of one that stays near %f V', (volts, word) => {
    const time = Float64Array.from({ length: 2000 }, (_, i) => i / 100);
    const samples = time.map(() => volts);
    expect(wordOf(read(disturbed({ time, samples }, { noise: 0.01, step: 0.005 }, 3)))).toBe(word);
  });

  it('of one that moves about the level and does not pass both is weak', () => {
    expect(of({ lean: 0.35, richest: 0.58 })).toBe('weak');
  });

  it('of a record that is too short is none', () => {
    const found = read(switchingSensor({ ...cycle, period: 10 }, 2, 200));
    expect(wordOf(found)).toMatch(/too short to judge it: record 5 s or more/);
  });

  it('says nothing about times that were recorded too slowly', () => {
    const { verdict } = read(switchingSensor({ ...cycle, period: 1.7, toRich: 0.02, toLean: 0.02 }, 20, 5));
    if ('kind' in verdict) expect.fail(verdict.why);
    expect(verdict.word).toBe('switching');
    expect(verdict.because).toMatch(/too slowly to time/);
  });
});

describe('titania', () => {
  // The same sensor, as a 5 V circuit with lean at the top shows it.
  const truth = truthOf(cycle);
  const zirconiaLike = switchingSensor(cycle, 16, 1000);
  const circuit: Signal = {
    ...zirconiaLike,
    samples: zirconiaLike.samples.map((v) => 5 - 5 * ((v - 0.05) / 0.85)),
  };

  it('is read by its supply and polarity', () => {
    const found = read(circuit, titania(5, 'low'));
    expect(number(found.rate)).toBeCloseTo(truth.rate, 0);
    expect(found.minimum).toBeCloseTo(5 - 5 * ((truth.maximum - 0.05) / 0.85), 1);
    expect(found.maximum).toBeCloseTo(5 - 5 * ((truth.minimum - 0.05) / 0.85), 1);
    const level = 0.05 + 0.85 / 2;
    expect(number(found.timeRich)).toBeCloseTo(truthOf(cycle, level, 0.3, 0.6).timeRich, 2);
  });

  it('is the same sensor the other way round', () => {
    const low = read(circuit, titania(5, 'low'));
    const high = read({ ...circuit, samples: circuit.samples.map((v) => 5 - v) }, titania(5, 'high'));
    expect(number(high.timeRich)).toBeCloseTo(number(low.timeRich), 9);
    expect(number(high.leanToRich)).toBeCloseTo(number(low.leanToRich), 9);
    expect(high.bias).toBeCloseTo(low.bias, 9);
  });

  it('stuck at its supply is stuck lean', () => {
    const time = Float64Array.from({ length: 2000 }, (_, i) => i / 100);
    expect(wordOf(read({ time, samples: time.map(() => 4.9) }, titania(5, 'low')))).toBe('stuck lean');
    expect(wordOf(read({ time, samples: time.map(() => 4.9) }, titania(5, 'high')))).toBe('stuck rich');
  });
});

describe('bad input', () => {
  it('one sample, all equal, levels out of order', () => {
    const one = oxygenSensor(
      recordOf({ time: Float64Array.of(1), samples: Float64Array.of(0.4) }),
      zirconia,
      limits,
    );
    if ('kind' in one) expect.fail(one.why);
    expect(one.rate).toMatchObject({ kind: 'absent' });
    expect(one.verdict).toMatchObject({ kind: 'absent' });
    const still = switchingSensor({ ...cycle, lean: 0.5, richest: 0.5 }, 10, 100);
    expect(wordOf(read(still))).toBe('stuck midway');
    const wrong = oxygenSensor(recordOf(still), { ...zirconia, low: 0.7 }, limits);
    expect(wrong).toMatchObject({ kind: 'absent', why: expect.stringMatching(/must ascend/) });
  });
});

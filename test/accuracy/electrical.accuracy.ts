import type { Absent } from '../../core/expression/value.ts';
import { warmUp } from '../../core/waveform/cooling/warmUp.ts';
import { crankingVoltage } from '../../core/waveform/electrical/crankingVoltage.ts';
import { currentRamp } from '../../core/waveform/electrical/currentRamp.ts';
import { pumpCurrent } from '../../core/waveform/electrical/pumpCurrent.ts';
import { rippleOf } from '../../core/waveform/electrical/ripple.ts';
import { isRecorded, type Recorded, recorded } from '../../core/waveform/recorded.ts';
import * as signals from '../support/signal/electricalSignals.ts';
import { type Disturbance, disturbed, type Signal } from '../support/signal/signal.ts';
import { held, warmUpCurve } from '../support/signal/warmUpSignal.ts';
import type { AccuracySection, AccuracyTable } from './table.ts';

interface Measured {
  readonly of: string;
  readonly about: readonly string[];
  readonly unit: string;
  readonly rowsAre: string;
  readonly rows: readonly (readonly [name: string, signal: () => Signal, truth: number])[];
  readonly noises: readonly number[];
  readonly noiseUnit: string;
  readonly beside: Disturbance;
  /** In the table's unit. */
  readonly read: (record: Recorded) => number | Absent | undefined;
}

function table({ of, about, unit, rowsAre, rows, noises, noiseUnit, beside, read }: Measured): AccuracyTable {
  return {
    of,
    about,
    unit,
    rowsAre,
    rows: rows.map(([name]) => name),
    columnsAre: 'noise (standard deviation)',
    columns: noises.map((each) => `${each} ${noiseUnit}`),
    error: (row, column, seed) => {
      const [, signal, truth] = rows[row] ?? [];
      if (signal === undefined || truth === undefined) return undefined;
      const record = recorded(disturbed(signal(), { ...beside, noise: noises[column] ?? 0 }, seed));
      const got = isRecorded(record) ? read(record) : undefined;
      return typeof got === 'number' ? got - truth : undefined;
    },
  };
}

/** One value of a reading that may be none. */
function from<T extends object>(
  found: T | Absent,
  pick: (found: T) => number | Absent,
  scale: number,
): number | undefined {
  if ('kind' in found && found.kind === 'absent') return undefined;
  const value = pick(found as T);
  return typeof value === 'number' ? scale * value : undefined;
}

const injector = { volts: 14, resistance: 12, inductance: 0.012, on: 0.004, period: 0.025 };
const coil = { volts: 14, resistance: 0.6, inductance: 0.0035, period: 0.04 };

const section: AccuracySection = {
  page: 'core/waveform/ACCURACY.md',
  title: 'Currents, charging, starts and warm-up',
  tables: [
    table({
      of: 'current_ramp(x).pintle',
      about: [
        'An injector of 12 Ω and 12 mH on 14 V for 4 ms: the flux of a coil whose inductance rises by a quarter while the armature moves, six pulses at 50,000 samples a second in steps of 5 mA.',
      ],
      unit: 'ms',
      rowsAre: 'armature stops after',
      rows: [1.2, 1.5, 1.9].map((ms) => [
        `${ms} ms`,
        () =>
          signals.coilCurrent(
            { ...injector, armature: { from: (0.6 * ms) / 1000, to: ms / 1000, gain: 0.25 } },
            0.15,
            50_000,
          ),
        ms,
      ]),
      noises: [0, 0.005, 0.01, 0.02],
      noiseUnit: 'A',
      beside: { step: 0.005 },
      read: (record) => from(currentRamp(record), (found) => found.pintle, 1000),
    }),
    table({
      of: 'current_ramp(x).time_constant',
      about: [
        'A coil of 0.6 Ω and 3.5 mH on 14 V (5.83 ms), eight pulses at 50,000 samples a second in steps of 20 mA.',
      ],
      unit: 'ms',
      rowsAre: 'dwell',
      rows: [2, 4, 8].map((ms) => [
        `${ms} ms`,
        () => signals.coilCurrent({ ...coil, on: ms / 1000 }, 0.32, 50_000),
        3.5 / 0.6,
      ]),
      noises: [0, 0.02, 0.05, 0.1],
      noiseUnit: 'A',
      beside: { step: 0.02 },
      read: (record) => from(currentRamp(record), (found) => found.constant, 1000),
    }),
    table({
      of: 'current_ramp(x).on_time',
      about: ['The same coil.'],
      unit: 'ms',
      rowsAre: 'dwell',
      rows: [2, 4, 8].map((ms) => [
        `${ms} ms`,
        () => signals.coilCurrent({ ...coil, on: ms / 1000 }, 0.32, 50_000),
        ms,
      ]),
      noises: [0, 0.02, 0.05, 0.1],
      noiseUnit: 'A',
      beside: { step: 0.02 },
      read: (record) => from(currentRamp(record), (found) => found.onTime, 1000),
    }),
    table({
      of: 'pump_current(x, bars = 8).speed',
      about: [
        'A pump of eight bars with humps of 0.6 A on 5 A, half a second at 20,000 samples a second in steps of 10 mA.',
      ],
      unit: 'rpm',
      rowsAre: 'speed',
      rows: [3000, 5000, 7000].map((rpm) => [
        `${rpm} rpm`,
        () => signals.pumpCurrent({ mean: 5, ripple: 0.6, speed: rpm / 60, humps: 8 }, 0.5, 20_000),
        rpm,
      ]),
      noises: [0, 0.05, 0.15, 0.3],
      noiseUnit: 'A',
      beside: { step: 0.01 },
      read: (record) => from(pumpCurrent(record, 8), (found) => found.speed, 60),
    }),
    table({
      of: 'charging_ripple(x).ripple',
      about: [
        'A six-pulse rectifier at 300 electrical turns a second, 0.2 s at 50,000 samples a second in steps of 5 mV.',
      ],
      unit: 'V',
      rowsAre: 'ripple',
      rows: [0.1, 0.3, 0.6].map((ripple) => [
        `${ripple} V`,
        () => signals.rectified({ mean: 14.1, ripple, electrical: 300 }, 0.2, 50_000),
        ripple,
      ]),
      noises: [0, 0.01, 0.03, 0.1],
      noiseUnit: 'V',
      beside: { step: 0.005 },
      read: (record) => from(rippleOf(record, 20, 20_000), (found) => found.height, 1),
    }),
    table({
      of: 'start_voltage(x).minimum',
      about: [
        'A start of 1.5 s with eight compressions a second of ± 0.3 V, a thousand samples a second in steps of 10 mV; single noisy samples are the minimum.',
      ],
      unit: 'V',
      rowsAre: 'turning at',
      rows: [8.5, 9.6, 10.8].map((turning) => [
        `${turning} V`,
        () =>
          signals.crankingVolts(
            { rest: 12.6, dip: turning - 1.5, turning, pulse: 0.3, perSecond: 8, seconds: 1.5, after: 14 },
            1000,
          ),
        turning - 0.3,
      ]),
      noises: [0, 0.01, 0.03, 0.1],
      noiseUnit: 'V',
      beside: { step: 0.01 },
      read: (record) => from(crankingVoltage(record), (found) => found.minimum, 1),
    }),
    ...(['opening', 'regulating'] as const).map((field) =>
      table({
        of: `warm_up(x).${field}`,
        about: [
          'A lumped heat balance from 25 °C with 7 kW, 25 minutes, one reading a second in steps of 1 °C.',
          field === 'opening'
            ? 'The thermostat begins to open at 82 °C and is open after some kelvin more: the wider that range, the later the curve breaks.'
            : 'What the balance of heat and loss holds.',
        ],
        unit: 'K',
        rowsAre: 'opening range',
        rows: [2, 5, 10].map((range) => {
          const of = { outside: 25, opens: 82, heat: 7000, range };
          return [`${range} K`, () => warmUpCurve(of, 1500, 1), field === 'opening' ? 82 : held(of)] as const;
        }),
        noises: [0, 0.2, 0.5, 1],
        noiseUnit: 'K',
        beside: { step: 1 },
        read: (record) => from(warmUp(record), (found) => found[field], 1),
      }),
    ),
  ],
};

export default section;

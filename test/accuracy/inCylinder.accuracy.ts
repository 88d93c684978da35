import { crankAngle, valveEvents } from '../../core/engine/mechanical/inCylinder.ts';
import type { Series } from '../../core/expression/value.ts';
import { typeIn } from '../../core/waveform/arguments.ts';
import {
  type Breath,
  type Breathing,
  breathing,
  type Timing,
  usualTiming,
} from '../support/signal/cylinderPressure.ts';
import { type Disturbance, disturbed, type Signal } from '../support/signal/signal.ts';
import type { AccuracySection, AccuracyTable } from './table.ts';

const about = [
  'A cylinder without combustion: dp/dθ from the volume (slider-crank, polytropic), from valves as orifices that open with sin², and from leakage; 3 s in steps of 0.5 kPa.',
  'The compression ratio and the exponent are not those that the function assumes; the truth is the seat’s angle, so that what stands without noise is how far the corner of the pressure lies from the seat.',
];

const shifts = [-18, -9, 0, 9, 18];
const shifted = (by: number): Timing => ({
  evo: usualTiming.evo - by,
  evc: usualTiming.evc + by,
  ivo: usualTiming.ivo - by,
  ivc: usualTiming.ivc + by,
});

const disturbances: readonly (readonly [string, Disturbance, number])[] = [
  ['clean, 10 kHz', { step: 500 }, 10_000],
  ['noise 0.5 kPa, 10 kHz', { step: 500, noise: 500 }, 10_000],
  ['noise 2 kPa, 10 kHz', { step: 500, noise: 2000 }, 10_000],
  ['noise 0.5 kPa, 3 kHz, 5 % lost', { step: 500, noise: 500, dropouts: 0.05 }, 3_000],
];

const made = new Map<string, Breath>();

function breathOf(of: Breathing): Breath {
  const key = JSON.stringify(of);
  const known = made.get(key) ?? breathing(of);
  made.set(key, known);
  return known;
}

/** kPa to Pa. */
function series({ time, samples }: Signal): Series {
  return { kind: 'series', type: typeIn('kPa'), capture: 'snap', time, samples, spread: [] };
}

const inPascal = ({ time, samples }: Signal): Signal => ({
  time,
  samples: samples.map((each) => 1000 * each),
});

const running = { rpm: 810, ripple: 0.01, intake: -62, exhaust: 2, seconds: 3 } as const;
const cranked = { rpm: 240, ripple: 0.08, intake: -3, exhaust: 0.5, seconds: 3 } as const;

function reading(of: Breathing, by: Disturbance, seed: number, name: string): number | undefined {
  const { pressure } = breathOf(of);
  const value = valveEvents([series(disturbed(inPascal(pressure), by, seed)), undefined, undefined]);
  const field = value.kind === 'fields' ? value.fields.get(name) : undefined;
  return field?.kind === 'one' ? field.amount.si : undefined;
}

function table(name: keyof Timing, state: string, base: Omit<Breathing, 'perSecond'>): AccuracyTable {
  return {
    of: `valve_events(pressure).${name}, ${state}`,
    about,
    unit: '°CA',
    rowsAre: 'cam later by',
    rows: shifts.map((each) => `${each}°`),
    columnsAre: 'what disturbs the pressure',
    columns: disturbances.map(([text]) => text),
    error: (row, column, seed) => {
      const timing = shifted(shifts[row] ?? 0);
      const [, by, perSecond] = disturbances[column] ?? ['', {}, 10_000];
      const found = reading({ ...base, timing, perSecond }, by, seed, name);
      return found === undefined ? undefined : 360 * found - timing[name];
    },
  };
}

const plateaus: AccuracyTable = {
  of: 'valve_events(pressure).exhaust_plateau',
  about: [about[0] ?? '', 'The truth is the pressure in the port.'],
  unit: 'kPa',
  rowsAre: 'back pressure, kPa',
  rows: ['1', '5', '15', '30'],
  columnsAre: 'what disturbs the pressure',
  columns: disturbances.map(([text]) => text),
  error: (row, column, seed) => {
    const exhaust = [1, 5, 15, 30][row] ?? 0;
    const [, by, perSecond] = disturbances[column] ?? ['', {}, 10_000];
    const found = reading({ ...running, exhaust, perSecond }, by, seed, 'exhaust_plateau');
    return found === undefined ? undefined : found / 1000 - exhaust;
  },
};

const angle: AccuracyTable = {
  of: 'crank_angle(pressure)',
  about: [
    about[0] ?? '',
    'The root mean square over the record against the true angle; without noise it is the loss angle, and what the crank runs unevenly within a turn.',
  ],
  unit: '°CA',
  rowsAre: 'engine',
  rows: ['idle, even', 'idle, uneven by 2 %', 'cranking, uneven by 8 %', 'faster by 600 rpm a second'],
  columnsAre: 'what disturbs the pressure',
  columns: disturbances.map(([text]) => text),
  error: (row, column, seed) => {
    const of = [
      { ...running, ripple: 0 },
      { ...running, ripple: 0.02 },
      cranked,
      { ...running, faster: 600 },
    ][row];
    const [, by, perSecond] = disturbances[column] ?? ['', {}, 10_000];
    const { pressure, angle: truth } = breathOf({ ...(of ?? running), perSecond });
    const found = crankAngle([series(disturbed(inPascal(pressure), by, seed))]);
    if (found.kind !== 'series') return undefined;
    let [sum, count] = [0, 0];
    for (let i = 0; i < truth.length; i++) {
      const off = 360 * (found.samples[i] ?? Number.NaN) - (truth[i] ?? 0);
      if (Number.isNaN(off)) continue;
      sum += (off - 720 * Math.round(off / 720)) ** 2;
      count++;
    }
    return Math.sqrt(sum / count);
  },
};

const section: AccuracySection = {
  page: 'core/waveform/ACCURACY.md',
  title: 'Pressure in a cylinder',
  tables: [
    ...(['evo', 'evc', 'ivo', 'ivc'] as const).map((name) => table(name, 'idle', running)),
    table('evo', 'cranking', cranked),
    table('ivc', 'cranking', cranked),
    plateaus,
    angle,
  ],
};

export default section;

import { absentOf, cannotCompute } from '../../expression/absent.ts';
import type { ComputedType, FunctionRow, Parameter } from '../../expression/functionRow.ts';
import { aligned } from '../../expression/series.ts';
import type { Type } from '../../expression/type.ts';
import type { Absent, Members, Series, Value } from '../../expression/value.ts';
import type { Amount, QuantityType } from '../../quantity/types.ts';
import { unitOf } from '../../quantity/unit.ts';
import { samplesOfX } from '../arguments.ts';
import { type CellMean, meansByCell, operatingCellNames, operatingCells } from './operatingCells.ts';

const share = (name: string, meaning: string, otherwise?: string): Parameter => ({
  name,
  takes: { what: 'quantity', unit: '%' },
  meaning,
  ...(otherwise === undefined ? { optional: true } : { otherwise }),
});

export const operatingCellRow: FunctionRow = {
  form: 'whole',
  name: 'by_operating_cell',
  family: 'fuel',
  fourStroke: true,
  summary:
    'The mean of a channel at idle, light load, cruise and heavy load; open loop and fuel cut are left out.',
  parameters: [
    samplesOfX,
    { name: 'rpm', takes: { what: 'series', unit: 'rpm' }, meaning: 'engine speed' },
    {
      name: 'load',
      takes: { what: 'series' },
      meaning: 'calculated or absolute load, manifold pressure, or air flow (with the displacement)',
    },
    { name: 'speed', takes: { what: 'series', unit: 'km/h' }, meaning: 'road speed', optional: true },
    {
      name: 'loop',
      takes: { what: 'series', unit: '1' },
      meaning: 'fuel system status as generic data count it: 2 closed, 16 closed with a fault, others open',
      optional: true,
    },
    {
      name: 'pulse_width',
      takes: { what: 'series', unit: 'ms' },
      meaning: 'injection time; below 1.2 ms above idle the fuel is cut',
      optional: true,
    },
    {
      name: 'displacement',
      takes: { what: 'quantity', unit: 'L' },
      meaning: 'displacement of the whole engine, where the load is an air flow',
      header: 'engine.displacement',
      optional: true,
    },
    {
      name: 'idle_speed',
      takes: { what: 'quantity', unit: 'rpm' },
      meaning: 'below this, and standing: idle',
      otherwise: '1100 rpm',
    },
    share('light', 'load below which it is light', '35 %'),
    share('heavy', 'load from which on it is heavy', '70 %'),
    share('overrun', 'load below which the throttle is closed; 12 %, or 24 % of 100 kPa'),
    {
      name: 'settle',
      takes: { what: 'quantity', unit: 's' },
      meaning: 'time after open loop or fuel cut that is left out, too',
      otherwise: '2 s',
    },
  ],
  result: { kind: 'computed', says: 'x by idle, light load, cruise, heavy load', typeOf: cellsType },
  formula:
    'mean of the samples in each cell; ± twice their standard error, samples that follow each other counted as fewer',
  range: 'five samples a cell or more; pressure counts as a share of 100 kPa, air flow as of 1.184 g/L',
  errors: [
    'The channels are of different captures.',
    'The load is an air flow and the displacement is not known.',
    'No sample counts.',
  ],
  source: 'common practice; absolute load after SAE J1979; standard error with first-order autocorrelation',
  example: {
    expression: 'by_operating_cell(drive.trim, drive.rpm, drive.load)["idle"]',
    result: '20 %',
  },
  evaluate: byOperatingCell,
};

const pressure = unitOf('kPa')?.dimension;
const flow = unitOf('g/s')?.dimension;
const plain = unitOf('1')?.dimension;

function cellsType(types: readonly (Type | undefined)[]): ComputedType {
  const [x, ...others] = types;
  if (x?.kind !== 'series') return { wrong: 0, takes: 'samples of a capture' };
  for (let at = 1; at <= 5; at++) {
    const other = others[at - 1];
    if (other === undefined && at > 2) continue;
    if (other?.kind !== 'series' || other.capture !== x.capture)
      return { wrong: at, takes: 'samples of the same capture; `resample(y, x)` takes them to its moments' };
  }
  const load = others[1];
  if (load?.kind === 'series' && ![pressure, flow, plain].includes(load.quantity.dimension))
    return { wrong: 2, takes: 'a load in %, a manifold pressure, or an air flow' };
  if (load?.kind === 'series' && load.quantity.dimension === pressure && load.quantity.kind !== 'absolute')
    return { wrong: 2, takes: 'a manifold pressure that is absolute' };
  return { type: { kind: 'members', by: 'label', quantity: x.quantity } };
}

/** Full: 100 kPa of outside air; a cylinder of 1.184 g/L. */
const outside = 100_000;
const fullCylinder = 1.184;
/** Shares of load, and of 100 kPa, below which the throttle is closed above idle. */
const overrunLoad = 0.12;
const overrunPressure = 0.24;

function byOperatingCell(args: readonly (Value | undefined)[]): Value {
  const absent = absentOf(args);
  if (absent !== undefined) return absent;
  const [x, rpm, load, speed, loop, pulse, displacement, idleSpeed, light, heavy, overrun, settle] = args;
  if (x?.kind !== 'series' || rpm?.kind !== 'series' || load?.kind !== 'series') return noSamples;
  const on = (of: Value | undefined): Float64Array | undefined =>
    of?.kind === 'series' ? onMomentsOf(x, of) : undefined;
  const turns = on(rpm) ?? new Float64Array();
  const filled = shareOf(load.type, on(load) ?? new Float64Array(), turns, numberOf(displacement));
  if ('kind' in filled) return filled;
  const usualOverrun = load.type.dimension === pressure ? overrunPressure : overrunLoad;
  const cells = operatingCells(
    { time: x.time, rpm: turns, load: filled, speed: on(speed), loop: on(loop), pulseWidth: on(pulse) },
    {
      idleSpeed: numberOf(idleSpeed) ?? Number.NaN,
      light: numberOf(light) ?? Number.NaN,
      heavy: numberOf(heavy) ?? Number.NaN,
      overrun: numberOf(overrun) ?? usualOverrun,
      settle: numberOf(settle) ?? 0,
    },
  );
  if ('kind' in cells) return cells;
  const means = meansByCell(x.samples, cells);
  if (means.every((each) => each === undefined))
    return cannotCompute('no sample counts: they are missing, in open loop or on overrun');
  return membersOf(x, cells, means);
}

const noSamples = cannotCompute('it has no samples');

function numberOf(of: Value | undefined): number | undefined {
  return of?.kind === 'one' ? of.amount.si : undefined;
}

/** The samples at the moments of x; NaN where there is none. */
function onMomentsOf(x: Series, other: Series): Float64Array {
  const [same, theirs] = aligned(x, other);
  if (same === x) return theirs.samples;
  const samples = new Float64Array(x.time.length).fill(Number.NaN);
  let at = 0;
  for (let i = 0; i < same.time.length; i++) {
    while (x.time[at] !== same.time[i]) at++;
    samples[at] = theirs.samples[i] ?? Number.NaN;
  }
  return samples;
}

/** Whatever says the load, as a share of full. */
function shareOf(
  { dimension }: QuantityType,
  samples: Float64Array,
  turns: Float64Array,
  displacement: number | undefined,
): Float64Array | Absent {
  if (dimension === plain) return samples;
  if (dimension === pressure) return samples.map((each) => each / outside);
  if (displacement === undefined || !(displacement > 0))
    return cannotCompute('an air flow says a load only with the displacement: give it in the header');
  return samples.map((each, i) => (each * 2) / ((turns[i] ?? Number.NaN) * fullCylinder * displacement));
}

function membersOf(x: Series, cells: Int8Array, means: readonly (CellMean | undefined)[]): Members {
  const members = new Map<string, Amount | Absent>();
  for (const [cell, name] of operatingCellNames.entries()) {
    const mean = means[cell];
    if (mean === undefined)
      members.set(name, {
        kind: 'absent',
        status: 'not measured',
        why: `fewer than five samples count at ${name}`,
      });
    else members.set(name, { si: mean.mean, spread: spreadOf(x, cells, cell, name, mean) });
  }
  return { kind: 'members', by: 'label', type: x.type, members };
}

/**
 * What is common to the samples, and their scatter as a source of its own, which only the very same mean shares:
 * the trims of two banks scatter each for itself.
 */
function spreadOf(
  x: Series,
  cells: Int8Array,
  cell: number,
  name: string,
  { mean, scatter }: CellMean,
): Amount['spread'] {
  const spread = x.spread.map(({ source, by }) => ({
    source,
    by: typeof by === 'number' ? by : (meansByCell(by, cells)[cell]?.mean ?? 0),
  }));
  if (scatter > 0)
    spread.push({ source: `scatter of ${x.capture} at ${name}: ${mean} ± ${scatter}`, by: scatter });
  return spread.sort((a, b) => (a.source < b.source ? -1 : 1));
}

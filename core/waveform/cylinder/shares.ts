import { cannotCompute } from '../../expression/absent.ts';
import { firstAtOrAfter } from '../../expression/series.ts';
import type { Absent } from '../../expression/value.ts';
import { smooth } from '../smooth.ts';
import type { Load } from './cranking.ts';
import { evenly } from './evenly.ts';
import type { Humps } from './humps.ts';
import { leastSquares } from './leastSquares.ts';

/**
 * What each cylinder adds to a load that all of them share, cycle by cycle: the first place is that of the first hump,
 * near whose middle its compression's top dead centre lies.
 */
export interface Shares {
  /** For each whole engine cycle one number a cylinder, in the load's unit; 0 is nothing at all. */
  readonly cycles: readonly (readonly number[])[];
  /** The share of the load's changes that they explain. */
  readonly explained: number;
  /** Top dead centre comes later than the middle of the hump, as a share of the way to the next. */
  readonly later: number;
}

/** What is not known of the engine beforehand, and fitted. */
interface Guess {
  /** Top dead centre comes later than the middle of the hump, as a share of the way to the next. */
  readonly later: number;
  /** The starter's current follows the load with this delay, as a share of the way from hump to hump. */
  readonly delay: number;
  /** The load at which the starter would stand still, of the greatest load there. */
  readonly stall: number;
}

/** Steps from one hump to the next. */
const fine = 16;
const mostCycles = 8;

/** What is known of the engine beforehand. */
export interface Engine {
  readonly cylinders: number;
  /** What a cylinder adds to the load over degrees after its compression's top dead centre, 0 to 720. */
  readonly shape: (degrees: number) => number;
  /** Where top dead centre may come after the middle of the hump, in ways to the next; anywhere when left out. */
  readonly laters?: readonly number[];
  /** Where to begin with the lag, in ways from hump to hump … */
  readonly delays: readonly number[];
  /** … and with the load that would stop the engine, of the greatest load there; large where its speed does not follow the load. */
  readonly stalls: readonly number[];
}

/**
 * Tells the cylinders apart that a load shows run together: what one gives back while it expands still pushes when the
 * next compresses, and the load follows with a delay, so that a weak cylinder's hump is lower than its share and the
 * next one's higher. The load is taken as Σ Cᵢ·shape(angle after the i-th top dead centre), behind a first-order lag,
 * the speed falling straight with the load; Cᵢ by least squares, the three numbers that are not known (where the dead
 * centres are, the lag, the stall load) where the squares are least.
 */
export function sharesOf(load: Load, { centres, spacing }: Humps, engine: Engine): Shares | Absent {
  const { cylinders, shape } = engine;
  const whole = Math.floor((centres.length - 1) / cylinders);
  const used = Math.min(whole, mostCycles);
  const [start = 0, end = 0] = [centres[0], centres[used * cylinders]];
  const step = spacing / fine;
  const samples = evenly(load.time, load.samples, step);
  const moments = samples.map((_, i) => (load.time[0] ?? 0) + (i + 0.5) * step);
  const level = smooth(moments, samples, spacing * cylinders);
  const [from, to] = [moments.findIndex((t) => t >= start), moments.findLastIndex((t) => t <= end) + 1];
  const part = (of: Float64Array): Float64Array => of.slice(from, to);
  const record: Record = {
    time: part(moments),
    load: part(samples),
    swing: part(samples.map((each, i) => each - (level[i] ?? 0))),
    centres: centres.slice(0, used * cylinders + 1),
    step: 1 / fine,
    cylinders,
    table: Float64Array.from({ length: 721 }, (_, degrees) => shape(degrees)),
  };
  const fit = bestFit(record, engine);
  if (fit === undefined || !(fit.explained > leastExplained))
    return cannotCompute('what that many cylinders would do does not stand out of it');
  const cycles: (readonly number[])[] = [];
  for (let k = 0; k < used; k++) {
    const rows = [k, k + 1].map((each) =>
      record.time.findIndex((t) => t >= (centres[each * cylinders] ?? 0)),
    );
    const [first = 0, next = -1] = rows;
    const own = leastSquares(fit.columns, record.swing, first, next < 0 ? record.time.length : next);
    if (own !== undefined) cycles.push(own.weights.slice(0, cylinders).map((each) => Math.max(0, each)));
  }
  return { cycles, explained: fit.explained, later: fit.later };
}

/** Below this share something else than compression moves the load. */
const leastExplained = 0.5;

interface Record {
  readonly time: Float64Array;
  readonly load: Float64Array;
  readonly swing: Float64Array;
  /** The middles of the humps, s. */
  readonly centres: readonly number[];
  /** A step of time as a share of the way from hump to hump. */
  readonly step: number;
  readonly cylinders: number;
  readonly table: Float64Array;
}

interface Fit extends Guess {
  readonly explained: number;
  readonly columns: readonly Float64Array[];
}

const anywhere = [-0.5, -0.4, -0.3, -0.2, -0.1, 0, 0.1, 0.2, 0.3, 0.4];

/** The squares have more than one valley: the search begins once for each stall load, from the best of a grid. */
function bestFit(record: Record, { delays, stalls, laters = anywhere }: Engine): Fit | undefined {
  let best: Fit | undefined;
  for (const stall of stalls) {
    let start: Fit | undefined;
    for (const delay of delays) {
      for (const later of laters) {
        start = better(start, fitOf(record, { later, delay, stall }));
      }
    }
    best = better(best, start === undefined ? undefined : refined(record, start));
  }
  return best;
}

function better(one: Fit | undefined, other: Fit | undefined): Fit | undefined {
  if (one === undefined || other === undefined) return one ?? other;
  return other.explained > one.explained ? other : one;
}

function fitOf(record: Record, guess: Guess): Fit | undefined {
  const columns = columnsOf(record, guess);
  const solved = leastSquares(columns, record.swing);
  return solved === undefined ? undefined : { ...guess, explained: solved.explained, columns };
}

/**
 * All numbers together, the compressions with the three (Gauss and Newton): what a small step of each changes is fitted
 * as columns of their own, and the step taken as far as it helps.
 */
function refined(record: Record, start: Fit): Fit {
  let best = start;
  for (let round = 0; round < 12; round++) {
    const { columns } = best;
    const weights = leastSquares(columns, record.swing)?.weights ?? [];
    const slopes = [0, 1, 2].map((which) => {
      const moved = columnsOf(record, stepped(best, which, tiny));
      return record.swing.map((_, i) =>
        weights.reduce(
          (sum, weight, j) => sum + (weight * ((moved[j]?.[i] ?? 0) - (columns[j]?.[i] ?? 0))) / tiny,
          0,
        ),
      );
    });
    const steps = leastSquares([...columns, ...slopes], record.swing)?.weights.slice(columns.length);
    if (steps === undefined) return best;
    const before = best;
    for (let part = 1; part > 0.1 && best === before; part /= 2) {
      const guess = [0, 1, 2].reduce(
        (guess: Guess, which) =>
          stepped(guess, which, part * Math.max(-0.3, Math.min(0.3, steps[which] ?? 0))),
        before,
      );
      best = better(before, fitOf(record, guess)) ?? before;
    }
    if (best.explained - before.explained < 1e-6) return best;
  }
  return best;
}

const tiny = 0.01;

/** The place in shares of the way between humps, delay and stall load by their logarithms, which keep them above 0. */
function stepped({ later, delay, stall }: Guess, which: number, by: number): Guess {
  if (which === 0) return { later: later + by, delay, stall };
  if (which === 1) return { later, delay: delay * Math.exp(by), stall };
  return { later, delay, stall: 1.02 + (stall - 1.02) * Math.exp(by) };
}

/** What each cylinder's compression alone would leave in the load, and a constant. */
function columnsOf(record: Record, { later, delay, stall }: Guess): readonly Float64Array[] {
  const { load, cylinders, step, table } = record;
  const angles = anglesOf(record, stall * load.reduce((most, each) => Math.max(most, each), 0));
  const gain = 1 - Math.exp(-step / delay);
  const columns: Float64Array[] = [];
  for (let j = 0; j < cylinders; j++) {
    const column = new Float64Array(load.length);
    const zero = ((j + later) * 720) / cylinders;
    let followed = 0;
    // Cycles before the record, so that the lag has a past.
    const cycle = Math.min(load.length, cylinders * fine);
    const warm = cycle * Math.ceil((4 * delay) / cylinders);
    for (let i = -warm; i < load.length; i++) {
      const angle = (angles[i < 0 ? (i + warm) % cycle : i] ?? 0) - zero;
      const turned = angle - 720 * Math.floor(angle / 720);
      const low = Math.floor(turned);
      const rest = turned - low;
      followed += gain * ((table[low] ?? 0) * (1 - rest) + (table[low + 1] ?? 0) * rest - followed);
      if (i >= 0) column[i] = followed;
    }
    columns.push(column);
  }
  const mean = columns.map((column) => column.reduce((sum, each) => sum + each, 0) / column.length);
  return [
    ...columns.map((column, j) => column.map((each) => each - (mean[j] ?? 0))),
    new Float64Array(load.length).fill(1),
  ];
}

/**
 * Crank angle since the middle of the first hump, degrees: the load is the less the faster the crank turns; how fast,
 * and how that changes as the battery tires, the humps' middles say together (a parabola by least squares).
 */
function anglesOf({ time, load, centres, cylinders }: Record, stall: number): Float64Array {
  const run = new Float64Array(load.length);
  for (let i = 1; i < run.length; i++) {
    const speed = stall - ((load[i] ?? 0) + (load[i - 1] ?? 0)) / 2;
    run[i] = (run[i - 1] ?? 0) + speed * ((time[i] ?? 0) - (time[i - 1] ?? 0));
  }
  const whole = run[run.length - 1] ?? 1;
  const at = Float64Array.from(centres, (centre) => runAt(time, run, centre) / whole);
  const powers = [at.map(() => 1), at, at.map((each) => each * each)];
  const spacing = 720 / cylinders;
  const [a = 0, b = 0, c = 0] =
    leastSquares(
      powers,
      at.map((_, k) => k * spacing),
    )?.weights ?? [];
  return run.map((each) => a + (each / whole) * (b + (c * each) / whole));
}

/** Straight between the steps, and on beyond the first and the last. */
function runAt(time: Float64Array, run: Float64Array, moment: number): number {
  const after = Math.min(Math.max(1, firstAtOrAfter(time, moment)), time.length - 1);
  const [start, end] = [time[after - 1] ?? 0, time[after] ?? 0];
  const [low, high] = [run[after - 1] ?? 0, run[after] ?? 0];
  return low + ((moment - start) / (end - start)) * (high - low);
}

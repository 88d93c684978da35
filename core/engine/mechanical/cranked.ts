import { cannotCompute } from '../../expression/absent.ts';
import type { Absent, Series, Value } from '../../expression/value.ts';
import { add, exact, measured } from '../../quantity/amount.ts';
import { current } from '../../quantity/dimension.ts';
import type { Amount } from '../../quantity/types.ts';
import { typeIn } from '../../waveform/arguments.ts';
import { type Load, steadyCranking } from '../../waveform/cylinder/cranking.ts';
import { type Humps, humpsOf } from '../../waveform/cylinder/humps.ts';
import { crankingPace } from '../../waveform/cylinder/rhythm.ts';
import { type Shares, sharesOf } from '../../waveform/cylinder/shares.ts';
import { meanOfCycles } from '../../waveform/cylinder/spread.ts';
import { isRecorded, recorded } from '../../waveform/recorded.ts';
import { compressionTorque } from './compressionTorque.ts';
import { byName, everyCylinder, namesOf, sourceOf } from './cylinderNames.ts';
import { compressesNothing, numberOf } from './ratioGiven.ts';

type Arguments = readonly (Value | undefined)[];

/** A crank's humps in the order of time, found once for a capture however many functions read it. */
interface Cranked {
  readonly load: Load;
  readonly humps: Humps;
  readonly cylinders: number;
}

const known = new WeakMap<Float64Array, Map<number, Cranked | Absent>>();

function crankedOf(x: Series, cylinders: number): Cranked | Absent {
  const byCount = known.get(x.samples) ?? new Map<number, Cranked | Absent>();
  known.set(x.samples, byCount);
  let found = byCount.get(cylinders);
  if (found === undefined) {
    found = find(x, cylinders);
    byCount.set(cylinders, found);
  }
  return found;
}

function find(x: Series, cylinders: number): Cranked | Absent {
  const record = recorded(x);
  if (!isRecorded(record)) return record;
  // A battery's voltage dips where a current rises.
  const load = steadyCranking(record, x.type.dimension === current ? 1 : -1);
  if ('kind' in load) return load;
  const humps = humpsOf(load, cylinders, crankingPace);
  return 'kind' in humps ? humps : { load, humps, cylinders };
}

/** rpm: two turns from a hump to the same cylinder's next, averaged over the cycles. */
export function crankingSpeed([x, cylinders]: Arguments): Value {
  if (x?.kind !== 'series' || cylinders?.kind !== 'one') return cannotCompute('it has no samples');
  const count = cylinders.amount.si;
  if (!(count >= 1 && count <= 16 && Number.isInteger(count)))
    return cannotCompute('the number of cylinders must be a whole number from 1 to 16');
  const cranked = crankedOf(x, count);
  if ('kind' in cranked) return cranked;
  const { centres } = cranked.humps;
  const speeds: number[] = [];
  for (let k = 0; k + count < centres.length; k += count) {
    speeds.push(2 / ((centres[k + count] ?? 0) - (centres[k] ?? 0)));
  }
  return { kind: 'one', type: typeIn('rpm'), amount: meanOfCycles(speeds, sourceOf(x, 'speed')) };
}

/** Each cylinder's hump as a share of the mean of all in the same engine cycle. */
export function humpBalance(args: Arguments): Value {
  return byCylinder(args, 'hump', ({ humps: { heights }, cylinders }) => {
    const cycles: number[][] = [];
    for (let k = 0; k + cylinders <= heights.length; k += cylinders)
      cycles.push(heights.slice(k, k + cylinders));
    return { cycles, of: mean, method: () => 0 };
  });
}

/** Each cylinder's compression as a share of the highest, told apart from its neighbours'. */
export function relativeCompression(args: Arguments): Value {
  const ratio = numberOf(args[4], 10);
  if (!(ratio > 1)) return compressesNothing('relative_compression', ratio);
  return byCylinder(args, 'compression', ({ load, humps, cylinders }) => {
    const shape = compressionTorque(ratio, 3.5);
    const found: Shares | Absent = sharesOf(load, humps, {
      cylinders,
      shape,
      delays: [0.2, 0.5, 1.2],
      stalls: [1.3, 2, 4],
    });
    if ('kind' in found) return found;
    const sums = Array.from({ length: cylinders }, (_, j) =>
      found.cycles.reduce((sum, cycle) => sum + (cycle[j] ?? 0), 0),
    );
    const highest = sums.indexOf(Math.max(...sums));
    return { cycles: found.cycles, of: (cycle) => cycle[highest] ?? 0, method: methodError };
  });
}

const mean = (cycle: readonly number[]): number => cycle.reduce((sum, each) => sum + each, 0) / cycle.length;

interface Read {
  /** Cycle after cycle, a number a place. */
  readonly cycles: readonly (readonly number[])[];
  /** What 100 % is in a cycle. */
  readonly of: (cycle: readonly number[]) => number;
  /** By how much the method itself may be off, by the lowest share, whatever the cycles say. */
  readonly method: (lowest: number) => number;
}

/**
 * What the method is off by on synthetic engines, as a half-width: about the worst of the accuracy page
 * (core/waveform/ACCURACY.md), more for all cylinders the weaker the weakest is.
 */
const methodError = (lowest: number): number => 0.01 + 0.06 * Math.max(0, 1 - lowest);

function byCylinder(
  [x, sync, orderText, marked]: Arguments,
  what: string,
  read: (cranked: Cranked) => Read | Absent,
): Value {
  if (x?.kind !== 'series' || orderText?.kind !== 'words') return cannotCompute('it has no samples');
  const order = everyCylinder(orderText.text);
  if (order === undefined)
    return cannotCompute(`the firing order \`${orderText.text}\` does not name every cylinder once`);
  const cranked = crankedOf(x, order.length);
  if ('kind' in cranked) return cranked;
  const names = sync === undefined ? undefined : namesOf(sync, marked, order, cranked.humps, 0);
  if (names !== undefined && 'kind' in names) return names;
  const found = read(cranked);
  if ('kind' in found) return found;
  const cycles = found.cycles.filter((cycle) => found.of(cycle) > 0);
  if (cycles.length === 0) return cannotCompute('no cycle of it has a hump');
  const shares = order.map((_, place) => cycles.map((cycle) => (cycle[place] ?? 0) / found.of(cycle)));
  const off = found.method(Math.min(...shares.map(mean)));
  const amounts = shares.map((each, place): Amount => {
    // The one that the others are measured by.
    if (each.every((share) => share === 1)) return exact(1);
    const source = sourceOf(x, `${what} ${place}`);
    return add(meanOfCycles(each, source), measured(0, `${source}, method`, off));
  });
  return byName(names, amounts, typeIn('%'));
}

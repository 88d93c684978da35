import { cannotCompute } from '../../expression/absent.ts';
import type { Absent, Series, Value } from '../../expression/value.ts';
import { add, measured } from '../../quantity/amount.ts';
import { typeIn } from '../../waveform/arguments.ts';
import { humpsOf } from '../../waveform/cylinder/humps.ts';
import { marksOf, phaseOfMarks } from '../../waveform/cylinder/marks.ts';
import { anyPace, type Pace } from '../../waveform/cylinder/rhythm.ts';
import { sharesOf } from '../../waveform/cylinder/shares.ts';
import { meanOfCycles } from '../../waveform/cylinder/spread.ts';
import { median } from '../../waveform/quantile.ts';
import { isRecorded, type Recorded, recorded, swingOf } from '../../waveform/recorded.ts';
import { byName, everyCylinder, namesOf, sourceOf } from './cylinderNames.ts';

/** How much each cylinder draws from the manifold, as a share of the mean of all. */
export function intakeBalance([x, sync, orderText, marked]: readonly (Value | undefined)[]): Value {
  if (x?.kind !== 'series' || orderText?.kind !== 'words') return cannotCompute('it has no samples');
  const order = everyCylinder(orderText.text);
  if (order === undefined)
    return cannotCompute(`the firing order \`${orderText.text}\` does not name every cylinder once`);
  const record = recorded(x);
  if (!isRecorded(record)) return record;
  const load = vacuumIn(x, record);
  if ('kind' in load) return load;
  const cylinders = order.length;
  const marks = sync === undefined ? undefined : marksIn(sync);
  if (marks !== undefined && 'kind' in marks) return marks;
  const humps = humpsOf(load, cylinders, marks === undefined ? anyPace : paceOf(marks));
  if ('kind' in humps) return humps;
  const later = marks === undefined ? undefined : phaseOfMarks(marks, humps.centres);
  const found = sharesOf(load, humps, {
    cylinders,
    shape: drawn,
    // The manifold empties within a cycle or a few; the crank does not slow down for it.
    delays: [0.3 * cylinders, cylinders, 3 * cylinders],
    stalls: [20],
    // The marks stand at top dead centre, or some degrees before.
    ...(later === undefined ? {} : { laters: [later - 0.1, later, later + 0.1] }),
  });
  if ('kind' in found) return found;
  const cycles = found.cycles.filter((cycle) => sum(cycle) > 0);
  if (cycles.length === 0) return cannotCompute('no cycle of it has a pull');
  const names =
    sync === undefined ? undefined : namesOf(sync, marked, order, humps, -(later ?? 0) / cylinders);
  if (names !== undefined && 'kind' in names) return names;
  const shares = order.map((_, place) =>
    cycles.map((cycle) => ((cycle[place] ?? 0) * cylinders) / sum(cycle)),
  );
  const uneven = Math.max(...shares.map((each) => Math.abs(sum(each) / each.length - 1)));
  const amounts = shares.map((each, place) => {
    const source = sourceOf(x, `draw ${place}`);
    const method = measured(0, `${source}, method`, methodError(cylinders, uneven));
    return add(meanOfCycles(each, source), method);
  });
  return byName(names, amounts, typeIn('%'));
}

/**
 * What the method is off by on synthetic manifolds, as a half-width, from the accuracy page (core/waveform/ACCURACY.md),
 * by the share that lies farthest from the mean: where intake strokes overlap, a cylinder's lack is told from its
 * neighbours' only roughly.
 */
const methodError = (cylinders: number, uneven: number): number =>
  cylinders > 4 ? 0.05 + 0.65 * uneven : 0.03 + 0.15 * uneven;

const sum = (cycle: readonly number[]): number => cycle.reduce((total, each) => total + each, 0);

/** A vacuum rises where a pressure falls. */
function vacuumIn(
  { type }: Series,
  { time, samples }: Recorded,
): Pick<Recorded, 'time' | 'samples'> | Absent {
  const { low, high } = swingOf(samples);
  if (!(high > low)) return cannotCompute('it does not change: every sample is the same');
  const upright = type.kind === 'vacuum';
  return { time, samples: samples.map((each) => (upright ? each - low : high - each)) };
}

function marksIn(sync: Value): readonly number[] | Absent {
  if (sync.kind !== 'series') return cannotCompute('the sync channel has no samples');
  const record = recorded(sync);
  if (!isRecorded(record)) return record;
  const marks = marksOf(record, anyPace.shortest / 2);
  return marks.length < 3 ? cannotCompute('the sync channel has fewer than three marks') : marks;
}

/** A sync channel tells the cycle. */
function paceOf(marks: readonly number[]): Pace {
  const cycle = median(marks.slice(1).map((at, k) => at - (marks[k] ?? 0)));
  return { shortest: 0.9 * cycle, longest: 1.1 * cycle };
}

/** The piston's pull over degrees after compression's top dead centre: the intake stroke's half sine, rod and lift left out. */
const drawn = (degrees: number): number =>
  degrees >= 360 && degrees < 540 ? Math.sin(((degrees - 360) * Math.PI) / 180) : 0;

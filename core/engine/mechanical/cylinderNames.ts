import { cannotCompute } from '../../expression/absent.ts';
import type { Absent, Members, Series, Value } from '../../expression/value.ts';
import type { Amount, QuantityType } from '../../quantity/types.ts';
import type { Humps } from '../../waveform/cylinder/humps.ts';
import { marksOf, placeOfMarks } from '../../waveform/cylinder/marks.ts';
import { isRecorded, recorded } from '../../waveform/recorded.ts';
import { cylindersInOrder } from './firingOrder.ts';

/** The cylinders in the order they fire; undefined where the text does not name each of 1 to n once. */
export function everyCylinder(text: string): readonly string[] | undefined {
  const order = cylindersInOrder(text);
  if ('noAnswer' in order) return undefined;
  const complete = order.length <= 16 && order.every((_, at) => order.includes(at + 1));
  return complete ? order.map(String) : undefined;
}

/**
 * The cylinder of each place of the cycle, by a sync channel that marks the compression of one and the firing order.
 * `behind`: what is read comes this much later than the mark of its cylinder, as a share of the cycle.
 */
export function namesOf(
  sync: Value,
  marked: Value | undefined,
  order: readonly string[],
  { centres, spacing }: Humps,
  behind: number,
): readonly string[] | Absent {
  if (sync.kind !== 'series') return cannotCompute('the sync channel has no samples');
  const record = recorded(sync);
  if (!isRecorded(record)) return record;
  const name = marked?.kind === 'one' ? String(marked.amount.si) : (order[0] ?? '');
  const first = order.indexOf(name);
  if (first < 0) return cannotCompute(`the firing order has no cylinder ${name}`);
  const count = order.length;
  const later = behind * count * spacing;
  const marks = marksOf(record, spacing / 2).map((mark) => mark + later);
  const place = placeOfMarks(marks, centres, count);
  if (typeof place !== 'number') return place;
  return order.map((_, at) => order[(first + at - place + count) % count] ?? '');
}

/** By cylinder in the order of their numbers; without a sync channel, hump by hump in the order of time. */
export function byName(
  names: readonly string[] | undefined,
  amounts: readonly Amount[],
  type: QuantityType,
): Members {
  const held: [string, Amount][] = amounts.map((amount, place) => [
    names?.[place] ?? `hump ${place + 1}`,
    amount,
  ]);
  if (names !== undefined) held.sort(([a], [b]) => Number(a) - Number(b));
  return { kind: 'members', by: names === undefined ? 'label' : 'cylinder', type, members: new Map(held) };
}

/** Readings of one stretch of one capture have sources of their own. */
export function sourceOf({ capture, time }: Series, what: string): string {
  return `${capture} ${time[0] ?? 0}..${time[time.length - 1] ?? 0} s, ${what} from cycle to cycle`;
}

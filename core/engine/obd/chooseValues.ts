import type { Answer } from './answer.ts';
import type { Item } from './item.ts';

/** What a recording gives for one signal (or one member of it). */
export interface Chosen {
  readonly signal: string;
  readonly member: string | undefined;
  /** The controller whose value is taken. */
  readonly id: string;
  readonly item: Item;
  /** All that this controller gave for it, in order; the last one is `item`. */
  readonly given: readonly Item[];
  /** The last that each other controller gave. */
  readonly others: readonly { readonly id: string; readonly item: Item }[];
}

/**
 * The value of each signal in the answers of a recording, in the order in which they are first given.
 * Of several controllers the one with the lowest address counts, which is the engine's own (ISO 15765-4: 7E8 of 11
 * bits; in 29 bits and before CAN address 10 comes first); of several answers of it the last.
 */
export function chooseValues(answers: readonly Answer[]): readonly Chosen[] {
  const bySignal = new Map<string, Map<string, Item[]>>();
  for (const { id, items } of answers) {
    for (const item of items) {
      if (item.signal === undefined) continue;
      const key = item.member === undefined ? item.signal : `${item.signal} ${item.member}`;
      const byId = bySignal.get(key) ?? new Map<string, Item[]>();
      bySignal.set(key, byId);
      const given = byId.get(id);
      if (given === undefined) byId.set(id, [item]);
      else given.push(item);
    }
  }
  const chosen: Chosen[] = [];
  for (const byId of bySignal.values()) {
    const [first, ...rest] = [...byId].sort(([a], [b]) => rankOf(a) - rankOf(b));
    const item = first?.[1].at(-1);
    if (first === undefined || item?.signal === undefined) continue;
    const others = rest.flatMap(([id, given]) => {
      const last = given.at(-1);
      return last === undefined ? [] : [{ id, item: last }];
    });
    chosen.push({ signal: item.signal, member: item.member, id: first[0], item, given: first[1], others });
  }
  return chosen;
}

/** Who is heard first; who sends without an address comes last. */
export function rankOf(id: string): number {
  if (id === '') return Number.POSITIVE_INFINITY;
  const address = Number.parseInt(id.length === 3 ? id : id.slice(-2), 16);
  return id.length !== 3 && address === 0x10 ? -1 : address;
}

/** What two controllers may be apart that measured one thing a moment apart, as a share (common practice). */
const momentsApart = 0.03;

/** Whether two controllers give one value: each is asked at a moment of its own, and what moves is no longer the same then. */
export function nearlyTheSame(a: Item, b: Item): boolean {
  if (sayTheSame(a, b)) return true;
  const [one, other] = [a.value, b.value];
  if (one.is !== 'number' || other.is !== 'number' || one.unit !== other.unit) return false;
  if (one.step === 0 || other.step === 0) return false;
  return (
    Math.abs(one.value - other.value) <= momentsApart * Math.max(Math.abs(one.value), Math.abs(other.value))
  );
}

/** Whether two items say the same, as far as their encoding shows it. */
export function sayTheSame({ value: a }: Item, { value: b }: Item): boolean {
  if (a.is === 'number' && b.is === 'number')
    return a.unit === b.unit && Math.abs(a.value - b.value) <= Math.max(a.step, b.step) * 1.000001;
  if (a.is === 'words' && b.is === 'words') return a.text === b.text;
  return a.is === 'absent' || b.is === 'absent';
}

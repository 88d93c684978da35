import type { NeedsBarometer } from '../expression/scope.ts';
import { type Barometer, sameBarometer } from './barometer.ts';

/** What needed a barometer, or one of its states, with the one that it used: a conversion, or a function that lacked it. */
export interface Conversion {
  readonly node: NeedsBarometer;
  readonly state: string | undefined;
  readonly barometer: Barometer;
}

/** What finds the barometer of a conversion. */
export type FindBarometer = (node: NeedsBarometer, state: string | undefined) => Barometer;

/** Looks for a conversion's barometer once, and keeps all of them in the order of their first use. */
export function conversionsWith(find: FindBarometer): {
  readonly barometer: FindBarometer;
  readonly all: () => readonly Conversion[];
} {
  const byNode = new Map<NeedsBarometer, Map<string | undefined, Conversion>>();
  const list: Conversion[] = [];
  return {
    barometer: (node, state) => {
      const states = byNode.get(node) ?? new Map<string | undefined, Conversion>();
      byNode.set(node, states);
      const known = states.get(state);
      if (known !== undefined) return known.barometer;
      const conversion = { node, state, barometer: find(node, state) };
      states.set(state, conversion);
      list.push(conversion);
      return conversion.barometer;
    },
    all: () => list,
  };
}

/** Whether the conversions of an earlier evaluation would use the same barometers now. */
export function sameConversions(before: readonly Conversion[], find: FindBarometer): boolean {
  return before.every(({ node, state, barometer }) => sameBarometer(barometer, find(node, state)));
}

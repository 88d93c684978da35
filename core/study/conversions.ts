import type { Convert } from '../expression/typed.ts';
import { type Barometer, sameBarometer } from './barometer.ts';

/** A conversion, or one of the states that it converts, with the barometer that it used. */
export interface Conversion {
  readonly node: Convert;
  readonly state: string | undefined;
  readonly barometer: Barometer;
}

/** What finds the barometer of a conversion. */
export type FindBarometer = (node: Convert, state: string | undefined) => Barometer;

/** Looks for a conversion's barometer once, and keeps all of them in the order of their first use. */
export function conversionsWith(find: FindBarometer): {
  readonly barometer: FindBarometer;
  readonly all: () => readonly Conversion[];
} {
  const byNode = new Map<Convert, Map<string | undefined, Conversion>>();
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

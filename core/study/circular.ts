import type { Expression } from '../expression/tree.ts';
import type { Span } from '../text/span.ts';
import type { Barometer } from './barometer.ts';
import { childrenOf } from './graph/children.ts';
import { readsOf } from './graph/reads.ts';
import { lookUp } from './names.ts';
import { readingsBehind, type Surroundings } from './surroundings.ts';

/** Functions that turn one kind of pressure into another. */
export const needsBarometer: ReadonlySet<string> = new Set(['absolute', 'gauge', 'vacuum']);

/** A comparison that tests a barometer against itself. */
export interface Circle {
  readonly barometer: string;
  readonly span: Span;
}

/**
 * Finds a comparison of which one side was converted with the very reading that the other side rests on.
 * Two sides converted with the same barometer are no circle: it cancels, and they still test each other.
 */
export function circularBarometer(
  expression: Expression,
  cell: number,
  around: Surroundings,
  barometer: Barometer | undefined,
): Circle | undefined {
  const waiting: Expression[] = [expression];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    for (const [one, other] of sidesOf(node)) {
      const left = sideOf(one, cell, around, barometer);
      const right = sideOf(other, cell, around, barometer);
      const shared = inBoth(left.barometers, right.readings) ?? inBoth(right.barometers, left.readings);
      if (shared !== undefined) return { barometer: shared, span: node.span };
    }
    if (node.kind === 'logic' || node.kind === 'not') waiting.push(...childrenOf(node));
  }
  return undefined;
}

function sidesOf(node: Expression): readonly (readonly [Expression, Expression])[] {
  switch (node.kind) {
    case 'comparison':
    case 'within':
      return [[node.left, node.right]];
    case 'between':
      return [
        [node.of, node.low],
        [node.of, node.high],
      ];
    case 'in':
      return node.high === undefined
        ? [[node.of, node.low]]
        : [
            [node.of, node.low],
            [node.of, node.high],
          ];
    default:
      return [];
  }
}

function sideOf(
  side: Expression,
  cell: number,
  around: Surroundings,
  barometer: Barometer | undefined,
): { readonly readings: ReadonlySet<string>; readonly barometers: ReadonlySet<string> } {
  const reads = readsOf(side);
  const readings = new Set<string>();
  const barometers = new Set<string>();
  if (reads.calls.some((call) => needsBarometer.has(call.name))) {
    for (const name of barometer?.from ?? []) barometers.add(name);
  }
  for (const { parts, spans } of reads.paths) {
    const named = lookUp(around.names, cell, parts, spans);
    for (const name of readingsBehind(named, around)) readings.add(name);
    if (named.kind !== 'definition') continue;
    for (const name of around.done.get(named.definition.id)?.barometer ?? []) barometers.add(name);
  }
  return { readings, barometers };
}

function inBoth(a: ReadonlySet<string>, b: ReadonlySet<string>): string | undefined {
  for (const each of a) if (b.has(each)) return each;
  return undefined;
}

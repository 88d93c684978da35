import type { Expression } from '../expression/tree.ts';
import type { Span } from '../text/span.ts';
import { childrenOf } from './graph/children.ts';
import { dotted } from './graph/paths.ts';
import { readsOf } from './graph/reads.ts';
import { lookUp } from './names.ts';
import type { Supplies } from './supplies.ts';
import { readingsBehind, type Surroundings } from './surroundings.ts';

/** A check whose two sides come from one barometer. */
export interface Circle {
  readonly barometer: string;
  /** Both sides were converted with it; otherwise one was, and the other is built on its reading. */
  readonly both: boolean;
  readonly span: Span;
}

/**
 * Finds a comparison that cannot tell a wrong barometer from a right one: of which one side was converted with the
 * very reading that the other side is built on, or both sides were converted with one, or one side takes the two
 * from each other: `absolute(x) - baro > 0` is `absolute(x) > baro`.
 */
export function circleOf(
  expression: Expression,
  cell: number,
  supplies: Supplies,
  around: Surroundings,
): Circle | undefined {
  if (supplies.barometer.length === 0) return undefined;
  const place: Place = { cell, supplies, around };
  const waiting: Expression[] = [expression];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    for (const [one, other] of sidesOf(node)) {
      const found = sharedBy(one, other, place) ?? sumOfBoth(one, place) ?? sumOfBoth(other, place);
      if (found !== undefined) return { ...found, span: node.span };
    }
    if (node.kind === 'logic' || node.kind === 'not') waiting.push(...childrenOf(node));
  }
  return undefined;
}

/** Where an expression stands, and what it was supplied with there. */
interface Place {
  readonly cell: number;
  readonly supplies: Supplies;
  readonly around: Surroundings;
}

type Shared = Pick<Circle, 'barometer' | 'both'>;

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

function sharedBy(one: Expression, other: Expression, place: Place): Shared | undefined {
  const [left, right] = [sideOf(one, place), sideOf(other, place)];
  const built = inBoth(left.barometers, right.readings) ?? inBoth(right.barometers, left.readings);
  if (built !== undefined) return { barometer: built, both: false };
  const both = inBoth(left.barometers, right.barometers);
  return both === undefined ? undefined : { barometer: both, both: true };
}

/** A sum or difference, here or in a computed name, whose two parts come from one barometer as if they were compared. */
function sumOfBoth(side: Expression, place: Place): Shared | undefined {
  const seen = new Set<string>();
  const waiting: (readonly [Expression, Place])[] = [[side, place]];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const [node, at] = next;
    const path = dotted(node);
    if (path !== undefined) {
      const named = lookUp(at.around.names, at.cell, path.parts, path.spans);
      if (named.kind !== 'definition') continue;
      const { id, cell, source } = named.definition;
      const done = at.around.done.get(id);
      if (done === undefined || done.barometer.length === 0 || seen.has(id)) continue;
      seen.add(id);
      waiting.push([source.expression, { ...at, cell, supplies: done }]);
      continue;
    }
    if (node.kind === 'arithmetic' && (node.operator === '+' || node.operator === '-')) {
      const found = sharedBy(node.left, node.right, at);
      if (found !== undefined && (!found.both || node.operator === '-')) return found;
    }
    for (const child of childrenOf(node)) waiting.push([child, at]);
  }
  return undefined;
}

/** What a side is built on, and what it was converted with. */
function sideOf(
  side: Expression,
  { cell, supplies, around }: Place,
): { readonly readings: ReadonlySet<string>; readonly barometers: ReadonlySet<string> } {
  const readings = new Set<string>();
  const barometers = new Set<string>();
  for (const { node, barometer } of supplies.conversions) {
    if (isWithin(node.span, side.span)) for (const name of barometer.from) barometers.add(name);
  }
  for (const { call, name } of supplies.fromHeader) if (isWithin(call.span, side.span)) readings.add(name);
  for (const { parts, spans } of readsOf(side).paths) {
    const named = lookUp(around.names, cell, parts, spans);
    for (const name of readingsBehind(named, around)) readings.add(name);
    if (named.kind !== 'definition') continue;
    const done = around.done.get(named.definition.id);
    for (const name of done?.header ?? []) readings.add(name);
    for (const name of done?.barometer ?? []) barometers.add(name);
  }
  return { readings, barometers };
}

const isWithin = (part: Span, whole: Span): boolean => whole.start <= part.start && part.end <= whole.end;

function inBoth(a: ReadonlySet<string>, b: ReadonlySet<string>): string | undefined {
  for (const each of a) if (b.has(each)) return each;
  return undefined;
}

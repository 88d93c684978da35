import type { Expression } from '../expression/tree.ts';
import type { Span } from '../text/span.ts';
import { childrenOf } from './graph/children.ts';
import { dotted } from './graph/paths.ts';
import { readsOf } from './graph/reads.ts';
import { lookUp } from './names.ts';
import type { Supplies } from './supplies.ts';
import { readingsBehind, type Surroundings } from './surroundings.ts';

/** A barometer that is set against itself: what is built on its reading, or what was converted with it. */
export interface Shared {
  readonly barometer: string;
  /** Both sides were converted with it; otherwise one was, and the other is built on its reading. */
  readonly both: boolean;
}

/** A check whose two sides come from one barometer. */
export interface Circle extends Shared {
  readonly span: Span;
}

/** Where an expression stands, and what it was supplied with there. */
interface Place {
  readonly cell: number;
  readonly supplies: Supplies;
  readonly around: Surroundings;
}

/**
 * Finds a comparison that cannot tell a wrong barometer from a right one: of which one side was converted with the
 * very reading that the other side is built on, or both sides were converted with one, or one side takes the two
 * from each other: `absolute(x) - baro > 0` is `absolute(x) > baro`.
 */
export function circleOf(expression: Expression, place: Place): Circle | undefined {
  if (place.supplies.barometer.length === 0) return undefined;
  const waiting: Expression[] = [expression];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    for (const [one, other] of sidesOf(node)) {
      const found = sharedBy(one, other, place) ?? sharedInside(one, place) ?? sharedInside(other, place);
      if (found !== undefined) return { ...found, span: node.span };
    }
    if (node.kind === 'logic' || node.kind === 'not') waiting.push(...childrenOf(node));
  }
  return undefined;
}

/**
 * What, here or in a computed name, comes from one barometer as if it were compared:
 * the terms of a sum, or a barometer that is converted with itself.
 */
export function sharedInside(expression: Expression, place: Place): Shared | undefined {
  if (place.supplies.barometer.length === 0) return undefined;
  const { cell, around } = place;
  const waiting: Expression[] = [expression];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    const path = dotted(node);
    if (path !== undefined) {
      const named = lookUp(around.names, cell, path.parts, path.spans);
      const done = named.kind === 'definition' ? around.done.get(named.definition.id) : undefined;
      if (done?.sharedInside !== undefined) return done.sharedInside;
      continue;
    }
    const terms = termsOf(node);
    const found = sharedByTerms(terms, place) ?? convertedWithItself(node, place);
    if (found !== undefined) return found;
    waiting.push(...(terms.length > 1 ? terms.map(({ term }) => term) : childrenOf(node)));
  }
  return undefined;
}

interface Term {
  readonly term: Expression;
  /** It is taken away. */
  readonly minus: boolean;
}

/** What a sum adds and takes away; of anything else, itself. */
function termsOf(sum: Expression): readonly Term[] {
  const terms: Term[] = [];
  const waiting: Term[] = [{ term: sum, minus: false }];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const { term, minus } = next;
    if (term.kind === 'arithmetic' && (term.operator === '+' || term.operator === '-')) {
      waiting.push({ term: term.right, minus: minus !== (term.operator === '-') });
      waiting.push({ term: term.left, minus });
    } else terms.push(next);
  }
  return terms;
}

/** What was converted with one barometer cancels only where it is taken from each other. */
function sharedByTerms(terms: readonly Term[], place: Place): Shared | undefined {
  if (terms.length < 2) return undefined;
  const readings = new Set<string>();
  const added = new Set<string>();
  const taken = new Set<string>();
  for (const { term, minus } of terms) {
    const side = sideOf(term, place);
    const built =
      inBoth(side.barometers, readings) ?? inBoth(side.readings, added) ?? inBoth(side.readings, taken);
    if (built !== undefined) return { barometer: built, both: false };
    const both = inBoth(side.barometers, minus ? added : taken);
    if (both !== undefined) return { barometer: both, both: true };
    for (const each of side.readings) readings.add(each);
    for (const each of side.barometers) (minus ? taken : added).add(each);
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

function sharedBy(one: Expression, other: Expression, place: Place): Shared | undefined {
  const [left, right] = [sideOf(one, place), sideOf(other, place)];
  const built = inBoth(left.barometers, right.readings) ?? inBoth(right.barometers, left.readings);
  if (built !== undefined) return { barometer: built, both: false };
  const both = inBoth(left.barometers, right.barometers);
  return both === undefined ? undefined : { barometer: both, both: true };
}

/** `vacuum(koeo.map)` with `koeo.map` as the barometer is 0, whatever was read. */
function convertedWithItself(node: Expression, place: Place): Shared | undefined {
  if (node.kind !== 'call') return undefined;
  const used = place.supplies.conversions.filter(
    ({ node: { kind, span } }) => kind === 'convert' && span.start === node.span.start,
  );
  for (const { value } of used.length === 0 ? [] : node.arguments) {
    const { readings } = sideOf(value, place);
    for (const { barometer } of used) {
      const itself = barometer.from.find((each) => readings.has(each));
      if (itself !== undefined) return { barometer: itself, both: false };
    }
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
    if (node.kind === 'convert' && isWithin(node.span, side.span))
      for (const name of barometer.from) barometers.add(name);
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

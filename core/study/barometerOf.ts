import { evaluateNode } from '../expression/evaluate.ts';
import type { NeedsBarometer } from '../expression/scope.ts';
import type { Type } from '../expression/type.ts';
import type { Typed } from '../expression/typed.ts';
import type { Absent } from '../expression/value.ts';
import { type Barometer, barometerAt, commonBarometer } from './barometer.ts';
import type { Definition } from './cellFacts.ts';
import { readsOf } from './graph/reads.ts';
import { lookUp } from './names.ts';
import type { Evaluated, Surroundings } from './surroundings.ts';
import type { Reading } from './types.ts';
import { type View, viewOf } from './view.ts';

/**
 * The barometer that a conversion uses, or a function that lacks one: that of the readings that it is about, each from
 * its own cell and state, and through computed names. Where they were not all measured under one, none is certain.
 */
export function barometerOf(
  node: NeedsBarometer,
  state: string | undefined,
  view: View,
  around: Surroundings,
): Barometer {
  const found = new Set<Barometer>();
  const of = node.kind === 'convert' ? node.of : node;
  for (const { cell, column } of readingsIn(of, state, view, around)) {
    found.add(barometerAt(around.barometers, cell, column));
  }
  if (found.size === 0) found.add(barometerAt(around.barometers, view.cell, undefined));
  return commonBarometer(found);
}

/** A value whose readings are being collected. */
interface Walk {
  /** Names the computed name that it is, with its state; undefined for the value that was asked for. */
  readonly key: string | undefined;
  readonly view: View;
  readonly waiting: Part[];
  readonly readings: Set<Reading>;
}

/** What computed names were counted from, in one study of a case: each is walked once. */
const known = new WeakMap<Surroundings, Map<string, ReadonlySet<Reading>>>();

/** The readings that a value was counted from, in the order of the text; of a value by state, those of one state. */
function readingsIn(
  node: Typed,
  asked: string | undefined,
  view: View,
  around: Surroundings,
): ReadonlySet<Reading> {
  const names = known.get(around) ?? new Map<string, ReadonlySet<Reading>>();
  known.set(around, names);
  const root: Walk = { key: undefined, view, waiting: [{ node, asked }], readings: new Set() };
  // With a list of its own: a long chain of computed names cannot exhaust the call stack.
  const walks: Walk[] = [root];
  for (let walk = walks.at(-1); walk !== undefined; walk = walks.at(-1)) {
    const part = walk.waiting.pop();
    if (part !== undefined) {
      const inner = step(part, walk, names, around);
      if (inner !== undefined) walks.push(inner);
      continue;
    }
    walks.pop();
    if (walk.key !== undefined) names.set(walk.key, walk.readings);
    for (const each of walk.readings) walks.at(-1)?.readings.add(each);
  }
  return root.readings;
}

/** Goes on by one part; gives the computed name that has to be walked first, if there is one. */
function step(
  { node, asked }: Part,
  { view, waiting, readings }: Walk,
  names: ReadonlyMap<string, ReadonlySet<Reading>>,
  around: Surroundings,
): Walk | undefined {
  const state = isByState(node.type) ? asked : undefined;
  if (node.kind !== 'read') {
    // The last comes off first: the parts come in the order of the text.
    waiting.push(...partsOf(node, state, view).reverse());
    return undefined;
  }
  const add = (reading: Reading): void => {
    if (reading.from !== 'header' && reading.from !== 'reference') readings.add(reading);
  };
  const named = view.named.get(node.id);
  if (named?.kind === 'reading') add(named.reading);
  if (named?.kind === 'states') {
    for (const [name, reading] of named.readings) if (state === undefined || name === state) add(reading);
  }
  if (named?.kind !== 'definition') return undefined;
  const { id } = named.definition;
  const key = state === undefined ? id : `${id} ${state}`;
  const found = names.get(key);
  for (const each of found ?? []) readings.add(each);
  const done = around.done.get(id);
  if (found !== undefined || done === undefined) return undefined;
  const inside = viewInside(named.definition, done, around);
  return { key, view: inside, waiting: [{ node: done.typed.root, asked: state }], readings: new Set() };
}

/** A computed name's own view; its conversions have their barometers already. */
function viewInside({ cell, source }: Definition, done: Evaluated, around: Surroundings): View {
  const { paths } = readsOf(source.expression);
  const all = paths.map(({ parts, spans }) => lookUp(around.names, cell, parts, spans));
  return viewOf(cell, all, around, (node, state) => {
    const used = done.conversions.find((each) => each.node === node && each.state === state);
    return used?.barometer.value ?? unused;
  });
}

interface Part {
  readonly node: Typed;
  readonly asked: string | undefined;
}

/** The parts of a value that say what it is counted from. */
function partsOf(node: Exclude<Typed, { kind: 'read' }>, asked: string | undefined, view: View): Part[] {
  switch (node.kind) {
    case 'taken':
    case 'field':
    case 'negative':
    case 'power':
    case 'cut':
    case 'pick':
    case 'convert':
      return [{ node: node.of, asked }];
    case 'entry': {
      const index = isByState(node.of.type) ? evaluateNode(node.index, view.environment) : undefined;
      return [{ node: node.of, asked: index?.kind === 'words' ? index.text : undefined }];
    }
    case 'apply':
      return counted(
        node.supplies.flatMap((each) => (each.from === 'call' ? [each.value] : [])),
        asked,
      );
    case 'sum':
      return counted([node.left, node.right], asked);
    case 'choice': {
      const condition = evaluateNode(node.condition, view.environment);
      if (condition.kind !== 'truth') return [];
      if (condition.verdict === 'holds') return [{ node: node.yes, asked }];
      return condition.verdict === 'fails' ? [{ node: node.no, asked }] : [];
    }
    case 'broken':
    case 'constant':
    case 'literal':
    case 'compare':
    case 'between':
    case 'within':
    case 'in range':
    case 'same word':
    case 'opposite':
    case 'both':
      return [];
  }
}

/** A sum is counted from where its pressures are; what is only added to them or multiplies them says nothing of that. */
function counted(nodes: readonly Typed[], asked: string | undefined): Part[] {
  const pressures = nodes.filter(({ type }) => {
    const kind = 'quantity' in type ? type.quantity.kind : undefined;
    return kind === 'absolute' || kind === 'gauge' || kind === 'vacuum';
  });
  return (pressures.length > 0 ? pressures : nodes).map((node) => ({ node, asked }));
}

/** A condition that was decided has asked for all its barometers. */
const unused: Absent = { kind: 'absent', status: 'cannot compute', why: 'it was not computed' };

const isByState = (type: Type): boolean => type.kind === 'members' && type.by === 'state';

import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import { sourcesKept } from '../expression/tooManySources.ts';
import type { Definition } from './cellFacts.ts';
import { type Crowd, refusedHere, whileThereIsRoom } from './crowded.ts';
import { evaluateSource } from './evaluateSource.ts';
import { type Circle, membersFrom, orderByNeed } from './graph/order.ts';
import { readsOf } from './graph/reads.ts';
import { lookUp, type Names } from './names.ts';
import type { Surroundings } from './surroundings.ts';

/** The computed names of a case in an order in which each comes after what it needs. */
export interface DefinitionOrder {
  readonly order: readonly string[];
  /** The place of each in that order. */
  readonly rank: ReadonlyMap<string, number>;
  /** The circle of each member that has one. */
  readonly circles: ReadonlyMap<string, Circle>;
  /** What each id stands for: where cells share a name, the first one's. */
  readonly definitions: ReadonlyMap<string, Pick<Definition, 'id' | 'name' | 'cell'>>;
}

export function orderDefinitions(names: Names): DefinitionOrder {
  const definitions = new Map<string, Definition>();
  const needs = new Map<string, string[]>();
  for (const cell of names.cells) {
    for (const definition of cell.definitions) {
      if (definitions.has(definition.id)) continue;
      definitions.set(definition.id, definition);
      needs.set(definition.id, neededBy(definition, names));
    }
  }
  const { order, circles } = orderByNeed(needs);
  return { order, rank: new Map(order.map((id, place) => [id, place])), circles, definitions };
}

/**
 * Evaluates the computed names of the cells, and says which of them need themselves. `kept` is what all names of the case
 * kept for their sources before: when they come to keep too much, it depends on all of them for which there is no room.
 */
export function evaluateDefinitions(
  around: Surroundings,
  { rank, circles, definitions }: DefinitionOrder,
  cells: ReadonlySet<number>,
  kept: number,
): { readonly found: ReadonlyMap<number, readonly Diagnostic[]>; readonly kept: number } {
  const wanted = new Map<string, Definition>();
  const crowd: Crowd = { kept };
  for (const cell of cells) {
    for (const before of around.done.take(cell)) crowd.kept -= sourcesKept(before.value);
    for (const definition of around.names.cells[cell]?.definitions ?? []) {
      if (definitions.get(definition.id)?.cell !== cell) continue;
      wanted.set(definition.id, definition);
    }
  }
  const found = new Map<number, Diagnostic[]>();
  const tell = (cell: number, diagnostic: Diagnostic): void => {
    const here = found.get(cell);
    if (here === undefined) found.set(cell, [diagnostic]);
    else here.push(diagnostic);
  };
  const inOrder = [...wanted.values()].sort((a, b) => (rank.get(a.id) ?? 0) - (rank.get(b.id) ?? 0));
  for (const definition of inOrder) {
    const { id, source, cell } = definition;
    const circle = circles.get(id);
    if (circle === undefined) {
      const whole = evaluateSource(source, { cell, name: id }, around);
      const evaluated = whileThereIsRoom(whole, crowd);
      if (evaluated !== whole) around.now.get(cell)?.set(source.expression, evaluated);
      around.done.set(id, evaluated);
      for (const each of refusedHere(source, cell, evaluated.value, around)) tell(cell, each);
      continue;
    }
    const members = membersFrom(circle, mostNamed).map((each) => spoken(definitions.get(each) ?? definition));
    const more = circle.members.length - members.length;
    tell(cell, diagnose('cycle', source.node.span, { members, more }));
  }
  return { found, kept: crowd.kept };
}

/** How many names of a circle are named. */
const mostNamed = 8;

/** A computed name as its author writes it. */
function spoken({ id, name, cell }: Pick<Definition, 'id' | 'name' | 'cell'>): string {
  return id === `${cell + 1}.${name}` ? name : id;
}

function neededBy(definition: Definition, names: Names): string[] {
  const needs: string[] = [];
  for (const { parts, spans } of readsOf(definition.source.expression).paths) {
    const named = lookUp(names, definition.cell, parts, spans);
    if (named.kind === 'definition') needs.push(named.definition.id);
  }
  return needs;
}

import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import type { Definition } from './cellFacts.ts';
import { evaluateSource } from './evaluateSource.ts';
import { orderByNeed } from './graph/order.ts';
import { readsOf } from './graph/reads.ts';
import { lookUp, type Names } from './names.ts';
import type { Surroundings } from './surroundings.ts';

/** Evaluates every computed name in an order in which each comes after what it needs. */
export function evaluateDefinitions(around: Surroundings): readonly Diagnostic[][] {
  const definitions = new Map<string, Definition>();
  const needs = new Map<string, string[]>();
  for (const cell of around.names.cells) {
    for (const definition of cell.definitions) {
      if (definitions.has(definition.id)) continue;
      definitions.set(definition.id, definition);
      needs.set(definition.id, neededBy(definition, around.names));
    }
  }
  const { order, circles } = orderByNeed(needs);
  const found: Diagnostic[][] = around.names.cells.map(() => []);
  for (const id of order) {
    const definition = definitions.get(id);
    if (definition === undefined) continue;
    const circle = circles.get(id);
    if (circle !== undefined) {
      const members = circle.map((each) => spoken(definitions.get(each) ?? definition));
      found[definition.cell]?.push(diagnose('cycle', definition.source.node.span, { members }));
      continue;
    }
    around.done.set(id, evaluateSource(definition.source, { cell: definition.cell, name: id }, around));
  }
  return found;
}

/** A computed name as its author writes it. */
function spoken({ id, name, cell }: Definition): string {
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

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type KindName, kindOf } from '../../core/casefile/kinds/kinds.ts';
import { readPlain } from '../../core/casefile/readPlain.ts';
import { readSimple } from '../../core/casefile/readSimple.ts';
import { readShape } from '../../core/casefile/schema.ts';
import { splitStream } from '../../core/casefile/stream.ts';
import type { Entry, MapNode, Node } from '../../core/casefile/tree.ts';
import { samples } from '../support/samples.ts';
import { exampleCase } from './exampleCase.ts';

const trees = [exampleCase, ...samples.values()].flatMap((text) =>
  splitStream(text).cells.flatMap((cell) => readSimple(cell.text) ?? []),
);

/** What is read straight from the table is what the schema reads; what is not, the schema finds fault with. */
function expectSame(tree: MapNode): 'read' | 'left' {
  const name = tree.entries[0]?.key.text ?? '';
  if (kindOf(name) === undefined) return 'left';
  const kind = name as KindName;
  const plain = readPlain(kind, tree);
  const shape = readShape(kind, tree);
  const context = JSON.stringify(tree);
  if (plain !== undefined) {
    expect(shape, context).toEqual({ cell: plain });
    return 'read';
  }
  expect('problems' in shape && shape.problems.length > 0, context).toBe(true);
  return 'left';
}

describe('a cell read straight from the table of kinds', () => {
  it('is the one that the schema reads, in every sample', () => {
    expect(trees.length).toBeGreaterThan(150);
    expect(trees.map(expectSame)).not.toContain('left');
  });

  it('is left to the schema when a part has another shape, and only then', () => {
    const seen = { read: 0, left: 0 };
    const part = fc.constantFrom(...trees.flatMap(nodesOf));
    fc.assert(
      fc.property(fc.constantFrom(...trees), fc.nat(), part, (tree, at, other) => {
        const nodes = nodesOf(tree).slice(1);
        const changed = nodes[at % nodes.length];
        if (changed !== undefined) seen[expectSame(replaced(tree, changed, other) as MapNode)]++;
      }),
      { numRuns: 5000 },
    );
    expect(seen.read).toBeGreaterThan(500);
    expect(seen.left).toBeGreaterThan(500);
  });
});

/** The node and all that are in it. */
function nodesOf(node: Node): readonly Node[] {
  if (node.kind === 'text') return [node];
  const inside = node.kind === 'list' ? node.items : node.entries.map((entry) => entry.value);
  return [node, ...inside.flatMap(nodesOf)];
}

function replaced(node: Node, old: Node, by: Node): Node {
  if (node === old) return by;
  if (node.kind === 'text') return node;
  if (node.kind === 'list') return { ...node, items: node.items.map((item) => replaced(item, old, by)) };
  const entries = node.entries.map(
    (entry): Entry => ({ key: entry.key, value: replaced(entry.value, old, by) }),
  );
  return { ...node, entries };
}

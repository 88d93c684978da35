import { type Checking, report } from './checking.ts';
import type { FunctionRow } from './functionRow.ts';
import type { Call, Expression } from './tree.ts';

/**
 * Warns of a value that stands where another parameter's would, going by its name: `g.co` where `co2` is taken.
 * Their types may be the same, and then nobody would notice. What is given by its parameter's name is meant.
 */
export function reportSwapped(checking: Checking, row: FunctionRow, tree: Call, signature: string): void {
  for (const [at, { name, value }] of tree.arguments.entries()) {
    if (name !== undefined) continue;
    const called = nameOf(value);
    const here = row.parameters[at];
    if (called === undefined || here === undefined || here.name === called) continue;
    if (!row.parameters.some((each) => each.name === called)) continue;
    report(checking, 'argument-of-another', value.span, {
      name: row.name,
      called,
      parameter: here.name,
      meaning: here.meaning,
      signature,
    });
  }
}

/** The last part of a name: `co` of `tail.co`. */
function nameOf(tree: Expression): string | undefined {
  return tree.kind === 'name' || tree.kind === 'member' ? tree.name : undefined;
}

import type { Diagnostic } from '../../diagnostics/diagnostic.ts';
import type { MapNode } from '../tree.ts';

export interface TreeTraps {
  readonly tree: MapNode;
  readonly diagnostics: readonly Diagnostic[];
}

export function trapsInTree(tree: MapNode, _text: string): TreeTraps {
  return { tree, diagnostics: [] };
}

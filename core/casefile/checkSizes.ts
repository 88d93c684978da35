import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import { limits } from './limits.ts';
import type { Node } from './tree.ts';

/** Lists, maps and texts that are too long to be meant. Short cells cannot hold any. */
export function checkSizes(tree: Node, text: string): readonly Diagnostic[] {
  if (text.length < limits.entries) return [];
  const found: Diagnostic[] = [];
  visit(tree);
  return found;

  function visit(node: Node): void {
    if (node.kind === 'text') {
      if (node.text.length > limits.textLength) {
        const facts = { length: `${node.text.length}`, most: `${limits.textLength}` };
        found.push(diagnose('text-too-long', { start: node.span.start, end: node.span.start + 1 }, facts));
      }
      return;
    }
    const parts = node.kind === 'list' ? node.items : node.entries.map((entry) => entry.value);
    if (parts.length > limits.entries) {
      const span = { start: node.span.start, end: node.span.start + 1 };
      found.push(diagnose('too-many-entries', span, { entries: parts.length, most: limits.entries }));
    }
    for (const part of parts) visit(part);
  }
}

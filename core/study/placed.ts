import { sourceSpan, type TextNode } from '../casefile/tree.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';

/** Findings made in a scalar's decoded text, moved to where that text stands in the cell, with their fixes. */
export function placedIn(node: TextNode, diagnostics: readonly Diagnostic[]): readonly Diagnostic[] {
  if (diagnostics.length === 0) return diagnostics;
  return diagnostics.map((diagnostic) => ({
    ...diagnostic,
    span: sourceSpan(node, diagnostic.span),
    fixes: diagnostic.fixes.map((fix) => ({
      ...fix,
      edits: fix.edits.map((edit) => ({ ...edit, span: sourceSpan(node, edit.span) })),
    })),
  }));
}

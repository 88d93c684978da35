import type { Expression } from '../../expression/tree.ts';
import type { Span } from '../../text/span.ts';

/** A dotted name where it stands in an expression. */
export interface Path {
  readonly parts: readonly string[];
  readonly spans: readonly Span[];
}

/** The dotted name that a node is as a whole, if it is one: `a`, `a.b`, `a.b.c`. */
export function dotted(node: Expression): Path | undefined {
  const parts: string[] = [];
  const spans: Span[] = [];
  let at = node;
  while (at.kind === 'member') {
    parts.push(at.name);
    spans.push(at.nameSpan);
    at = at.of;
  }
  if (at.kind !== 'name') return undefined;
  parts.push(at.name);
  spans.push(at.span);
  return { parts: parts.reverse(), spans: spans.reverse() };
}

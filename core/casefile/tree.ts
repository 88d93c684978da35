import type { Span } from '../text/span.ts';

/**
 * A cell's YAML as a plain tree with places. Every scalar is the text that stands there.
 * Spans count in the cell's text.
 */
export type Node = TextNode | MapNode | ListNode;

export type TextStyle = 'plain' | 'single quoted' | 'double quoted' | 'literal' | 'folded';

export interface TextNode {
  readonly kind: 'text';
  /** Decoded: quotes, escapes, folding and block indentation taken away. */
  readonly text: string;
  readonly style: TextStyle;
  readonly span: Span;
  /**
   * Where the decoded text's units stand in the cell: ascending pairs (decoded offset, cell offset).
   * Between two pairs both advance together. Use `sourceOffset` and `sourceSpan`.
   */
  readonly map: readonly (readonly [number, number])[];
}

export interface Entry {
  readonly key: TextNode;
  /** An empty text node at the key's end where the value is missing. */
  readonly value: Node;
}

export interface MapNode {
  readonly kind: 'map';
  readonly entries: readonly Entry[];
  readonly flow: boolean;
  readonly span: Span;
}

export interface ListNode {
  readonly kind: 'list';
  readonly items: readonly Node[];
  readonly flow: boolean;
  readonly span: Span;
}

/** The place in the cell of an offset in the decoded text. */
export function sourceOffset(node: TextNode, offset: number): number {
  const pair = pairAt(node, offset);
  if (pair === undefined) return node.span.start;
  return Math.min(pair[1] + (offset - pair[0]), node.span.end);
}

/** The place in the cell of a stretch of the decoded text. A character that was escaped is covered whole. */
export function sourceSpan(node: TextNode, of: Span): Span {
  const start = sourceOffset(node, of.start);
  if (of.end <= of.start) return { start, end: start };
  const behind = pairAt(node, of.end);
  // What follows a line break starts on the next line; what follows anything else starts right behind it.
  if (behind?.[0] === of.end && !isWhite(node.text, of.end - 1))
    return { start, end: Math.max(start, behind[1]) };
  return { start, end: sourceOffset(node, of.end - 1) + 1 };
}

function pairAt(node: TextNode, offset: number): readonly [number, number] | undefined {
  let low = 0;
  let high = node.map.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((node.map[middle]?.[0] ?? 0) <= offset) low = middle;
    else high = middle - 1;
  }
  return node.map[low];
}

function isWhite(text: string, at: number): boolean {
  const unit = text[at];
  return unit === '\n' || unit === ' ' || unit === '\t';
}

export function entryOf(node: MapNode, key: string): Entry | undefined {
  return node.entries.find((entry) => entry.key.text === key);
}

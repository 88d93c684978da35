import type { Node } from '../casefile/tree.ts';
import { sourceSpan } from '../casefile/tree.ts';
import type { Study } from '../study/types.ts';
import { contains, type Span } from '../text/span.ts';
import { decodedOffset, expressionOf, nodesAround } from './expressionAt.ts';
import { entrySpan, spotAt } from './spots.ts';
import { standingOf } from './standing.ts';

/** What a growing selection takes, from the word at the offset to the whole cell. */
export function selections(study: Study, cell: number, offset: number): readonly Span[] {
  const standing = standingOf(study, cell);
  if (standing === undefined) return [];
  const { text, tree } = standing;
  const found: Span[] = [{ start: 0, end: text.length }];
  if (tree !== undefined) inNode(tree, offset, found);
  const spot = spotAt(standing, offset);
  if (spot !== undefined) {
    found.push(spot.node.span);
    if (spot.role === 'expression') {
      const at = decodedOffset(spot.node, offset);
      for (const node of nodesAround(expressionOf(standing, spot.node), at)) {
        found.push(sourceSpan(spot.node, node.span));
      }
    }
  }
  const word = wordAt(text, offset);
  if (word !== undefined) found.push(word);
  return nested(found);
}

function inNode(node: Node, offset: number, found: Span[]): void {
  found.push(node.span);
  if (node.kind === 'map') {
    for (const { key, value } of node.entries) {
      const whole = entrySpan(key, value);
      if (!contains(whole, offset)) continue;
      found.push(whole);
      if (contains(key.span, offset)) found.push(key.span);
      else if (contains(value.span, offset)) inNode(value, offset, found);
      return;
    }
  } else if (node.kind === 'list') {
    const item = node.items.find((each) => contains(each.span, offset));
    if (item !== undefined) inNode(item, offset, found);
  }
}

function wordAt(text: string, offset: number): Span | undefined {
  const before = /[\p{L}\p{N}_]*$/u.exec(text.slice(0, offset))?.[0].length ?? 0;
  const after = /^[\p{L}\p{N}_]*/u.exec(text.slice(offset))?.[0].length ?? 0;
  return before + after === 0 ? undefined : { start: offset - before, end: offset + after };
}

/** Smallest first, each strictly within the next; what does not fit in is left out. */
function nested(spans: readonly Span[]): readonly Span[] {
  const kept: Span[] = [];
  const ordered = [...spans].sort((a, b) => a.end - a.start - (b.end - b.start));
  for (const span of ordered) {
    const last = kept[kept.length - 1];
    if (
      last === undefined ||
      (span.start <= last.start && span.end >= last.end && span.end - span.start > last.end - last.start)
    ) {
      kept.push(span);
    }
  }
  return kept;
}

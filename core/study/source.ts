import type { TextNode } from '../casefile/tree.ts';
import { parseExpression } from '../expression/parse.ts';
import type { Source } from './cellFacts.ts';
import { placedIn } from './placed.ts';

/** Parsed once for each text node, however often its cell is looked at again. */
const parsed = new WeakMap<TextNode, Source>();

export function sourceOf(node: TextNode): Source {
  let source = parsed.get(node);
  if (source === undefined) {
    const { value, diagnostics } = parseExpression(node.text);
    source = { node, expression: value, diagnostics: placedIn(node, diagnostics) };
    parsed.set(node, source);
  }
  return source;
}

/** An expression as it stands, on one line. */
export function onOneLine(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}

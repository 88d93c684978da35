import type { TextNode } from '../casefile/tree.ts';
import type { Found } from '../diagnostics/diagnostic.ts';
import { parseExpression } from '../expression/parse.ts';
import type { Expression } from '../expression/tree.ts';
import type { Source } from './cellFacts.ts';

/** Parsed expressions by their text. */
export type Parsed = ReadonlyMap<string, Found<Expression>>;

/** Turns a text node into an expression; a text that was parsed before gives the very same expression. */
export type Parse = (node: TextNode) => Source;

/** A parser that knows what was parsed before, and collects what this study needs. */
export function parserKnowing(before: Parsed): { readonly parse: Parse; readonly parsed: Parsed } {
  const parsed = new Map<string, Found<Expression>>();
  const parse = (node: TextNode): Source => {
    let found = parsed.get(node.text);
    if (found === undefined) {
      found = before.get(node.text) ?? parseExpression(node.text);
      parsed.set(node.text, found);
    }
    return {
      node,
      text: onOneLine(node.text),
      expression: found.value,
      diagnostics: found.diagnostics,
    };
  };
  return { parse, parsed };
}

/** An expression as it stands, on one line. */
export function onOneLine(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}

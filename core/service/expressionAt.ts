import { sourceSpan, type TextNode } from '../casefile/tree.ts';
import { parseExpression } from '../expression/parse.ts';
import type { Expression } from '../expression/tree.ts';
import { childrenOf } from '../study/graph/children.ts';
import type { Span } from '../text/span.ts';
import type { Standing } from './standing.ts';

/** The expression that a text is; the study's own where it has read it. */
export function expressionOf(standing: Standing, node: TextNode): Expression {
  return (standing.study.memo.parsed.get(node.text) ?? parseExpression(node.text)).value;
}

/** Whether an expression can be read whole; what hangs on a mistake is not worth changing. */
export function isWhole({ study }: Standing, node: TextNode): boolean {
  return (study.memo.parsed.get(node.text) ?? parseExpression(node.text)).diagnostics.length === 0;
}

/** The offset in a text's decoded words of a place in the cell: the first that stands at or behind it. */
export function decodedOffset(node: TextNode, offset: number): number {
  let low = 0;
  let high = node.text.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (placeOf(node, middle) < offset) low = middle + 1;
    else high = middle;
  }
  return low;
}

const placeOf = (node: TextNode, at: number): number => sourceSpan(node, { start: at, end: at }).start;

/** The nodes of an expression around an offset in its text, the whole first, the smallest last. */
export function nodesAround(root: Expression, offset: number): readonly Expression[] {
  const around: Expression[] = [];
  let at: Expression | undefined = holds(root.span, offset) ? root : undefined;
  while (at !== undefined) {
    around.push(at);
    at = childrenOf(at).find((each) => holds(each.span, offset));
  }
  return around;
}

const holds = (of: Span, offset: number): boolean => of.start <= offset && offset <= of.end;

/** Every node of an expression, parents before their parts, in the order of the text. */
export function everyNode(root: Expression, visit: (node: Expression) => void): void {
  const waiting: Expression[] = [root];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    visit(node);
    waiting.push(...childrenOf(node).reverse());
  }
}

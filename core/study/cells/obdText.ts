import { sourceOffset, type TextNode } from '../../casefile/tree.ts';

/**
 * The recording of a cell as one text with places: the items of a list one below the other, and the lines of a text
 * as they stand in the cell, whether YAML keeps its line breaks (`|`) or makes spaces of them.
 */
export function answersText(nodes: readonly TextNode[], cellText: string): TextNode | undefined {
  const [first] = nodes;
  const last = nodes[nodes.length - 1];
  if (first === undefined || last === undefined) return undefined;
  let text = '';
  const map: (readonly [number, number])[] = [];
  for (const node of nodes) {
    if (text !== '') text += '\n';
    for (const [decoded, source] of node.map) map.push([text.length + decoded, source]);
    text += withItsLines(node, cellText);
  }
  const span = { start: first.span.start, end: last.span.end };
  return { kind: 'text', text, style: 'literal', span, map };
}

/** Where a space stands for a line break, the line break. */
function withItsLines(node: TextNode, cellText: string): string {
  if (node.style === 'literal') return node.text;
  let text = '';
  let done = 0;
  for (const [decoded, source] of node.map) {
    const space = decoded - 1;
    if (space < done || node.text[space] !== ' ') continue;
    if (!/[\r\n]/.test(cellText.slice(sourceOffset(node, space), source))) continue;
    text += `${node.text.slice(done, space)}\n`;
    done = decoded;
  }
  return text + node.text.slice(done);
}

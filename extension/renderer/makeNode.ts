import { harmless } from '../../core/report/harmless.ts';
import type { Markup } from '../../core/report/markup/markup.ts';

/** Markup as nodes of the page. Text stays text: nothing is read as HTML. */
export function makeNode(markup: Markup, verbatim = false): ChildNode {
  if (typeof markup === 'string') {
    const text = harmless(markup);
    return document.createTextNode(verbatim ? text : unbroken(text));
  }
  const { tag, attributes, children } = markup;
  const node = drawn.has(tag)
    ? document.createElementNS('http://www.w3.org/2000/svg', tag)
    : document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) node.setAttribute(name, harmless(value));
  const inCode = verbatim || tag === 'code' || tag === 'pre';
  node.append(...children.map((child) => makeNode(child, inCode)));
  return node;
}

const drawn: ReadonlySet<string> = new Set([
  'svg',
  'path',
  'g',
  'line',
  'rect',
  'circle',
  'text',
  'tspan',
  'defs',
  'clipPath',
  'desc',
]);

/** A line ends neither between a number and its unit nor inside a range or before a ± (common practice in print). */
function unbroken(text: string): string {
  return text
    .replace(/(\d|±) (?=[%°\p{L}\d±])/gu, '$1\u00a0')
    .replace(/(\S) (?=± )/g, '$1\u00a0')
    .replaceAll(' .. ', '\u00a0..\u00a0');
}

import type { Markup } from '../markup/markup.ts';
import { escapeHtml } from './escape.ts';

/** Markup as HTML; large parts end with a line break, where one means nothing. */
export function writeMarkup(markup: Markup): string {
  if (typeof markup === 'string') return escapeHtml(markup);
  const { tag, attributes, children } = markup;
  const written = Object.entries(attributes).map(([name, value]) => ` ${name}="${escapeHtml(value)}"`);
  const opening = `<${tag}${written.join('')}>`;
  if (tag === 'img' || tag === 'wbr') return opening;
  return `${opening}${children.map(writeMarkup).join('')}</${tag}>${breaksLine.has(tag) ? '\n' : ''}`;
}

const breaksLine: ReadonlySet<string> = new Set([
  'aside',
  'caption',
  'dd',
  'div',
  'dl',
  'figure',
  'li',
  'ol',
  'pre',
  'table',
  'tbody',
  'thead',
  'tr',
  'ul',
]);

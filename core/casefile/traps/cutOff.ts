import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { shortened } from '../shortened.ts';
import type { TextNode } from '../tree.ts';
import { quoteFix } from './quoted.ts';
import { meanings } from './sentence.ts';

/** `Smoke at injector #3`: what follows ` #` in a free sentence is taken for a remark. */
export function cutOffTrap(node: TextNode, text: string): Diagnostic | undefined {
  if (node.style !== 'plain') return undefined;
  const lost = remarkAfter(text, node.span.end);
  if (lost === undefined) return undefined;
  const words = text.slice(lost.start, lost.end);
  if (node.text === '') {
    const facts = { mark: '#', means: meanings['#'] ?? '' };
    return diagnose('mark-starts-text', { start: lost.start, end: lost.start + 1 }, facts, [
      quoteFix(text, lost),
    ]);
  }
  const whole = { start: node.span.start, end: lost.end };
  const multiline = /[\r\n]/.test(text.slice(whole.start, whole.end));
  const fixes = multiline ? [] : [quoteFix(text, whole)];
  return diagnose('text-cut-off', lost, { lost: shortened(words) }, fixes);
}

function remarkAfter(text: string, from: number): { start: number; end: number } | undefined {
  let start = from;
  while (text[start] === ' ' || text[start] === '\t') start++;
  if (start === from || text[start] !== '#') return undefined;
  let end = start;
  while (end < text.length && text[end] !== '\n' && text[end] !== '\r') end++;
  while (' \t'.includes(text[end - 1] ?? 'x')) end--;
  return { start, end };
}

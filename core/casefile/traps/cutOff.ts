import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { keyNames } from '../kinds/keyNames.ts';
import { shortened } from '../shortened.ts';
import type { TextNode } from '../tree.ts';
import { blockFormFix } from './blockForm.ts';
import { quoteFix } from './quoted.ts';
import { meanings } from './sentence.ts';
import type { WrittenEntry } from './writtenEntry.ts';

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

/** A text of several lines with a remark before its last: what follows the remark is no longer part of it. */
export function remarkInsideTrap(text: string, entry: WrittenEntry): Diagnostic | undefined {
  const { key, value, below } = entry;
  const last = below.at(-1);
  if (last === undefined || /^["'[{|>&*!%@`#]/.test(text.slice(value.start, value.start + 1)))
    return undefined;
  if (key !== '' && !keyNames().sentences.has(key)) return undefined;
  const written = text.slice(value.start, last.start);
  const remark = /[ \t]#[^\r\n]*/.exec(written);
  if (remark === null) return undefined;
  const start = value.start + remark.index + 1;
  const end = start + remark[0].trim().length;
  const block = blockFormFix(text, entry, key === 'note' ? '|' : '>-');
  const facts = { lost: shortened(text.slice(start, end)), key: key === '' ? '-' : key };
  return diagnose('remark-inside-text', { start, end }, facts, block === undefined ? [] : [block]);
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

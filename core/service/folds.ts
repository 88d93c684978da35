import type { Node } from '../casefile/tree.ts';
import type { Study } from '../study/types.ts';
import { lineIndex, positionAt } from '../text/lines.ts';
import { standingOf } from './standing.ts';
import type { Fold } from './types.ts';

/** What can be folded in a cell: every entry and item of more than one line, and runs of remarks. */
export function folds(study: Study, cell: number): readonly Fold[] {
  const standing = standingOf(study, cell);
  if (standing === undefined) return [];
  const { text, tree } = standing;
  const found = remarks(text);
  const lines = lineIndex(text);
  const lineOf = (offset: number): number => positionAt(lines, offset).line;
  const lineEnd = (offset: number): number => {
    let end = offset;
    while (end < text.length && text[end] !== '\n' && text[end] !== '\r') end++;
    return end;
  };
  const add = (start: number, end: number): void => {
    const last = lastContent(text, end);
    const from = lineEnd(start);
    if (lineOf(last) > lineOf(start))
      found.push({ span: { start: from, end: lineEnd(last) }, kind: 'region' });
  };
  const walk = (node: Node): void => {
    if (node.kind === 'map') {
      for (const { key, value } of node.entries) {
        if (!(value.kind === 'text' && value.text === '')) add(key.span.start, value.span.end);
        walk(value);
      }
    } else if (node.kind === 'list') {
      for (const item of node.items) {
        if (item.kind === 'map') add(item.span.start, item.span.end);
        walk(item);
      }
    }
  };
  if (tree !== undefined) walk(tree);
  const seen = new Set<number>();
  return found
    .sort((a, b) => a.span.start - b.span.start || b.span.end - a.span.end)
    .filter(({ span }) => !seen.has(span.start) && seen.add(span.start));
}

/** The last character of a stretch that is no white space. */
function lastContent(text: string, end: number): number {
  let at = end - 1;
  while (at > 0 && /\s/.test(text[at] ?? '')) at--;
  return at;
}

function remarks(text: string): Fold[] {
  const found: Fold[] = [];
  for (const run of text.matchAll(/^[ \t]*#[^\r\n]*(?:(?:\r\n|\r|\n)[ \t]*#[^\r\n]*)+/gm)) {
    const first = /[\r\n]/.exec(run[0])?.index ?? 0;
    found.push({ span: { start: run.index + first, end: run.index + run[0].length }, kind: 'comment' });
  }
  return found;
}

import type { Span } from '../text/span.ts';
import { sourceSpan, type TextNode } from './tree.ts';

/** A line of a text that is not blank. */
export interface TextLine {
  /** In the decoded text, without white space at both ends (tabs at the start are kept: they part columns). */
  readonly span: Span;
  /** In the cell. */
  readonly place: Span;
}

/** The lines of a text that are not blank, at most `most` of them, and how many there are. */
export function textLines(
  node: TextNode,
  most: number,
): { readonly lines: readonly TextLine[]; readonly count: number } {
  const lines: TextLine[] = [];
  const { text } = node;
  let count = 0;
  let at = 0;
  while (at < text.length) {
    let end = text.indexOf('\n', at);
    if (end < 0) end = text.length;
    let first = at;
    let last = end;
    while (first < last && text[first] === ' ') first++;
    while (last > first && (text[last - 1] === ' ' || text[last - 1] === '\t')) last--;
    if (text.slice(first, last).trim() !== '') {
      count++;
      const span = { start: first, end: last };
      if (lines.length < most) lines.push({ span, place: sourceSpan(node, span) });
    }
    at = end + 1;
  }
  return { lines, count };
}

/**
 * A line cut into columns, each a text with its place in the cell. With `due`, the way of cutting that gives that many
 * is taken: single tabs (as a spreadsheet pastes them; nothing between two tabs is an empty column), runs of tabs or of
 * two spaces and more, runs of any white space. Without it, or when none fits: tabs where there are any, otherwise
 * any white space.
 */
export function columnsOf(node: TextNode, line: TextLine, due?: number): readonly TextNode[] {
  const words = node.text.slice(line.span.start, line.span.end);
  const ways = words.includes('\t') ? [singleTab, wide, narrow] : [wide, narrow];
  let cuts: readonly Span[] | undefined;
  for (const way of ways) {
    const tried = cut(words, way);
    if (due !== undefined && tried.length === due) {
      cuts = tried;
      break;
    }
  }
  cuts ??= padded(words, due) ?? cut(words, words.includes('\t') ? wide : narrow);
  return cuts.map((each) => part(node, line.span.start + each.start, line.span.start + each.end));
}

const singleTab = / *\t */g;
const wide = / *\t[ \t]*| {2,}/g;
const narrow = /[ \t]+/g;

/** A spreadsheet leaves out the tabs after the last cell that is filled in. */
function padded(words: string, due: number | undefined): readonly Span[] | undefined {
  if (due === undefined || !words.includes('\t')) return undefined;
  const cuts = cut(words, singleTab);
  if (cuts.length >= due || !cuts.some((each) => each.end === each.start)) return undefined;
  const end = { start: words.length, end: words.length };
  return [...cuts, ...Array.from({ length: due - cuts.length }, () => end)];
}

function cut(words: string, between: RegExp): readonly Span[] {
  const cuts: Span[] = [];
  let start = 0;
  for (const gap of words.matchAll(between)) {
    cuts.push({ start, end: gap.index });
    start = gap.index + gap[0].length;
  }
  cuts.push({ start, end: words.length });
  return cuts;
}

/** A stretch of a text on one line as a text of its own. */
function part(node: TextNode, start: number, end: number): TextNode {
  const span = sourceSpan(node, { start, end });
  return { kind: 'text', text: node.text.slice(start, end), style: 'plain', span, map: [[0, span.start]] };
}

import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { shortened } from '../shortened.ts';
import { quoteFix } from './quoted.ts';
import type { WrittenEntry } from './writtenEntry.ts';

/** `{limit: a[1] > 2}`, `[a[1], b]`: an expression with brackets of its own inside brackets. */
export function expressionInBracesTrap(text: string, entry: WrittenEntry): Diagnostic | undefined {
  const { start, end } = entry.value;
  const open = text[start];
  const close = open === '{' ? '}' : open === '[' ? ']' : undefined;
  if (close === undefined || text[end - 1] !== close || entry.below.length > 0) return undefined;
  for (const part of partsOf(text, start + 1, end - 1)) {
    const key = open === '{' ? /^[^:"'[\]{}()]*:[ \t]+/.exec(text.slice(part.start, part.end)) : null;
    const from = part.start + (key?.[0].length ?? 0);
    const words = text.slice(from, part.end);
    if (!/^[^\s"'[{][^"']*[[{(]/.test(words)) continue;
    const span = { start: from, end: part.end };
    const fix = { ...quoteFix(text, span), title: 'Put the expression in quotes' };
    return diagnose('comma-splits-expression', span, { text: shortened(words) }, [fix]);
  }
  return undefined;
}

/** The stretches between commas that stand in no brackets, without the white space around them. */
function partsOf(text: string, start: number, end: number): { start: number; end: number }[] {
  const parts: { start: number; end: number }[] = [];
  let depth = 0;
  let from = start;
  for (let at = start; at <= end; at++) {
    const unit = text[at] ?? '';
    if ('([{'.includes(unit)) depth++;
    else if (')]}'.includes(unit) && at < end) depth--;
    if (at < end && (unit !== ',' || depth > 0)) continue;
    let first = from;
    let last = at;
    while (first < last && text[first] === ' ') first++;
    while (last > first && text[last - 1] === ' ') last--;
    if (last > first) parts.push({ start: first, end: last });
    from = at + 1;
  }
  return parts;
}

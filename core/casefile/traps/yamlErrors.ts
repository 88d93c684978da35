import { type Diagnostic, diagnose, type Fix } from '../../diagnostics/diagnostic.ts';
import type { Span } from '../../text/span.ts';
import type { YamlProblem } from '../readYaml.ts';
import { shortened } from '../shortened.ts';
import { quoteFix } from './quoted.ts';
import { type Line, writtenEntryAt } from './writtenEntry.ts';

/** What the yaml package complains about, in a technician's words. */
export function yamlError(text: string, lines: readonly Line[], error: YamlProblem): Diagnostic {
  const span = visible(text, error.span);
  const words = shortened(restOfLine(text, span.start));
  switch (error.code) {
    case 'MISSING_CHAR':
      if (error.message.includes('closing')) return unclosedQuote(text, lines, error);
      if (error.message.includes('end with')) return unclosedBracket(text, lines, span, error.message);
      if (error.message.includes('Missing ,') || error.message.includes('Missing space')) {
        return diagnose('missing-comma', span, { text: words });
      }
      return notAnEntry(text, span, words);
    case 'MULTILINE_IMPLICIT_KEY':
    case 'KEY_OVER_1024_CHARS':
      return notAnEntry(text, span, words);
    case 'BLOCK_IN_FLOW':
      return diagnose('missing-comma', span, { text: words });
    case 'BAD_INDENT':
      if (error.message.includes('must be sufficiently indented and end')) {
        return unclosedBracket(text, lines, span, error.message);
      }
      return diagnose('bad-indentation', span, { text: words });
    case 'BAD_DQ_ESCAPE':
      return unknownEscape(text, error.span.start);
    case 'UNEXPECTED_TOKEN':
      return diagnose('unreadable', span, { text: words });
    default:
      return diagnose('unreadable', span, { text: words });
  }
}

/** `map:13.1 inHg` lacks the space behind its colon; the line may end in a colon that is one. */
function notAnEntry(text: string, span: Span, words: string): Diagnostic {
  const line = restOfLine(text, span.start);
  const key = /^[\p{L}_][\p{L}\p{N}_ ]*:(?=[^\s:/\\])/u.exec(line)?.[0];
  if (key === undefined) return diagnose('not-an-entry', span, { text: words });
  const at = span.start + key.length;
  const edits = [{ span: { start: at, end: at }, newText: ' ' }];
  return diagnose('not-an-entry', span, { text: words }, [{ title: 'Put a space behind the colon', edits }]);
}

function unknownEscape(text: string, start: number): Diagnostic {
  const written = text.slice(start, start + 2);
  const double = { span: { start, end: start }, newText: '\\' };
  return diagnose('unknown-escape', { start, end: start + written.length }, { written }, [
    { title: 'Write a backslash as two', edits: [double] },
  ]);
}

function unclosedQuote(text: string, lines: readonly Line[], error: YamlProblem): Diagnostic {
  const quote = error.message.includes('"') ? '"' : "'";
  const line = lines.findLast((each) => each.start <= error.span.start && opensQuote(text, each, quote));
  const start = line === undefined ? error.span.start : text.indexOf(quote, line.start);
  const end = line?.end ?? text.length;
  const fixes = [
    {
      title: 'Close the quote at the end of the line',
      edits: [{ span: { start: end, end }, newText: quote }],
    },
  ];
  return diagnose('unclosed-quote', { start, end: Math.min(start + 1, text.length) }, { quote }, fixes);
}

/** Whether a line has a quote at the start of its value that is not closed on it. */
function opensQuote(text: string, line: Line, quote: string): boolean {
  const words = text.slice(line.start, line.end);
  const at = words.indexOf(quote);
  return (
    at >= 0 && /(?:^|[:-][ \t]+|[[{,][ \t]*)$/.test(words.slice(0, at)) && words.indexOf(quote, at + 1) < 0
  );
}

function unclosedBracket(text: string, lines: readonly Line[], span: Span, message: string): Diagnostic {
  const close = message.includes('}') ? '}' : ']';
  const open = close === '}' ? '{' : '[';
  const entry = writtenEntryAt(text, lines, span.start);
  const before = text.lastIndexOf(open, Math.max(span.start - 1, 0));
  const start =
    entry !== undefined && text[entry.value.start] === open ? entry.value.start : Math.max(before, 0);
  const line = lines.find((each) => start <= each.end);
  const end = line?.end ?? text.length;
  const closing = start + wordsBeforeRemark(text.slice(start, end)).length;
  const fixes = [
    ...hashInText(text, start, closing, end, close),
    {
      title: `Close it with \`${close}\``,
      edits: [{ span: { start: closing, end: closing }, newText: close }],
    },
    quoteFix(text, { start, end }),
  ];
  return diagnose('bracket-left-open', { start, end: start + 1 }, { open, close }, fixes);
}

/** `{value: van # 3, at: foo}`: the bracket is closed in what is read as a remark, so that belongs to a text. */
function hashInText(text: string, start: number, remark: number, end: number, close: string): readonly Fix[] {
  if (remark === end || !text.slice(remark, end).trimEnd().endsWith(close)) return [];
  const before = /(?:[[{,]|:[ \t])[ \t]*([^[{,"']*)$/.exec(text.slice(start, remark).slice(-mostLong))?.[1];
  const words = before?.replace(/^.*:[ \t]+/, '') ?? '';
  const after = /^[^,}\]]*/.exec(text.slice(remark, end))?.[0].trimEnd() ?? '';
  if (words === '') return [];
  return [quoteFix(text, { start: remark - words.length, end: remark + after.length })];
}

const mostLong = 200;

/** A line up to ` #`, where a remark starts, unless that stands in quotes. */
function wordsBeforeRemark(line: string): string {
  let before = '';
  for (let at = 0; at < line.length; at++) {
    const unit = line[at] ?? '';
    if ((unit === '"' || unit === "'") && '{[,:'.includes(before)) {
      const close = line.indexOf(unit, at + 1);
      if (close > at) at = close;
    } else if (unit === '#' && ' \t'.includes(line[at - 1] ?? 'x')) return line.slice(0, at).trimEnd();
    if (unit !== ' ' && unit !== '\t') before = unit;
  }
  return line.trimEnd();
}

/** The first character that can be seen at a place, with the rest of the complaint's stretch on its line. */
function visible(text: string, span: Span): Span {
  let start = span.start;
  while (start < text.length && /\s/.test(text[start] ?? '')) start++;
  if (start >= text.length) {
    start = span.start;
    while (start > 0 && /\s/.test(text[start - 1] ?? '')) start--;
    return { start: Math.max(start - 1, 0), end: start };
  }
  const line = restOfLine(text, start).trimEnd().length;
  const length = Math.max(1, Math.min(span.end - start, line));
  return { start, end: start + length };
}

function restOfLine(text: string, start: number): string {
  const end = text.slice(start).search(/[\r\n]/);
  return end < 0 ? text.slice(start) : text.slice(start, start + end);
}

import { structureOf } from '../engine/obd/troubleCode.ts';
import { codeSpan, escapeMarkdown } from '../report/markdown/escape.ts';
import { codePage } from '../report/pages.ts';
import { contains, type Span } from '../text/span.ts';
import { pageMarkdown, paragraphs } from './pageMarkdown.ts';
import { readingPage } from './readingPage.ts';
import type { Standing } from './standing.ts';
import type { Hover, UnitPreference } from './types.ts';
import { valueWords } from './valueWords.ts';

/** What the bytes at an offset of a recording say: one value in full, or all of the line in short; a code's structure. */
export function answerHover(standing: Standing, offset: number, units: UnitPreference): Hover | undefined {
  const { facts, text } = standing;
  const line = lineAround(text, offset);
  const code = facts?.givenCodes?.codes.find(({ span }) => contains(span, offset));
  if (code !== undefined) {
    const structure = structureOf(code.code);
    if (structure === undefined) return undefined;
    return { span: code.span, markdown: paragraphs([pageMarkdown(codePage(structure)), `*${code.status}*`]) };
  }
  const decoded = (facts?.readings ?? []).filter(({ bytes }) => bytes !== undefined);
  const here = decoded.filter(({ valueSpan }) => contains(valueSpan, offset));
  const [only] = here;
  if (only !== undefined && here.length === 1)
    return { span: only.valueSpan, markdown: readingPage(only, text, units) };
  const onLine =
    here.length > 0
      ? here
      : decoded.filter(({ valueSpan }) => valueSpan.start >= line.start && valueSpan.start < line.end);
  if (onLine.length === 0) return undefined;
  const rows = onLine.map(({ key, signal, value }) => {
    const meaning = signal === undefined ? '' : ` ${escapeMarkdown(signal.meaning)}:`;
    return `- ${codeSpan(key)}${meaning} ${escapeMarkdown(valueWords(value, units))}`;
  });
  return { span: line, markdown: rows.join('\n') };
}

function lineAround(text: string, offset: number): Span {
  const start = Math.max(text.lastIndexOf('\n', offset - 1), text.lastIndexOf('\r', offset - 1)) + 1;
  const ends = /[\r\n]/.exec(text.slice(offset));
  return { start, end: ends === null ? text.length : offset + ends.index };
}

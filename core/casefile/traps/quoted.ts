import type { Fix } from '../../diagnostics/diagnostic.ts';
import type { Span } from '../../text/span.ts';

/** A text of one line in quotes that leave its words as they are. */
function quoted(text: string): string {
  if (!/["\\]/.test(text)) return `"${text}"`;
  return `'${text.replaceAll("'", "''")}'`;
}

/** Offers to put what stands there in quotes. */
export function quoteFix(text: string, span: Span): Fix {
  const words = text.slice(span.start, span.end);
  return { title: 'Put the text in quotes', edits: [{ span, newText: quoted(words) }] };
}

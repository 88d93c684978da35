import type { Span } from '../text/span.ts';
import type { Completion, CompletionKind } from './types.ts';

/** A completion that writes its own label. */
export function offer(kind: CompletionKind, label: string, detail: string, span: Span): Completion {
  return {
    kind,
    label,
    detail,
    span,
    newText: label,
    markdown: undefined,
    snippet: false,
    rank: 5,
    filter: undefined,
  };
}

/** Text as it stands in a snippet. */
function literally(text: string): string {
  return text.replace(/[\\$}]/g, '\\$&');
}

/** A place to fill in, with words that say with what. */
export function blank(number: number, words: string): string {
  return `\${${number}:${literally(words)}}`;
}

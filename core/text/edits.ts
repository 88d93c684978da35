import type { Span } from './span.ts';

/** Replace a stretch of a text. An empty stretch inserts. */
export interface TextEdit {
  readonly span: Span;
  readonly newText: string;
}

/** Applies edits that do not overlap; their order does not matter. */
export function applyEdits(text: string, edits: readonly TextEdit[]): string {
  const ordered = [...edits].sort((a, b) => a.span.start - b.span.start || a.span.end - b.span.end);
  let out = '';
  let at = 0;
  for (const edit of ordered) {
    out += text.slice(at, edit.span.start) + edit.newText;
    at = edit.span.end;
  }
  return out + text.slice(at);
}

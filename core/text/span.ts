/** A stretch of one text: offsets in UTF-16 units, `end` exclusive. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

export function span(start: number, end: number): Span {
  return { start, end };
}

/** The same stretch seen from a text that starts `by` units earlier. */
export function shift(of: Span, by: number): Span {
  return { start: of.start + by, end: of.end + by };
}

/** The smallest stretch that covers both. */
export function cover(a: Span, b: Span): Span {
  return { start: Math.min(a.start, b.start), end: Math.max(a.end, b.end) };
}

export function contains(of: Span, offset: number): boolean {
  return of.start <= offset && offset <= of.end;
}

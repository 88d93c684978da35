/** A stretch of a chart's axis. */
export interface Window {
  readonly from: number;
  readonly to: number;
}

/** No closer than this share of the whole. */
const closest = 1e-6;

/** `by` times as wide, about a place that stays where it is on the page; never outside of the whole. */
export function zoomed({ from, to }: Window, about: number, by: number, whole: Window): Window {
  const all = whole.to - whole.from;
  const wide = Math.min(all, Math.max(all * closest, (to - from) * by));
  const share = to > from ? Math.min(1, Math.max(0, (about - from) / (to - from))) : 0.5;
  return kept({ from: about - share * wide, to: about + (1 - share) * wide }, whole);
}

/** Moved so that a place is in it. */
export function movedTo({ from, to }: Window, place: number, whole: Window): Window {
  if (place >= from && place <= to) return { from, to };
  const by = place < from ? place - from : place - to;
  return kept({ from: from + by, to: to + by }, whole);
}

function kept({ from, to }: Window, whole: Window): Window {
  const wide = Math.min(to - from, whole.to - whole.from);
  const start = Math.min(Math.max(from, whole.from), whole.to - wide);
  return { from: start, to: start + wide };
}

export const isWhole = (window: Window, whole: Window): boolean =>
  window.from <= whole.from && window.to >= whole.to;

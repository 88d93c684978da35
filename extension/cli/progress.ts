import { isTerminal, tell } from './print.ts';

/** Counts on the terminal while many cases are read; silent for few, and when nobody watches. */
export interface Progress {
  readonly next: () => void;
  readonly end: () => void;
}

/** Fewer are done before a person has read the count. */
const many = 25;
const betweenMs = 100;

export function showProgress(total: number): Progress {
  // The cases themselves scroll by on a terminal; a count between them would only disturb.
  const watched = total >= many && isTerminal(2) && !isTerminal(1);
  if (!watched) return { next: () => undefined, end: () => undefined };
  let done = 0;
  let shown = 0;
  return {
    next: () => {
      done++;
      const now = performance.now();
      if (now - shown < betweenMs) return;
      shown = now;
      tell(`\r${done} of ${total} cases`);
    },
    end: () => tell('\r\u001b[K'),
  };
}

/** What the server needs of the machine that it runs on. */
export interface Host {
  /** Milliseconds from some beginning. */
  readonly now: () => number;
  /** Runs `work` once, after the pause (in milliseconds), and not before the present work is done. Returns what calls it off. */
  readonly later: (pause: number, work: () => void) => () => void;
}

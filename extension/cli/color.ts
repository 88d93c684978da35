import pc from 'picocolors';

/** Ways to stress what also stands there as a word or a sign. */
export interface Paint {
  readonly title: (text: string) => string;
  readonly soft: (text: string) => string;
  readonly good: (text: string) => string;
  readonly bad: (text: string) => string;
  readonly doubtful: (text: string) => string;
}

/** Colours only on a terminal that has them, and never against the reader's wish (no-color.org). */
export function paintFor(terminal: boolean): Paint {
  const { NO_COLOR, TERM } = process.env;
  const wanted = terminal && (NO_COLOR === undefined || NO_COLOR === '') && TERM !== 'dumb';
  const colors = pc.createColors(wanted);
  return {
    title: colors.bold,
    soft: colors.dim,
    good: colors.green,
    bad: (text) => colors.bold(colors.red(text)),
    doubtful: colors.yellow,
  };
}

/** Ways to stress what also stands there as a word or a sign. */
export interface Paint {
  readonly title: (text: string) => string;
  readonly soft: (text: string) => string;
  readonly good: (text: string) => string;
  readonly bad: (text: string) => string;
  readonly doubtful: (text: string) => string;
}

const plain = (text: string): string => text;
const unpainted: Paint = { title: plain, soft: plain, good: plain, bad: plain, doubtful: plain };

/** Colours only on a terminal that has them, and never against the reader's wish (no-color.org). */
export async function paintFor(terminal: boolean): Promise<Paint> {
  const { NO_COLOR, TERM } = process.env;
  const wanted = terminal && (NO_COLOR === undefined || NO_COLOR === '') && TERM !== 'dumb';
  if (!wanted) return unpainted;
  // Loaded only here: the package asks for Node's own output stream, which costs a cold start milliseconds.
  const { default: pc } = await import('picocolors');
  const colors = pc.createColors(true);
  return {
    title: colors.bold,
    soft: colors.dim,
    good: colors.green,
    bad: (text) => colors.bold(colors.red(text)),
    doubtful: colors.yellow,
  };
}

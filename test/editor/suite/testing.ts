/** A few words for tests that run inside the editor, in a process or in a worker, where no test runner is at home. */
export interface Case {
  readonly name: string;
  readonly run: () => Promise<void>;
}

export interface Outcome {
  readonly name: string;
  /** Why it failed; nothing when it passed. */
  readonly problem: string | null;
  readonly milliseconds: number;
  /** How many statements it made; a test without any has failed. */
  readonly statements: number;
}

export const cases: Case[] = [];

export function test(name: string, run: () => Promise<void>): void {
  cases.push({ name, run });
}

export async function runCase({ name, run }: Case): Promise<Outcome> {
  const start = performance.now();
  statements = 0;
  let problem: string | null = null;
  try {
    await within(60_000, run());
    if (statements === 0) problem = 'It states nothing.';
  } catch (thrown) {
    problem = thrown instanceof Error ? `${thrown.message}\n${ownFrames(thrown)}` : String(thrown);
  }
  return { name, problem, milliseconds: Math.round(performance.now() - start), statements };
}

/** Where in the tests it was thrown; the editor's own frames say nothing to us. */
function ownFrames({ stack = '' }: Error): string {
  return stack
    .split('\n')
    .filter((line) => /^\s+at .*tests\/index\.js/.test(line))
    .join('\n');
}

let statements = 0;

/** States that two plain values are the same. */
export function same(actual: unknown, expected: unknown, what = 'it'): void {
  statements++;
  const [a, b] = [JSON.stringify(actual, null, 1), JSON.stringify(expected, null, 1)];
  if (a !== b) throw new Error(`${what} is\n${a}\nand should be\n${b}`);
}

/** States that something is so. */
export function holds(truth: boolean, what: string): void {
  statements++;
  if (!truth) throw new Error(`It does not hold that ${what}.`);
}

/** Whether this run judges speed (`npm run bench:editor`); the harness puts it here. */
declare const judgedForSpeed: boolean;

export const judgesSpeed = judgedForSpeed;

declare const process: unknown;
/** Whether the tests run in a process; otherwise in a worker. */
export const isProcess = typeof process !== 'undefined';

/**
 * States that something was measured, and says how it compares with its bound.
 * Only a run for speed, on a machine that has nothing else to do, fails by it.
 */
export function measured(what: string, milliseconds: number, bound: number): void {
  const ok = milliseconds <= bound;
  console.log(
    `[casebook]   ${what}: ${milliseconds.toFixed(0)} ms, at most ${bound.toFixed(0)} ms: ${ok ? 'ok' : 'over'}`,
  );
  holds(Number.isFinite(milliseconds) && milliseconds > 0, `${what} took a time`);
  if (judgesSpeed) holds(ok, `${what} took at most ${bound.toFixed(0)} ms`);
}

/** Waits until `look` finds something, and gives it back. */
export async function until<T>(
  what: string,
  look: () => T | undefined | false | null,
  patience = 15_000,
): Promise<T> {
  const end = performance.now() + patience;
  for (;;) {
    const found = look();
    if (found !== undefined && found !== false && found !== null) return found;
    if (performance.now() > end) throw new Error(`Waited in vain for ${what}.`);
    await pause(10);
  }
}

export const pause = (milliseconds: number): Promise<void> =>
  new Promise((resolve) => setTimeout(resolve, milliseconds));

async function within<T>(milliseconds: number, promise: Promise<T>): Promise<T> {
  let alarm: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<never>((_, reject) => {
    alarm = setTimeout(() => reject(new Error(`It did not end within ${milliseconds} ms.`)), milliseconds);
  });
  try {
    return await Promise.race([promise, late]);
  } finally {
    clearTimeout(alarm);
  }
}

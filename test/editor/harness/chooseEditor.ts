/** The program that the suite runs in. */
export type ChosenEditor =
  | { readonly kind: 'desktop'; readonly executable: string }
  | { readonly kind: 'launcher'; readonly because: string };

export type EditorKind = ChosenEditor['kind'];

/** What must work for a desktop build to be of use, in this order; each fails with its reason. */
export interface Ways {
  /** Gives the program's path. */
  readonly download: () => Promise<string>;
  readonly findDisplay: () => Promise<void>;
  /** Starts the program and has it say which it is. */
  readonly start: (executable: string) => Promise<void>;
}

/**
 * A desktop build where it can be had, otherwise the launcher, with the reason; asked once a run.
 * `wanted` asks for one of the two and no other: then a desktop build that cannot be had is an error.
 * `patience`: milliseconds until a download that says neither yes nor no is given up.
 */
export async function chooseEditor(
  ways: Ways,
  wanted: EditorKind | undefined,
  patience: number,
): Promise<ChosenEditor> {
  if (wanted === 'launcher') return { kind: 'launcher', because: 'it was asked for' };
  try {
    return { kind: 'desktop', executable: await within(patience, desktop(ways)) };
  } catch (problem) {
    const because = `no desktop build can be had: ${reasonOf(problem)}`;
    if (wanted === 'desktop') throw new Error(`The desktop editor was asked for, and ${because}`);
    return { kind: 'launcher', because };
  }
}

async function desktop({ download, findDisplay, start }: Ways): Promise<string> {
  const executable = await download();
  await findDisplay();
  await start(executable);
  return executable;
}

/** The kind that is asked for on the command line or in the environment; nothing asks for none. */
export function editorKind(word: string | undefined): EditorKind | undefined {
  if (word === undefined || word === '') return undefined;
  if (word === 'desktop' || word === 'launcher') return word;
  throw new Error(`There is no editor "${word}": it is desktop or launcher.`);
}

/** Libraries throw plain texts, too. */
function reasonOf(problem: unknown): string {
  return problem instanceof Error ? problem.message : String(problem);
}

async function within<T>(milliseconds: number, promise: Promise<T>): Promise<T> {
  let alarm: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<never>((_, reject) => {
    alarm = setTimeout(
      () => reject(new Error(`it did not come within ${milliseconds / 1000} s`)),
      milliseconds,
    );
  });
  try {
    return await Promise.race([promise, late]);
  } finally {
    clearTimeout(alarm);
  }
}

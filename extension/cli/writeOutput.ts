import { realpathSync, statSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { Misunderstood } from './arguments.ts';
import type { CasePath } from './files.ts';
import { print } from './print.ts';
import { reasonNotWritten } from './reasonOf.ts';

/** Writes a file, or to the next program for `-`. Throws `Misunderstood` where that cannot be done. */
export function writeOutput(file: string, text: string): void {
  if (file === '-') {
    print(text);
    return;
  }
  try {
    writeFileSync(file, text);
  } catch (error) {
    throw new Misunderstood(`\`${file}\` cannot be written: ${reasonNotWritten(error)}.`);
  }
}

/**
 * Keeps a command from writing over a case: throws `Misunderstood` when what it is to write to is one of its cases,
 * under whatever name, or a case file at all. `instead` is the ending that the file should have.
 */
export function keepFromCases(file: string, cases: readonly CasePath[], instead: '.html' | '.json'): void {
  if (file === '-') return;
  const there = realPath(file);
  const isCase = [file, there].some((each) => /\.diag$/i.test(each));
  if (!isCase && cases.every(({ path }) => !isSameFile(path, there))) return;
  const better = `${file.replace(/\.diag$/i, '')}${instead}`;
  throw new Misunderstood(
    `\`${file}\` is a case and was left alone. Write to another file, such as \`${better}\`.`,
  );
}

/** Where links lead; the path itself where nothing is there yet. */
function realPath(file: string): string {
  try {
    return realpathSync(file);
  } catch {
    return resolve(file);
  }
}

function isSameFile(a: string, b: string): boolean {
  const [one, other] = [a, b].map((path) => statSync(path, { bigint: true, throwIfNoEntry: false }));
  if (one === undefined || other === undefined) return realPath(a) === b;
  return one.ino === other.ino && one.dev === other.dev;
}

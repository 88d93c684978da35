import { readFileSync } from 'node:fs';
import { Misunderstood } from './arguments.ts';
import { reasonOf } from './reasonOf.ts';

/** A text file that the user named. Throws `Misunderstood` when it cannot be read. */
export function readText(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    throw new Misunderstood(`\`${file}\` cannot be read: ${reasonOf(error)}.`);
  }
}

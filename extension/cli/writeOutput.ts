import { writeFileSync } from 'node:fs';
import { Misunderstood } from './arguments.ts';
import { print } from './print.ts';
import { reasonOf } from './reasonOf.ts';

/** Writes a file, or to the next program for `-`. Throws `Misunderstood` where that cannot be done. */
export function writeOutput(file: string, text: string): void {
  if (file === '-') {
    print(text);
    return;
  }
  try {
    writeFileSync(file, text);
  } catch (error) {
    throw new Misunderstood(`\`${file}\` cannot be written: ${reasonOf(error)}.`);
  }
}

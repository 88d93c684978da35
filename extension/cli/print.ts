import { fstatSync, writeSync } from 'node:fs';
import { Misunderstood } from './arguments.ts';
import { reasonOf } from './reasonOf.ts';

/**
 * Output without the streams that Node would set up for it: they cost a cold start a tenth of its time.
 * Whoever reads may stop reading (`casebook check … | head`); that ends the program and is no failure.
 */
export function print(text: string): void {
  write(1, text);
}

/** The same, beside the output: what was done, and what is wrong with the command. */
export function tell(text: string): void {
  write(2, text);
}

/** Whether a person sees this output as it comes. */
export function isTerminal(output: 1 | 2): boolean {
  try {
    // Only a device can be a terminal; asking further loads what files and pipes do not need.
    return (
      fstatSync(output).isCharacterDevice() && (output === 1 ? process.stdout : process.stderr).isTTY === true
    );
  } catch {
    return false;
  }
}

/**
 * Columns of a page of text: a terminal's, but no more than are read with ease. What goes into a file or another
 * program is not broken, so that it can be searched.
 */
export function pageWidth(output: 1 | 2): number {
  if (!isTerminal(output)) return Number.POSITIVE_INFINITY;
  const { columns } = output === 1 ? process.stdout : process.stderr;
  return Math.min(easilyRead, Math.max(narrowest, columns));
}

const easilyRead = 100;
const narrowest = 40;

function write(output: 1 | 2, text: string): void {
  let left: Uint8Array = Buffer.from(text, 'utf8');
  while (left.length > 0) {
    try {
      left = left.subarray(writeSync(output, left));
    } catch (error) {
      const code = error instanceof Error && 'code' in error ? error.code : undefined;
      if (code === 'EPIPE') process.exit();
      // There is nowhere left to say that nothing can be said.
      if (code !== 'EAGAIN' && output === 2) return;
      if (code !== 'EAGAIN') throw new Misunderstood(`The output cannot be written: ${reasonOf(error)}.`);
      // A full pipe: its reader is slower. Waiting a moment costs less than asking again at once.
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 2);
    }
  }
}

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { referencePages } from '../../core/report/markdown/reference/referencePages.ts';

/** The pages of functions, signals, units and findings, each beside what it documents, written anew from the core's tables. */
export function writeReference(root: string): void {
  for (const { path, text } of referencePages()) writeFileSync(join(root, path), text);
}

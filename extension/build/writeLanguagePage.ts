import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { languagePage } from '../../core/report/markdown/languagePage.ts';

/** The page of the language that stands beside the samples, written anew from the core's tables. */
export function writeLanguagePage(root: string): void {
  writeFileSync(join(root, 'samples', 'README.md'), languagePage());
}

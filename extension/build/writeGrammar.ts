import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { grammar } from './grammar/grammar.ts';

/** The grammar as it stands in syntaxes/, written anew from the core's tables. */
export function grammarText(): string {
  return `${JSON.stringify(grammar(), undefined, 1)}\n`;
}

export function writeGrammar(root: string): void {
  writeFileSync(join(root, 'syntaxes', 'diag.tmLanguage.json'), grammarText());
}

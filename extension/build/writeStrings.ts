import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** A message of the client: the first argument of `l10n.t`, in single quotes. */
export const stringPattern = /l10n\.t\(\s*'((?:[^'\\]|\\.)*)'/g;

/** All messages of the client, in the order of the alphabet. The manifest's own stand in `package.nls.json`. */
export function clientStrings(root: string): readonly string[] {
  const folder = join(root, 'extension', 'client');
  const found = readdirSync(folder)
    .filter((file) => file.endsWith('.ts'))
    .flatMap((file) => [...readFileSync(join(folder, file), 'utf8').matchAll(stringPattern)])
    .map(([, text = '']) => text);
  return [...new Set(found)].sort();
}

/** The file that a translator copies to `bundle.l10n.de.json` and the like. */
export function writeStrings(root: string): void {
  const folder = join(root, 'extension', 'l10n');
  mkdirSync(folder, { recursive: true });
  const strings = Object.fromEntries(clientStrings(root).map((each) => [each, each]));
  writeFileSync(join(folder, 'bundle.l10n.json'), `${JSON.stringify(strings, null, 2)}\n`);
}

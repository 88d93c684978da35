import { readFile } from 'node:fs/promises';
import { dirname, join, relative, sep } from 'node:path';
import type { Plugin } from 'esbuild';

/**
 * What is printed of a finding is its sentence; its heading and its page are asked for by `explain`.
 * So `pages.ts` gets a catalogue of its own with this part of every row, and the files of words get the other one:
 * what the rules say, which is all that a sound case needs, and what everything else says.
 */
export function catalogueInParts(root: string): Plugin {
  const folder = join(root, 'core', 'diagnostics');
  const askers = new Map([
    [join(folder, 'ruleWords.ts'), 'words'],
    [join(folder, 'otherWords.ts'), 'words'],
    [join(folder, 'pages.ts'), 'pages'],
  ]);
  return {
    name: 'catalogue-in-parts',
    setup({ onLoad, onResolve }) {
      onResolve({ filter: /^\.{1,2}\// }, ({ path, importer, namespace, resolveDir }) => {
        const part = [...askers.values()].includes(namespace) ? namespace : askers.get(importer);
        const module = join(resolveDir, path);
        const isPart = /^(rows\.ts$|catalogue\/)/.test(relative(folder, module).split(sep).join('/'));
        return part !== undefined && isPart ? { path: module, namespace: part } : undefined;
      });
      onLoad({ filter: /.*/, namespace: 'words' }, (args) => partOf(args.path, [before, behind, ofRules]));
      onLoad({ filter: /.*/, namespace: 'pages' }, (args) => partOf(args.path, [words]));
    },
  };
}

/** The parts of a row, by how the files are formatted. */
const before = /^ {4}severity:[\s\S]*?(?=^ {4}say:)/gm;
const words = /^ {4}say:[\s\S]*?(?=^ {4}why:)/gm;
const behind = /^ {4}why:[\s\S]*?(?=^ {2}\},$)/gm;
/** Where all families come together. */
const ofRules = /^ {2}\.\.\.rulesRows,$/m;

async function partOf(path: string, without: readonly RegExp[]) {
  const source = await readFile(path, 'utf8');
  const count = (pattern: RegExp): number => source.match(pattern)?.length ?? 0;
  const rows = count(/^ {4}say:/gm);
  if (![before, words, behind].every((part) => count(part) === rows))
    throw new Error(`The rows in ${path} are not laid out as severity, title, say, why, wrong, right.`);
  const contents = without.reduce((text, part) => text.replace(part, ''), source);
  return { contents, loader: 'ts' as const, resolveDir: dirname(path) };
}

import { type Dirent, lstatSync, readdirSync, statSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import { Misunderstood } from './arguments.ts';
import { reasonOf } from './reasonOf.ts';

/** A case file as it is called in what is printed: relative to the working directory, with `/`. */
export interface CasePath {
  readonly path: string;
  readonly name: string;
}

/**
 * The case files that paths, folders and patterns name, each once, in order of their names.
 * Folders are searched below, but for `node_modules` and those whose name starts with a point; links to folders are
 * not followed. Throws `Misunderstood` when a path names nothing.
 */
export async function findCases(paths: readonly string[]): Promise<readonly CasePath[]> {
  if (paths.length === 0)
    throw new Misunderstood('Which cases? Name files, folders or patterns: `casebook check cases`.');
  const found = new Set<string>();
  for (const path of paths) {
    const here = await casesAt(path);
    if (here.length === 0)
      throw new Misunderstood(`There is no case (a file whose name ends in .diag) in \`${path}\`.`);
    for (const each of here) found.add(resolve(each));
  }
  const cases = [...found].map((path) => ({
    path,
    name: relative(process.cwd(), path).split(sep).join('/'),
  }));
  return cases.sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
}

async function casesAt(path: string): Promise<readonly string[]> {
  if (path === '') throw new Misunderstood('One of the paths is empty. `.` is the folder you stand in.');
  const kind = kindOf(path);
  if (kind === 'folder') return path.endsWith('.diag') ? [path] : casesBelow(path);
  if (kind === 'file') return [path];
  if (!/[*?{[]/.test(path)) throw new Misunderstood(`\`${path}\` is not there.`);
  return (await import('./casesByPattern.ts')).casesByPattern(path);
}

/** A link that leads nowhere is a file: one that cannot be read. */
function kindOf(path: string): 'file' | 'folder' | 'nothing' {
  try {
    return statSync(path).isDirectory() ? 'folder' : 'file';
  } catch {
    return lstatSync(path, { throwIfNoEntry: false }) === undefined ? 'nothing' : 'file';
  }
}

function casesBelow(folder: string): string[] {
  const found: string[] = [];
  const waiting = [folder];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    for (const entry of entriesOf(next)) {
      const path = join(next, entry.name);
      if (entry.name.endsWith('.diag')) found.push(path);
      else if (entry.isDirectory() && entry.name !== 'node_modules' && !entry.name.startsWith('.'))
        waiting.push(path);
    }
  }
  return found;
}

function entriesOf(folder: string): readonly Dirent[] {
  try {
    return readdirSync(folder, { withFileTypes: true });
  } catch (error) {
    throw new Misunderstood(`The folder \`${folder}\` cannot be read: ${reasonOf(error)}.`);
  }
}

import { lstatSync } from 'node:fs';
import { dirname, sep } from 'node:path';
import { glob } from 'tinyglobby';

/** The case files that a pattern names: `cases/2024-*.diag`. Like below a folder, links to folders are not followed. */
export async function casesByPattern(pattern: string): Promise<readonly string[]> {
  const asked = pattern.split(sep).join('/');
  const cases = await glob(asked, {
    ignore: ['**/node_modules/**'],
    dot: false,
    onlyFiles: false,
  });
  const segments = asked.split('/');
  const named = segments.findIndex((each) => /[*?{[(!]/.test(each));
  const known = new Map<string, boolean>();
  return cases
    .map((each) => each.replace(/\/$/, ''))
    .filter((each) => each.endsWith('.diag') && !isBehindLink(dirname(each), named, known));
}

/** Whether a folder that the pattern does not name itself is a link, or lies behind one: a circle of them would bring each case many times. */
function isBehindLink(folder: string, named: number, known: Map<string, boolean>): boolean {
  if (folder === '.' || folder.split('/').length <= named || dirname(folder) === folder) return false;
  let is = known.get(folder);
  if (is === undefined) {
    is =
      isBehindLink(dirname(folder), named, known) ||
      lstatSync(folder, { throwIfNoEntry: false })?.isSymbolicLink() === true;
    known.set(folder, is);
  }
  return is;
}

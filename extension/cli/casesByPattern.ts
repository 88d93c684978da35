import { sep } from 'node:path';
import { glob } from 'tinyglobby';

/** The case files that a pattern names: `cases/2024-*.diag`. */
export async function casesByPattern(pattern: string): Promise<readonly string[]> {
  const cases = await glob(pattern.split(sep).join('/'), {
    ignore: ['**/node_modules/**'],
    dot: false,
    onlyFiles: false,
  });
  return cases.map((each) => each.replace(/\/$/, '')).filter((each) => each.endsWith('.diag'));
}

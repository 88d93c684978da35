import { existsSync } from 'node:fs';
import { delimiter, join, sep } from 'node:path';

/** The Node that the machine itself has, as opposed to the one that the lock file brings for development. */
export function machineNode(): string {
  const program = process.platform === 'win32' ? 'node.exe' : 'node';
  const folders = (process.env.PATH ?? '')
    .split(delimiter)
    .filter((folder) => !folder.split(sep).includes('node_modules'));
  const found = folders.map((folder) => join(folder, program)).find((path) => existsSync(path));
  if (found === undefined) throw new Error('There is no Node on the PATH beside the one in node_modules.');
  return found;
}

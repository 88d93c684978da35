import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { filesBeside } from '../../extension/disk/filesBeside.ts';

const folder = new URL('../../samples/', import.meta.url);

/** The samples by file name, in order. */
export const samples: ReadonlyMap<string, string> = new Map(
  readdirSync(fileURLToPath(folder))
    .filter((name) => name.endsWith('.diag'))
    .sort()
    .map((name) => [name, readFileSync(new URL(name, folder), 'utf8')]),
);

/** The files beside them. */
export const sampleFiles = filesBeside(fileURLToPath(folder));

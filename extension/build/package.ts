import { join } from 'node:path';
import { writePackage } from './writePackage.ts';

/** `npm run package`: the folder that `npm pack` and `npm publish` take. */
const root = join(import.meta.dirname, '..', '..');
await writePackage(root, join(root, 'dist', 'package'));
console.log('Packaged dist/package; `npm pack ./dist/package` makes the archive.');

import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import { extensionManifest } from './extensionManifest.ts';
import { writeArchive } from './writeArchive.ts';
import { writeExtension } from './writeExtension.ts';
import { writePackage } from './writePackage.ts';

/** `npm run package`: the folder that `npm pack` and `npm publish` take, and the archive that an editor installs. */
const root = join(import.meta.dirname, '..', '..');
await writePackage(root, join(root, 'dist', 'package'));
console.log('Packaged dist/package; `npm pack ./dist/package` makes the archive.');

const { version } = await extensionManifest(root);
const archive = join('dist', `casebook-${version}.vsix`);
await writeExtension(root, join(root, 'dist', 'extension'));
await writeArchive(join(root, 'dist', 'extension'), join(root, archive));
const { size } = await stat(join(root, archive));
console.log(
  `Packaged ${archive}, ${Math.ceil(size / 1024)} KiB; \`code --install-extension ${archive}\` installs it.`,
);

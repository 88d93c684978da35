import { cp, mkdir, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { bundleExtension } from './bundleExtension.ts';
import { extensionManifest } from './extensionManifest.ts';
import { thirdPartyNotices } from './thirdPartyNotices.ts';

/** Copied as they are. */
const files = [
  'package.nls.json',
  'README.md',
  'LICENSE',
  'CHANGELOG.md',
  'syntaxes/diag.tmLanguage.json',
  'syntaxes/language-configuration.json',
  'extension/l10n',
  'extension/media',
];

/** Writes the extension as a folder that an editor can load, whose former content goes. */
export async function writeExtension(root: string, target: string): Promise<void> {
  await rm(target, { recursive: true, force: true });
  await mkdir(target, { recursive: true });
  const metafile = await bundleExtension(root, join(target, 'dist'));
  const manifest = await extensionManifest(root);
  await writeFile(join(target, 'package.json'), `${JSON.stringify(manifest, null, 2)}\n`);
  await writeFile(join(target, 'THIRD-PARTY-NOTICES.md'), await thirdPartyNotices(root, metafile));
  for (const file of files) {
    await mkdir(dirname(join(target, file)), { recursive: true });
    await cp(join(root, file), join(target, file), { recursive: true });
  }
}

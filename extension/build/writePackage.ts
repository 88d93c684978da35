import { cp, mkdir, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { bundleCommandLine } from './bundle.ts';
import { publishedManifest } from './publishedManifest.ts';
import { thirdPartyNotices } from './thirdPartyNotices.ts';

/** Writes everything that is published, and nothing else, into `target`, whose former content goes. */
export async function writePackage(root: string, target: string): Promise<void> {
  await rm(target, { recursive: true, force: true });
  await mkdir(target, { recursive: true });
  const metafile = await bundleCommandLine(root, join(target, 'dist'));
  await writeFile(
    join(target, 'package.json'),
    `${JSON.stringify(await publishedManifest(root), null, 2)}\n`,
  );
  await writeFile(join(target, 'THIRD-PARTY-NOTICES.md'), await thirdPartyNotices(root, metafile));
  await cp(join(root, 'extension', 'cli', 'results.schema.json'), join(target, 'results.schema.json'));
  for (const file of ['README.md', 'LICENSE', 'CHANGELOG.md']) await cp(join(root, file), join(target, file));
}

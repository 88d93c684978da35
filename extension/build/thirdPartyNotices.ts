import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Metafile } from 'esbuild';

/**
 * The licence texts of every package whose code is inside the bundle, as their licences ask.
 * Throws when one of them carries none: then it must not be shipped.
 */
export async function thirdPartyNotices(root: string, { inputs }: Metafile): Promise<string> {
  const sections = await Promise.all(bundledPackages(Object.keys(inputs)).map((name) => notice(root, name)));
  return ['# Third-party notices', 'The bundle contains code of these packages.', ...sections, ''].join(
    '\n\n',
  );
}

/** Paths like `node_modules/yaml/dist/index.js` or `node_modules/@scope/name/index.js` to package folders, once each. */
function bundledPackages(inputs: readonly string[]): string[] {
  const folders = inputs.flatMap((input) => /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(input) ?? []);
  return [...new Set(folders)].sort();
}

async function notice(root: string, folder: string): Promise<string> {
  const path = join(root, folder);
  const manifest = JSON.parse(await readFile(join(path, 'package.json'), 'utf8')) as {
    name: string;
    version: string;
  };
  const licence = (await readdir(path)).find((file) => /^licen[cs]e\b/i.test(file));
  if (licence === undefined) throw new Error(`${folder} carries no licence text and cannot be bundled.`);
  const text = (await readFile(join(path, licence), 'utf8')).trim();
  return `## ${manifest.name} ${manifest.version}\n\n\`\`\`\n${text}\n\`\`\``;
}

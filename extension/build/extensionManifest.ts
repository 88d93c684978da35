import { readFile } from 'node:fs/promises';
import { join } from 'node:path';

export type ExtensionManifest = { readonly [key: string]: unknown } & {
  readonly name: string;
  readonly displayName: string;
  readonly description: string;
  readonly version: string;
  readonly publisher: string;
  readonly icon: string;
  readonly license: string;
  readonly engines: { readonly vscode: string };
  readonly categories: readonly string[];
  readonly keywords: readonly string[];
};

/** What the extension's manifest takes over from the repository's; the rest is about building and publishing to npm. */
const kept = [
  'name',
  'displayName',
  'description',
  'version',
  'license',
  'publisher',
  'icon',
  'categories',
  'keywords',
  'main',
  'browser',
  'activationEvents',
  'capabilities',
  'contributes',
];

/** The manifest inside the archive: it depends on nothing, since the bundles hold all they need. */
export async function extensionManifest(root: string): Promise<ExtensionManifest> {
  const own = JSON.parse(await readFile(join(root, 'package.json'), 'utf8')) as ExtensionManifest;
  const taken = Object.entries(own).filter(([key]) => kept.includes(key));
  return { ...Object.fromEntries(taken), engines: { vscode: own.engines.vscode } } as ExtensionManifest;
}

import { readFile } from 'node:fs/promises';
import { join } from 'node:path';

/** What `package.json` of the repository says about the product itself. */
interface Manifest {
  readonly name: string;
  readonly version: string;
  readonly description: string;
  readonly license: string;
  readonly type: string;
  readonly engines: { readonly node: string };
  readonly bin: { readonly casebook: string };
}

/**
 * The manifest that is published: the bundle holds all it needs, so it depends on nothing.
 * Above all not on the Node binaries, the build's tools or the references that only tests compare with.
 */
export async function publishedManifest(
  root: string,
): Promise<Manifest & { readonly files: readonly string[] }> {
  const own = JSON.parse(await readFile(join(root, 'package.json'), 'utf8')) as Manifest;
  const { name, version, description, license, type, engines, bin } = own;
  return {
    name,
    version,
    description,
    license,
    type,
    engines,
    bin,
    files: ['dist', 'results.schema.json', 'CHANGELOG.md', 'THIRD-PARTY-NOTICES.md'],
  };
}

import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Metafile } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bundleCommandLine } from '../../extension/build/bundle.ts';

const root = join(import.meta.dirname, '..', '..');

describe('the bundle of the command line', () => {
  const outdir = mkdtempSync(join(tmpdir(), 'casebook-bundle-'));
  let metafile: Metafile;
  beforeAll(async () => {
    metafile = await bundleCommandLine(root, outdir);
  });
  afterAll(() => rmSync(outdir, { recursive: true, force: true }));

  it('holds the report and its Markdown renderer', () => {
    expect(packagesIn(Object.keys(metafile.outputs))).toContain('markdown-it');
  });

  it('leaves the Markdown renderer out of what a check loads', () => {
    const check = Object.keys(metafile.outputs).filter((path) => path.endsWith('/main.js'));
    expect(check).toHaveLength(1);
    expect(packagesIn(check)).toContain('yaml');
    expect(packagesIn(check)).not.toContain('markdown-it');
  });

  it('holds no tool of the build and no reference that only tests compare with', () => {
    const { packages } = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as {
      packages: { [path: string]: { dev?: boolean; optional?: boolean } };
    };
    const shipped = Object.keys(packages).filter((path) => !packages[path]?.dev && !packages[path]?.optional);
    const found = packagesIn(Object.keys(metafile.outputs));
    expect(found.filter((name) => !shipped.includes(`node_modules/${name}`))).toEqual([]);
  });

  function packagesIn(outputs: readonly string[]): string[] {
    const inputs = outputs.flatMap((path) => Object.keys(metafile.outputs[path]?.inputs ?? {}));
    const names = inputs.flatMap(
      (path) => /node_modules\/((?:@[^/]+\/)?[^/]+)\/(?!.*node_modules)/.exec(path)?.[1] ?? [],
    );
    return [...new Set(names)].sort();
  }
});

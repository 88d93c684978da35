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

  it('loads the Markdown renderer only when a report is written', () => {
    expect(packagesIn(loadedAtStart())).not.toContain('markdown-it');
  });

  it('holds no tool of the build and no reference that only tests compare with', () => {
    const { packages } = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as {
      packages: { [path: string]: { dev?: boolean; optional?: boolean } };
    };
    const shipped = Object.keys(packages).filter((path) => !packages[path]?.dev && !packages[path]?.optional);
    const found = packagesIn(Object.keys(metafile.outputs));
    expect(found.filter((name) => !shipped.includes(`node_modules/${name}`))).toEqual([]);
  });

  /** The files that the program needs before it knows what it is asked. */
  function loadedAtStart(): string[] {
    const main = Object.keys(metafile.outputs).find((path) => path.endsWith('/main.js'));
    if (main === undefined) throw new Error('The bundle has no main.js.');
    const loaded = new Set([main]);
    for (const path of loaded) {
      const imports = metafile.outputs[path]?.imports ?? [];
      for (const { kind, path: next, external } of imports) {
        if (kind === 'import-statement' && external !== true) loaded.add(next);
      }
    }
    return [...loaded];
  }

  function packagesIn(outputs: readonly string[]): string[] {
    const inputs = outputs.flatMap((path) => Object.keys(metafile.outputs[path]?.inputs ?? {}));
    const names = inputs.flatMap(
      (path) => /node_modules\/((?:@[^/]+\/)?[^/]+)\/(?!.*node_modules)/.exec(path)?.[1] ?? [],
    );
    return [...new Set(names)].sort();
  }
});

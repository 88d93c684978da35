import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Metafile } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { allSignals } from '../../core/signals/lookup.ts';
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

  it('reads packages later, those that a plain check does without', () => {
    const main = outputs('main.js');
    expect(main).toHaveLength(1);
    expect(packagesIn(main)).toEqual(['picocolors']);
    expect(packagesIn(outputs('report.js'))).toContain('markdown-it');
    expect(packagesIn(outputs('readYaml.js'))).toEqual(['yaml']);
    expect(packagesIn(outputs('schema.js'))).toEqual(['zod']);
  });

  it('holds one of everything: what later files share with the program, they take from it', () => {
    const inMain = inputsOf(outputs('main.js')).filter((path) => !path.startsWith('stand-in:'));
    const others = Object.keys(metafile.outputs).filter((path) => !path.endsWith('/main.js'));
    const own = inMain.filter((path) => /^(core|extension)\//.test(path));
    expect(own.length).toBeGreaterThan(100);
    expect(inputsOf(others).filter((path) => own.includes(path))).toEqual([]);
  });

  it('has the vocabulary beside it: where each row starts, then a row a line', () => {
    const [starts = '', ...rows] = readFileSync(join(outdir, 'signals.txt'), 'latin1').split('\n');
    const lines = rows.join('\n');
    const found = [...starts.matchAll(/,(\w+):(\d+)/g)].map(([, name, start]) => {
      const row = JSON.parse(lines.slice(Number(start), lines.indexOf('\n', Number(start))));
      expect(row.name).toBe(name);
      return row;
    });
    expect(found).toEqual(allSignals());
  });

  it('names each file once', () => {
    const files = Object.keys(metafile.outputs);
    expect(files).toEqual([...new Set(files)]);
    expect(files.length).toBeGreaterThan(10);
  });

  it('holds no tool of the build and no reference that only tests compare with', () => {
    const { packages } = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as {
      packages: { [path: string]: { dev?: boolean; optional?: boolean } };
    };
    const shipped = Object.keys(packages).filter((path) => !packages[path]?.dev && !packages[path]?.optional);
    const found = packagesIn(Object.keys(metafile.outputs));
    expect(found.filter((name) => !shipped.includes(`node_modules/${name}`))).toEqual([]);
  });

  function outputs(file: string): readonly string[] {
    return Object.keys(metafile.outputs).filter((path) => path.endsWith(`/${file}`));
  }

  function inputsOf(files: readonly string[]): readonly string[] {
    return files.flatMap((path) => Object.keys(metafile.outputs[path]?.inputs ?? {}));
  }

  function packagesIn(files: readonly string[]): string[] {
    const names = inputsOf(files).flatMap(
      (path) => /node_modules\/((?:@[^/]+\/)?[^/]+)\/(?!.*node_modules)/.exec(path)?.[1] ?? [],
    );
    return [...new Set(names)].sort();
  }
});

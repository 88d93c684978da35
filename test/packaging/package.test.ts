import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writePackage } from '../../extension/build/writePackage.ts';
import { version } from '../../extension/cli/version.ts';
import { machineNode } from '../support/machineNode.ts';

const root = join(import.meta.dirname, '..', '..');
const own = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
  version: string;
};

describe('the version', () => {
  it('is the same in the manifest and in the program', () => {
    expect(version()).toBe(own.version);
  });
});

describe('the published package', () => {
  const scratch = mkdtempSync(join(tmpdir(), 'casebook-package-'));
  const source = join(scratch, 'package');
  const home = join(scratch, 'home');
  let packed: { filename: string; files: { path: string }[]; size: number };

  beforeAll(async () => {
    await writePackage(root, source);
    // Newer versions of npm print a map by name, older ones a list.
    const printed = JSON.parse(npm('pack', '--json', '--pack-destination', scratch, source)) as
      | (typeof packed)[]
      | { [name: string]: typeof packed };
    const [only] = Object.values(printed);
    if (only === undefined) throw new Error('npm pack made nothing.');
    packed = only;
    npm('install', '--offline', '--no-audit', '--no-fund', '--prefix', home, join(scratch, packed.filename));
  }, 120_000);

  afterAll(() => rmSync(scratch, { recursive: true, force: true }));

  it('holds the bundle, the shape of its results, the licence texts and the read-me, and nothing else', () => {
    const files = packed.files.map(({ path }) => path);
    const outside = files
      .filter((path) => !/^dist\/([a-zA-Z]+\.js|package\.json|signals\.txt)$/.test(path))
      .sort();
    expect(outside).toEqual([
      'CHANGELOG.md',
      'LICENSE',
      'README.md',
      'THIRD-PARTY-NOTICES.md',
      'package.json',
      'results.schema.json',
    ]);
    expect(files).toContain('dist/casebook.js');
  });

  it('depends on nothing: no Node binary, no tool of the build', () => {
    const manifest = JSON.parse(readFileSync(join(home, 'node_modules', 'casebook', 'package.json'), 'utf8'));
    const wanted = ['name', 'version', 'description', 'license', 'type', 'engines', 'bin', 'files'];
    expect(Object.keys(manifest)).toEqual(wanted);
    expect(readdirSync(join(home, 'node_modules')).filter((name) => !name.startsWith('.'))).toEqual([
      'casebook',
    ]);
  });

  it('carries the licence text of every package inside the bundle', () => {
    const notices = readFileSync(join(source, 'THIRD-PARTY-NOTICES.md'), 'utf8');
    const named = [...notices.matchAll(/^## (\S+) \S+$/gm)].map((match) => match[1]);
    expect(named).toEqual(expect.arrayContaining(['markdown-it', 'picocolors', 'tinyglobby', 'yaml', 'zod']));
    expect(notices.match(/copyright/gi)?.length).toBeGreaterThanOrEqual(named.length);
  });

  it("runs under the machine's own Node, 20 or later", () => {
    const node = machineNode();
    const [major] = run(node, '--version').slice(1).split('.');
    expect(Number(major)).toBeGreaterThanOrEqual(20);
    const casebook = join(home, 'node_modules', 'casebook', 'dist', 'casebook.js');
    expect(run(node, casebook, '--version').trim()).toBe(own.version);
    expect(run(node, casebook, '--help')).toContain('casebook check');
  });

  it('is put on the path as `casebook`', () => {
    const command = join(
      home,
      'node_modules',
      '.bin',
      process.platform === 'win32' ? 'casebook.cmd' : 'casebook',
    );
    expect(run(command, '--version').trim()).toBe(own.version);
  });

  function npm(...args: readonly string[]): string {
    return run(process.platform === 'win32' ? 'npm.cmd' : 'npm', ...args);
  }

  function run(command: string, ...args: readonly string[]): string {
    return execFileSync(command, args, {
      cwd: scratch,
      encoding: 'utf8',
      shell: process.platform === 'win32',
    });
  }
});

import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { bundleCommandLine } from '../../extension/build/bundle.ts';
import { leaveCompiled } from '../../extension/build/leaveCompiled.ts';
import { machineNode } from '../support/machineNode.ts';

const root = join(import.meta.dirname, '..', '..');
const nodes = [...new Set([machineNode(), process.execPath])];

describe('compiled code that is kept between starts', () => {
  const scratch = mkdtempSync(join(tmpdir(), 'casebook-launch-'));
  const dist = join(scratch, 'dist');
  const cacheHome = join(scratch, 'cache');
  const folder = join(cacheHome, 'casebook');

  beforeAll(() => bundleCommandLine(root, dist));
  beforeEach(() => rmSync(cacheHome, { recursive: true, force: true }));
  afterAll(() => rmSync(scratch, { recursive: true, force: true }));

  it.each(nodes)('is written once and used then: %s', (node) => {
    const first = start(node);
    const files = kept();
    const before = files.map((file) => readFileSync(join(folder, file)));
    const second = start(node);
    expect(files.some((file) => file.endsWith('-main.bin'))).toBe(true);
    expect(kept()).toEqual(files);
    for (const [at, file] of files.entries())
      expect(readFileSync(join(folder, file)).equals(before[at] ?? Buffer.of())).toBe(true);
    expect(second).toEqual(first);
    expect(first).toContain('1 case:');
  });

  it.each(nodes)('is made anew when it belongs to another build or is cut off: %s', (node) => {
    const good = start(node);
    const path = mainKept();
    const size = statSync(path).size;
    for (const damaged of [readFileSync(path).subarray(0, 1000), Buffer.alloc(size, 'x'), Buffer.alloc(0)]) {
      writeFileSync(path, damaged);
      expect(start(node)).toEqual(good);
      expect(statSync(path).size).toBeGreaterThan(1000);
      expect(readFileSync(path).subarray(0, 64).toString()).toMatch(/^[0-9a-f]{64}$/);
    }
  });

  it('is for the user alone', () => {
    start(process.execPath);
    expect(statSync(folder).mode & 0o777).toBe(0o700);
    expect(statSync(mainKept()).mode & 0o777).toBe(0o600);
  });

  it('is left alone where others can write', () => {
    mkdirSync(folder, { recursive: true });
    chmodSync(folder, 0o777);
    expect(start(process.execPath)).toContain('1 case:');
    expect(kept()).toEqual([]);
  });

  it('is not needed: without a place for it everything works', () => {
    writeFileSync(cacheHome, 'a file where the folder would be');
    expect(start(process.execPath)).toContain('1 case:');
  });

  it("is not used where Node's own is not wanted", () => {
    expect(start(process.execPath, { NODE_DISABLE_COMPILE_CACHE: '1' })).toContain('1 case:');
    expect(kept()).toEqual([]);
  });

  it('is written by a check, which needs the most of it', () => {
    start(process.execPath, {}, ['explain', 'unit-slip']);
    expect(kept()).toEqual([]);
  });

  describe('by the build, beside the program', () => {
    const beside = join(dist, 'compiled');
    let first: string;

    beforeAll(() => {
      rmSync(cacheHome, { recursive: true, force: true });
      first = start(process.execPath);
      leaveCompiled(root, dist);
    }, 60_000);
    afterAll(() => rmSync(beside, { recursive: true }));

    it('is found first: nothing is left in the cache', () => {
      expect(start(process.execPath)).toEqual(first);
      expect(existsSync(cacheHome)).toBe(false);
    });

    it('is passed over when it does not fit: then it is as without', () => {
      const path = join(beside, readdirSync(beside).find((file) => isOfMain(file)) ?? '');
      const good = readFileSync(path);
      const cut = good.subarray(0, 1000);
      const ofOtherBuild = Buffer.concat([Buffer.alloc(64, '0'), good.subarray(64)]);
      const ofOtherFlags = Buffer.concat([good.subarray(0, 64), Buffer.alloc(good.length - 64, 'x')]);
      for (const unfit of [cut, ofOtherBuild, ofOtherFlags, Buffer.alloc(0)]) {
        writeFileSync(path, unfit);
        rmSync(cacheHome, { recursive: true, force: true });
        expect(start(process.execPath)).toEqual(first);
        const size = statSync(mainKept()).size;
        expect(size).toBeGreaterThan(100_000);
        expect(start(process.execPath)).toEqual(first);
        expect(readFileSync(path)).toEqual(unfit);
      }
      writeFileSync(path, good);
    });

    it("is not used where Node's own is not wanted", () => {
      const path = join(beside, readdirSync(beside).find((file) => isOfMain(file)) ?? '');
      const good = readFileSync(path);
      writeFileSync(path, 'x');
      expect(start(process.execPath, { NODE_DISABLE_COMPILE_CACHE: '1' })).toEqual(first);
      expect(existsSync(cacheHome)).toBe(false);
      writeFileSync(path, good);
    });
  });

  const isOfMain = (file: string): boolean =>
    file.startsWith(`${process.version}-`) && file.endsWith('-main.bin');

  function start(
    node: string,
    environment: { readonly [name: string]: string } = {},
    words = ['check', join(root, 'samples', 'plenum-leak.diag')],
  ): string {
    const { NODE_DISABLE_COMPILE_CACHE: _, ...inherited } = process.env;
    const { status, stdout, stderr } = spawnSync(node, [join(dist, 'casebook.js'), ...words], {
      encoding: 'utf8',
      env: { ...inherited, XDG_CACHE_HOME: cacheHome, ...environment },
    });
    expect([status, stderr]).toEqual([0, '']);
    return stdout;
  }

  function mainKept(): string {
    return join(folder, kept().find((file) => file.endsWith('-main.bin')) ?? '');
  }

  function kept(): string[] {
    try {
      return readdirSync(folder);
    } catch {
      return [];
    }
  }
});

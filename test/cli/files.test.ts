import { mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { findCases } from '../../extension/cli/files.ts';
import { picturesBeside } from '../../extension/cli/pictures.ts';

let folder = '';
let before = '';

beforeEach(() => {
  folder = realpathSync(mkdtempSync(join(tmpdir(), 'casebook-files-')));
  before = process.cwd();
  process.chdir(folder);
  for (const path of ['vans/old', 'vans/node_modules/x', 'vans/.hidden', 'empty'])
    mkdirSync(path, { recursive: true });
  for (const path of [
    'a.diag',
    'b.txt',
    'vans/14.diag',
    'vans/old/3.diag',
    'vans/node_modules/x/no.diag',
    'vans/.hidden/no.diag',
  ]) {
    writeFileSync(path, 'diag: 1\ncase: x\n');
  }
});

afterEach(() => {
  process.chdir(before);
  rmSync(folder, { recursive: true });
});

const names = async (...paths: string[]): Promise<string[]> =>
  (await findCases(paths)).map((each) => each.name);

describe('the cases that paths name', () => {
  it('are a folder’s, all the way down, but not those of other programs', async () => {
    expect(await names('.')).toEqual(['a.diag', 'vans/14.diag', 'vans/old/3.diag']);
  });

  it('come once each, in order, however they are named', async () => {
    expect(await names('vans/old', 'vans', './a.diag', 'a.diag')).toEqual([
      'a.diag',
      'vans/14.diag',
      'vans/old/3.diag',
    ]);
  });

  it('are found by patterns, for shells that leave them alone', async () => {
    expect(await names('vans/**/*.diag')).toEqual(['vans/14.diag', 'vans/old/3.diag']);
    expect(await names('*.diag')).toEqual(['a.diag']);
  });

  it('may have any name when they are named themselves', async () => {
    expect(await names('b.txt')).toEqual(['b.txt']);
  });

  it('count a link that leads nowhere and a folder called like a case', async () => {
    symlinkSync('gone.diag', 'link.diag');
    mkdirSync('folder.diag');
    expect(await names('.')).toEqual([
      'a.diag',
      'folder.diag',
      'link.diag',
      'vans/14.diag',
      'vans/old/3.diag',
    ]);
  });

  it('do not follow a link around in a circle', async () => {
    symlinkSync('..', 'vans/up');
    expect(await names('vans')).toEqual(['vans/14.diag', 'vans/old/3.diag']);
    expect(await names('vans/**/*.diag')).toEqual(['vans/14.diag', 'vans/old/3.diag']);
    expect(await names('**/*.diag')).toEqual(['a.diag', 'vans/14.diag', 'vans/old/3.diag']);
    // A link that is named is meant.
    expect(await names('vans/up/*.diag')).toEqual(['vans/up/a.diag']);
  });

  it.each([
    [['empty'], 'There is no case (a file whose name ends in .diag) in `empty`.'],
    [['gone.diag'], '`gone.diag` is not there.'],
    [['a.diag', ''], 'One of the paths is empty. `.` is the folder you stand in.'],
    [['*.txt'], 'There is no case (a file whose name ends in .diag) in `*.txt`.'],
    [[], 'Which cases? Name files, folders or patterns: `casebook check cases`.'],
  ])('must be somewhere: %j', async (paths, message) => {
    await expect(findCases(paths)).rejects.toThrow(message);
  });
});

describe('the pictures of a case', () => {
  const home = (): ReturnType<typeof picturesBeside> => picturesBeside(join(folder, 'vans'));

  beforeEach(() => {
    mkdirSync('vans/pictures');
    writeFileSync('vans/pictures/in.png', 'in');
    writeFileSync('secret.png', 'secret');
    symlinkSync('../../secret.png', 'vans/pictures/out.png');
    symlinkSync('in.png', 'vans/pictures/near.png');
  });

  it('lie in its folder or below', () => {
    expect(Buffer.from(home()('pictures/in.png') ?? []).toString()).toBe('in');
    expect(Buffer.from(home()('pictures/near.png') ?? []).toString()).toBe('in');
  });

  it.each([
    ['../secret.png'],
    ['pictures/../../secret.png'],
    ['pictures\\..\\..\\secret.png'],
    ['pictures/out.png'],
    ['file:///etc/hostname'],
    ['https://example.org/x.png'],
    ['C:\\x.png'],
    ['pictures'],
    ['.'],
    ['gone.png'],
    ['a\0b.png'],
  ])('are not fetched from %j', (file) => {
    expect(home()(file)).toBeUndefined();
  });

  it('are not fetched from an absolute path, even of the folder itself', () => {
    expect(home()(join(folder, 'vans', 'pictures', 'in.png'))).toBeUndefined();
  });
});

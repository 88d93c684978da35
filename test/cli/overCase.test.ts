import { linkSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { casebookForTests } from './casebook.ts';

const { folder, run } = casebookForTests();
const text = 'diag: 1\ncase: Mine\n';
const write = (name: string): void => writeFileSync(join(folder, name), text);
const read = (name: string): string => readFileSync(join(folder, name), 'utf8');

describe('a command that writes a file', () => {
  it.each([
    ['report', '-o', 'mine.html'],
    ['check', '--record', 'mine.json'],
  ])('never writes over its own case: %s', (command, option, instead) => {
    write('mine.diag');
    const { status, out, err } = run(command, 'mine.diag', option, 'mine.diag');
    expect([status, out]).toEqual([2, '']);
    expect(err).toBe(
      `casebook: \`mine.diag\` is a case and was left alone. Write to another file, such as \`${instead}\`.\n`,
    );
    expect(read('mine.diag')).toBe(text);
  });

  it.each([
    ['report', '-o'],
    ['check', '--record'],
  ])('writes no case file, there or not: %s', (command, option) => {
    write('one.diag');
    write('other.diag');
    for (const target of ['other.diag', './new.diag', 'NEW.DIAG'])
      expect(run(command, 'one.diag', option, target).status).toBe(2);
    expect(read('other.diag')).toBe(text);
    expect(() => read('new.diag')).toThrow('ENOENT');
  });

  it('knows its case by another name, through a link, and without the usual ending', () => {
    write('kept.txt');
    linkSync(join(folder, 'kept.txt'), join(folder, 'twin.html'));
    symlinkSync(join(folder, 'kept.txt'), join(folder, 'way.html'));
    for (const target of ['./kept.txt', 'twin.html', 'way.html', join(folder, 'kept.txt')]) {
      const { status, err } = run('report', 'kept.txt', '-o', target);
      expect([target, status]).toEqual([target, 2]);
      expect(err).toContain('is a case and was left alone');
    }
    expect(read('kept.txt')).toBe(text);
  });

  it('still writes a page and a record beside it', () => {
    write('mine.diag');
    expect(run('report', 'mine.diag', '-o', 'mine.html').status).toBe(0);
    expect(run('check', 'mine.diag', '--record', 'mine.json').status).toBe(0);
    expect(read('mine.html')).toContain('Mine');
    expect(read('mine.json')).toContain('mine.diag');
  });
});

import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { casebookForTests } from './casebook.ts';

const { folder, run } = casebookForTests();

const head = 'diag: 1\ncase: Bad input\n';

/** Writes the file and checks it; the output without the last line, which counts. */
function checked(text: string | Uint8Array, name = 'x.diag'): { status: number | null; said: string } {
  writeFileSync(join(folder, name), text);
  const { status, out, err } = run('check', name);
  expect(err).toBe('');
  const lines = out.trimEnd().split('\n');
  return { status, said: lines.slice(0, -1).join('\n').trim() };
}

describe('a file that is no case', () => {
  it('is not UTF-8', () => {
    const { status, said } = checked(Uint8Array.from(Buffer.from(`${head}cause: 20 \xb0F\n`, 'latin1')));
    expect(said).toBe('');
    expect(status).toBe(1);
  });
});

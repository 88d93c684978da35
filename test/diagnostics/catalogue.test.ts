import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { allCodes } from '../../core/diagnostics/pages.ts';
import { catalogue } from '../../core/diagnostics/rows.ts';

const folder = join(import.meta.dirname, '..', '..', 'core', 'diagnostics', 'catalogue');

/** Every row that a file of the catalogue declares, once, with its code: a family made of others holds the same rows. */
async function declaredRows(): Promise<ReadonlyMap<object, string>> {
  const declared = new Map<object, string>();
  for (const file of readdirSync(folder)) {
    const exported = Object.entries((await import(join(folder, file))) as Record<string, unknown>);
    for (const [name, rows] of exported) {
      if (!name.endsWith('Rows')) continue;
      for (const [code, row] of Object.entries(rows as Record<string, object>)) declared.set(row, code);
    }
  }
  return declared;
}

describe('the catalogue of findings', () => {
  it('has every code of every family, and none from two', async () => {
    const rows = await declaredRows();
    expect([...rows.values()].sort()).toEqual([...allCodes()].sort());
    expect(rows.size).toBe(allCodes().length);
  });

  it('words each with the row of its family', async () => {
    for (const [row, code] of await declaredRows()) expect(Object.values(catalogue), code).toContain(row);
  });
});

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { message } from '../../core/diagnostics/words.ts';
import { checkCase } from '../../core/rules/checkCase.ts';

const folder = join(import.meta.dirname, '..', '..', 'extension', 'cli', 'templates');
const files = readdirSync(folder).filter((name) => name.endsWith('.diag'));

it('there is a template for each usual start', () => {
  expect(files.sort()).toEqual([
    'compression-test.diag',
    'empty-case.diag',
    'teaching-case.diag',
    'trims-at-several-loads.diag',
    'voltage-drop.diag',
  ]);
});

describe.each(files)('%s', (file) => {
  const text = readFileSync(join(folder, file), 'utf8');
  const studied = checkCase(text);

  it('is ready to be filled in, without a complaint', () => {
    expect(studied.findings.map((each) => message(each.diagnostic))).toEqual([]);
  });

  it('says "not measured" until it is', () => {
    const verdicts = studied.expectations.map((each) => each.truth.verdict);
    expect(verdicts.length).toBeGreaterThan(0);
    expect(new Set(verdicts)).toEqual(new Set(['not measured']));
  });

  it('holds no proof yet, since nothing was repaired', () => {
    expect(studied.expectations.filter((each) => each.part === 'verify')).toEqual([]);
  });

  it('warns where it lets someone work on a running engine or a live circuit', () => {
    const kinds = studied.file.cells.map((each) => each.cell?.kind);
    expect(kinds.includes('caution')).toBe(file !== 'empty-case.diag');
  });
});

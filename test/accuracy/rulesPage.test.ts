import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { allRules } from '../../core/rules/allRules.ts';
import { faults } from '../support/engineModel/faults.ts';
import { judgeFault, mustBeTold } from '../support/engineModel/judge.ts';
import { judgingSeeds } from '../support/engineModel/seeds.ts';
import { unjudged } from '../support/engineModel/unjudged.ts';
import { faulty, rowText, rulesPage, sound, warnedSound } from './rulesPage.ts';

const page = readFileSync(join(import.meta.dirname, '..', '..', rulesPage), 'utf8');
const rows = page.split('\n').filter((line) => /^\| .* %/.test(line) && line.includes(' | '));

/** "97 %" as a number, from a column of a row. */
const percentIn = (row: string, column: number): number =>
  Number(/(\d+) %/.exec(row.split(' | ')[column] ?? '')?.[1] ?? Number.NaN);

describe('the page of the rules (npm run accuracy writes it)', () => {
  it('warns about no sound engine', () => {
    expect(page).toContain(`${sound} sound engines, warned about: 0.`);
  });

  it('has each fault at each size', () => {
    expect(rows.length).toBe(faults.flatMap(({ sizes }) => sizes).length);
  });

  it('has a fault for each rule, or says why there is none', () => {
    const judged = new Set<string>(faults.flatMap(({ codes }) => codes));
    const without = allRules.map(({ code }) => code).filter((code) => !judged.has(code));
    expect(without.sort()).toEqual(Object.keys(unjudged).sort());
    expect(without.filter((code) => !page.includes(`| \`${code}\` |`))).toEqual([]);
  });

  it('says of every size that must be told: by the right rule in at least 95 %', () => {
    const bold = rows.filter((row) => row.includes('**'));
    expect(bold.length).toBeGreaterThan(50);
    expect(bold.filter((row) => !(percentIn(row, 2) >= 95))).toEqual([]);
  });

  it('says of every size: otherwise warned in at most 5 %', () => {
    expect(rows.filter((row) => !(percentIn(row, 3) <= 5))).toEqual([]);
  });
});

describe('judged anew on some of the engines', () => {
  it('no sound engine is warned about', () => {
    expect(warnedSound(100)).toBe(0);
  });

  const some = faults.map((fault) => [fault.name, fault] as const);

  it.each(some)('%s is told', (_, fault) => {
    const seeds = judgingSeeds(50, sound);
    const row = judgeFault(fault, fault.tellable, seeds);
    expect(mustBeTold(row)).toBe(true);
    // What is told in 95 % is told 44 times of 50 or less in one of 100 such draws; the page has the judgement on more engines.
    expect(row.told).toBeGreaterThanOrEqual(45);
    expect(row.otherwise).toBeLessThanOrEqual(2);
  });

  it('a row of the page is what is measured now', () => {
    const fault = faults[0];
    expect(rows).toContain(rowText(judgeFault(fault, fault.tellable, judgingSeeds(faulty, sound))));
  });
});

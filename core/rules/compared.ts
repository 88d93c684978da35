import type { ReadCell } from '../casefile/readCase.ts';
import type { CellFacts } from '../study/cellFacts.ts';
import type { Header } from '../study/header.ts';
import type { Finding } from '../study/types.ts';
import { caseRules } from './allRules.ts';
import { isSameList } from './kept.ts';
import type { Moment, Taken } from './moments.ts';
import { type Lists, ruledCase } from './ruledCase.ts';

/** What rules found by comparing cells, with what they looked at. */
export interface Compared {
  readonly header: Header;
  readonly moments: readonly Moment[];
  readonly given: readonly CellFacts[];
  readonly lists: Lists;
  /** By cell; a cell's list is the very same one as before while its findings are. */
  readonly found: ReadonlyMap<number, readonly Finding[]>;
}

/** Compares the moments of a case. While they and the header are the same, so is everything that was found. */
export function compared(
  facts: readonly CellFacts[],
  taken: readonly Taken[],
  header: Header,
  read: readonly ReadCell[],
  before: Compared | undefined,
): Compared {
  const moments: Moment[] = [];
  for (const each of taken) for (const moment of each.moments) moments.push(moment);
  const given = facts.filter(({ givenCodes, givenVins }) => givenCodes !== undefined || givenVins.length > 0);
  const isKnown = before?.header === header && isSameList(before.given, given);
  if (isKnown && isSameList(before.moments, moments)) return before;
  const { ruled, lists } = ruledCase(header, taken, moments, given, read, before?.lists);
  const found = new Map<number, Finding[]>();
  if (moments.length === 0 && given.length === 0 && header.values.size === 0)
    return { header, moments, given, lists, found };
  let asked = 0;
  for (const each of taken) asked |= each.asked;
  for (const rule of caseRules) {
    if (rule.bit !== 0 && (rule.bit & asked) === 0) continue;
    for (const finding of rule.check(ruled)) {
      const cell = finding.cell ?? 0;
      const list = found.get(cell);
      if (list === undefined) found.set(cell, [finding]);
      else list.push(finding);
    }
  }
  return { header, moments, given, lists, found: kept(found, before?.found) };
}

/** Lists that say the same as before at the same places stay the same lists. */
function kept(
  now: ReadonlyMap<number, readonly Finding[]>,
  before: Compared['found'] | undefined,
): Compared['found'] {
  if (before === undefined || now.size === 0) return now;
  return new Map([...now].map(([cell, list]) => [cell, keptList(list, before.get(cell))]));
}

function keptList(now: readonly Finding[], before: readonly Finding[] | undefined): readonly Finding[] {
  return before !== undefined && (isSameList(before, now) || sayTheSame(before, now)) ? before : now;
}

/** Whether two plain values hold the same, member by member: most differ early, and nothing is written out for it. */
function sayTheSame(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const names = Object.keys(a) as (keyof typeof a)[];
  return (
    names.length === Object.keys(b).length &&
    names.every((name) => Object.hasOwn(b, name) && sayTheSame(a[name], b[name]))
  );
}

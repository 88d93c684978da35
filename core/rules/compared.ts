import type { ReadCell } from '../casefile/readCase.ts';
import type { CellFacts } from '../study/cellFacts.ts';
import type { Finding } from '../study/types.ts';
import { remade } from '../text/remade.ts';
import { type AllMoments, allMoments } from './allMoments.ts';
import { type Comparison, caseRules } from './allRules.ts';
import { always } from './asked.ts';
import type { Car } from './car.ts';
import { isSameList } from './kept.ts';
import type { Taken } from './moments.ts';
import { otherNumbers } from './otherNumbers.ts';
import { type Made, ruledCase } from './ruledCase.ts';
import type { RuledSignal } from './values.ts';

/** What rules found by comparing cells, with what they looked at. */
export interface Compared {
  readonly car: Car;
  readonly facts: readonly CellFacts[];
  readonly taken: readonly Taken[];
  readonly all: AllMoments;
  /** Of each cell, its facts where controllers gave codes or the vehicle's number in it. */
  readonly given: readonly (CellFacts | undefined)[];
  /** Of each cell, whether it tells of a repair. */
  readonly repairs: readonly boolean[];
  readonly made: Made;
  /** In the order of the rules. */
  readonly byRule: readonly (readonly Finding[])[];
  /** By cell; a cell's list is the very same one as before while its findings are. */
  readonly found: ReadonlyMap<number, readonly Finding[]>;
}

/** Compares the moments of a case. While what was read, the repairs and the header are the same, so is everything that was found. */
export function compared(
  facts: readonly CellFacts[],
  taken: readonly Taken[],
  car: Car,
  read: readonly ReadCell[],
  before: Compared | undefined,
): Compared {
  const given = remade(facts, before && { of: before.facts, made: before.given }, givenIn);
  const repairs = remade(
    facts,
    before && { of: before.facts, made: before.repairs },
    (_, cell) => read[cell]?.cell?.kind === 'repair',
  );
  const isComparable = before?.car === car && before.given === given;
  if (isComparable && before.taken === taken && before.repairs === repairs) return before;
  const all = allMoments(taken, before?.all);
  let asked = always;
  for (const bits of all.asked) asked |= bits;
  const { ruled, made } = ruledCase(car, taken, all.moments, listed(given), repairs, read, before?.made);
  const others = isComparable ? otherNumbers(before.taken, taken) : undefined;
  const byRule = caseRules.map((rule, at) => {
    if ((rule.bit & asked) === 0) return none;
    const known = others === undefined || readsAnyOf(rule, others) ? undefined : before?.byRule[at];
    return known ?? rule.check(ruled);
  });
  return {
    car,
    facts,
    taken,
    all,
    given,
    repairs,
    made,
    byRule,
    found: kept(inCells(byRule), before?.found),
  };
}

const none: readonly Finding[] = [];

/** Whether a rule may find something else now that some signals have other numbers. */
function readsAnyOf({ reads }: Comparison, others: ReadonlySet<RuledSignal>): boolean {
  return reads?.some((signal) => others.has(signal)) !== false;
}

function inCells(byRule: Compared['byRule']): Compared['found'] {
  const found = new Map<number, Finding[]>();
  for (const findings of byRule) {
    for (const finding of findings) {
      const cell = finding.cell ?? 0;
      const list = found.get(cell);
      if (list === undefined) found.set(cell, [finding]);
      else list.push(finding);
    }
  }
  return found;
}

function givenIn(facts: CellFacts): CellFacts | undefined {
  return facts.givenCodes === undefined && facts.givenVins.length === 0 ? undefined : facts;
}

function listed(given: Compared['given']): readonly CellFacts[] {
  return given.filter((each) => each !== undefined);
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

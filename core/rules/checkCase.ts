import type { ReadCell } from '../casefile/readCase.ts';
import type { Stream } from '../casefile/stream.ts';
import type { CaseFiles } from '../recording/files.ts';
import type { CellFacts } from '../study/cellFacts.ts';
import { study } from '../study/study.ts';
import { withFindings } from '../study/studyOf.ts';
import type { Finding, Study } from '../study/types.ts';
import { remade } from '../text/remade.ts';
import { type Look, looksAt } from './allRules.ts';
import { always, askedFor } from './asked.ts';
import { type Car, carOf } from './car.ts';
import { type Compared, compared } from './compared.ts';
import { type Taken, takenIn } from './moments.ts';
import type { RuledCell } from './rule.ts';

/**
 * Studies a case and lets every rule look at it. Give the previous result to compute anew only what changed.
 * `files` has what the case's captures name; without it the case has no files.
 */
export function checkCase(written: string | Stream, previous?: Study, files?: CaseFiles): Study {
  return checkStudy(study(written, previous, files), previous);
}

/** Lets every rule look at a case that was studied; what rules found in the previous study is taken over where it still holds. */
export function checkStudy(studied: Study, previous?: Study): Study {
  const now = ruled(studied, previous?.keptByRules as Ruled | undefined);
  return withFindings(studied, studied.fileFindings, now.merged, now);
}

/** What rules found in each cell, by what they looked at. */
interface Ruled {
  readonly facts: readonly CellFacts[];
  readonly taken: readonly Taken[];
  readonly found: readonly (readonly Finding[])[];
  /** What they found by comparing cells. */
  readonly compared: Compared;
  /** What the study found in the cells, and all together in the order of the text. */
  readonly studied: Study['cellFindings'];
  readonly merged: Study['cellFindings'];
}

/** What was found in a cell stays as long as its facts do: they are made anew when its text or the header changes. */
function ruled({ file, memo, cellFindings }: Study, before: Ruled | undefined): Ruled {
  const facts = memo.names.cells;
  const { header } = memo.header;
  const car = before?.compared.car.header === header ? before.compared.car : carOf(header);
  const of = before?.facts ?? [];
  const taken = remade(facts, before && { of, made: before.taken }, (here, cell) =>
    takenIn(here, askedFor, before?.taken[cell]),
  );
  const across = compared(facts, taken, car, file.cells, before?.compared);
  const found = remade(facts, before && { of, made: before.found }, (here, cell) => {
    const [its, read] = [taken[cell], file.cells[cell]];
    return its === undefined || read === undefined ? nothing : ofCell(read, here, its, car);
  });
  const now = { facts, taken, found, compared: across, studied: cellFindings };
  return { ...now, merged: mergedIn(now, before) };
}

/** All that was found in each cell; the very same list as before while nothing in it changes. */
function mergedIn(
  { found, compared, studied }: Omit<Ruled, 'merged'>,
  before: Ruled | undefined,
): Study['cellFindings'] {
  const merge = (cell: number): readonly Finding[] =>
    together(studied[cell] ?? nothing, found[cell] ?? nothing, compared.found.get(cell) ?? nothing);
  if (before?.studied.length !== studied.length) return studied.map((_, cell) => merge(cell));
  const stale = new Set<number>();
  for (let cell = 0; cell < studied.length; cell++) {
    if (studied[cell] !== before.studied[cell] || found[cell] !== before.found[cell]) stale.add(cell);
  }
  const [now, old] = [compared.found, before.compared.found];
  if (now !== old) {
    for (const [cell, list] of now) if (old.get(cell) !== list) stale.add(cell);
    for (const cell of old.keys()) if (!now.has(cell)) stale.add(cell);
  }
  if (stale.size === 0) return before.merged;
  const merged = [...before.merged];
  for (const cell of stale) merged[cell] = merge(cell);
  return merged;
}

/** What the rules that look at one cell say of it. Most of them ask for something that it does not have. */
function ofCell(read: ReadCell, facts: CellFacts, taken: Taken, car: Car): readonly Finding[] {
  const looks = looksAt(read.cell?.kind);
  const asked = taken.asked | always;
  const found: Finding[] = [];
  let cell: RuledCell | undefined;
  for (const look of asked === always ? looks.always : looks.all) {
    if ((look.bit & asked) === 0) continue;
    cell ??= ruledCell(read, facts, taken, car);
    ask(look, cell, facts.cell, found);
  }
  return found.length === 0 ? nothing : found;
}

function ask(look: Look, ruled: RuledCell, cell: number, found: Finding[]): void {
  if (look.cell !== undefined) {
    for (const diagnostic of look.cell(ruled)) found.push({ cell, diagnostic });
  } else if (look.moment !== undefined) {
    for (const moment of ruled.moments) {
      const diagnostic = look.moment(moment, ruled);
      if (diagnostic !== undefined) found.push({ cell, diagnostic });
    }
  } else if (look.reading !== undefined) {
    for (const one of ruled.measured) {
      const diagnostic = (one.odd & look.bit) === 0 ? undefined : look.reading(one, ruled);
      if (diagnostic !== undefined) found.push({ cell, diagnostic });
    }
  }
}

const nothing: readonly Finding[] = [];

function ruledCell(read: ReadCell, { readings }: CellFacts, taken: Taken, car: Car): RuledCell {
  const { measured, moments, sets } = taken;
  return { read, header: car.header, car, readings, sets, measured, moments };
}

function together(
  studied: readonly Finding[],
  byRules: readonly Finding[],
  more: readonly Finding[],
): readonly Finding[] {
  if (byRules.length + more.length === 0) return studied;
  if (studied.length + byRules.length === 0 && isInOrder(more)) return more;
  if (studied.length + more.length === 0 && isInOrder(byRules)) return byRules;
  const all = [...studied, ...byRules, ...more];
  return isInOrder(all) ? all : all.sort((a, b) => placeOf(a) - placeOf(b));
}

/** By place; findings at one place stay in the order they were made. */
function isInOrder(findings: readonly Finding[]): boolean {
  let last = 0;
  for (const finding of findings) {
    const place = placeOf(finding);
    if (place < last) return false;
    last = place;
  }
  return true;
}

const placeOf = ({ diagnostic }: Finding): number => diagnostic.span.start;

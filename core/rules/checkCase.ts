import type { ReadCell } from '../casefile/readCase.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { CaseFiles } from '../recording/files.ts';
import type { CellFacts } from '../study/cellFacts.ts';
import type { Header } from '../study/header.ts';
import { study } from '../study/study.ts';
import { withFindings } from '../study/studyOf.ts';
import type { Finding, Study } from '../study/types.ts';
import { askedWith, cellRules } from './allRules.ts';
import { type Compared, compared } from './compared.ts';
import { type Taken, takenIn } from './moments.ts';
import type { RuledCell } from './rule.ts';

/**
 * Studies a case and lets every rule look at it. Give the previous result to compute anew only what changed.
 * `files` has what the case's captures name; without it the case has no files.
 */
export function checkCase(text: string, previous?: Study, files?: CaseFiles): Study {
  return checkStudy(study(text, previous, files), previous);
}

/** Lets every rule look at a case that was studied; what rules found in the previous study is taken over where it still holds. */
export function checkStudy(studied: Study, previous?: Study): Study {
  const now = ruled(studied, previous === undefined ? undefined : known.get(previous.memo));
  known.set(studied.memo, now);
  return withFindings(studied, studied.fileFindings, now.merged);
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

const known = new WeakMap<Study['memo'], Ruled>();

/** What was found in a cell stays as long as its facts do: they are made anew when its text or the header changes. */
function ruled({ file, memo, cellFindings }: Study, before: Ruled | undefined): Ruled {
  const facts = memo.names.cells;
  const { header } = memo.header;
  const found: (readonly Finding[])[] = [];
  const merged: (readonly Finding[])[] = [];
  const taken = facts.map((here, cell) => {
    const known = before?.facts[cell] === here ? before.taken[cell] : undefined;
    return known ?? takenIn(here, askedWith);
  });
  const across = compared(facts, taken, header, file.cells, before?.compared);
  for (let cell = 0; cell < facts.length; cell++) {
    const [here, its, read, studied] = [facts[cell], taken[cell], file.cells[cell], cellFindings[cell]];
    if (here === undefined || its === undefined || read === undefined || studied === undefined) continue;
    const old = before?.facts[cell] === here ? before.found[cell] : undefined;
    const byRules = old ?? ofCell(read, here, its, header);
    const more = across.found.get(cell);
    const isSame =
      old !== undefined && before?.studied[cell] === studied && before.compared.found.get(cell) === more;
    found[cell] = byRules;
    const both = isSame ? before.merged[cell] : undefined;
    merged[cell] = both ?? together(studied, byRules, more ?? []);
  }
  return { facts, taken, found, compared: across, studied: cellFindings, merged };
}

function ofCell(read: ReadCell, facts: CellFacts, taken: Taken, header: Header): readonly Finding[] {
  const { cell, readings } = facts;
  if (readings.length === 0 && !mayBeRuled(read)) return nothing;
  const { measured, moments, asked } = taken;
  const kind = read.cell?.kind;
  const ruled: RuledCell = { read, header, readings, measured, moments };
  const found: Finding[] = [];
  const add = (diagnostic: Diagnostic | undefined): void => {
    if (diagnostic !== undefined) found.push({ cell, diagnostic });
  };
  for (const look of cellRules) {
    if (look.bit !== 0 && (look.bit & asked) === 0) continue;
    if (look.kind !== undefined && look.kind !== kind) continue;
    if (look.reading !== undefined) for (const one of measured) add(look.reading(one, ruled));
    else if (look.moment !== undefined) for (const moment of moments) add(look.moment(moment, ruled));
    else if (look.cell !== undefined) for (const diagnostic of look.cell(ruled)) add(diagnostic);
  }
  return found.length === 0 ? nothing : found;
}

const nothing: readonly Finding[] = [];

/** The header, suspects, and cells that may name an engine state; of the rest rules look at readings only. */
function mayBeRuled({ cell }: ReadCell): boolean {
  if (cell === undefined) return false;
  return cell.kind === 'diag' || cell.kind === 'suspects' || 'state' in cell || 'states' in cell;
}

function together(
  studied: readonly Finding[],
  byRules: readonly Finding[],
  more: readonly Finding[],
): readonly Finding[] {
  return byRules.length + more.length === 0 ? studied : inOrder([...studied, ...byRules, ...more]);
}

/** By place; findings at one place stay in the order they were made. */
function inOrder(findings: readonly Finding[]): readonly Finding[] {
  return findings.toSorted((a, b) => a.diagnostic.span.start - b.diagnostic.span.start);
}

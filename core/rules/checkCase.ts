import type { ReadCell } from '../casefile/readCase.ts';
import type { CaseFiles } from '../recording/files.ts';
import type { CellFacts } from '../study/cellFacts.ts';
import type { Header } from '../study/header.ts';
import { study } from '../study/study.ts';
import { withFindings } from '../study/studyOf.ts';
import type { Finding, Study } from '../study/types.ts';
import { allRules } from './allRules.ts';
import { type Compared, compared } from './compared.ts';
import { measuredIn } from './measured.ts';
import { momentsOf } from './moments.ts';
import type { RuledCell } from './rule.ts';

/**
 * Studies a case and lets every rule look at it. Give the previous result to compute anew only what changed.
 * `files` has what the case's captures name; without it the case has no files.
 */
export function checkCase(text: string, previous?: Study, files?: CaseFiles): Study {
  const studied = study(text, previous, files);
  const now = ruled(studied, previous === undefined ? undefined : known.get(previous.memo));
  known.set(studied.memo, now);
  return withFindings(studied, studied.fileFindings, now.merged);
}

/** What rules found in each cell, by what they looked at. */
interface Ruled {
  readonly facts: readonly CellFacts[];
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
  const across = compared(facts, header, file.cells, before?.compared);
  for (let cell = 0; cell < facts.length; cell++) {
    const [here, read, studied] = [facts[cell], file.cells[cell], cellFindings[cell]];
    if (here === undefined || read === undefined || studied === undefined) continue;
    const old = before?.facts[cell] === here ? before.found[cell] : undefined;
    const byRules = old ?? ofCell(read, here, header);
    const more = across.found.get(cell);
    const isSame =
      old !== undefined && before?.studied[cell] === studied && before.compared.found.get(cell) === more;
    found[cell] = byRules;
    const both = isSame ? before.merged[cell] : undefined;
    merged[cell] = both ?? together(studied, byRules, more ?? []);
  }
  return { facts, found, compared: across, studied: cellFindings, merged };
}

function ofCell(read: ReadCell, facts: CellFacts, header: Header): readonly Finding[] {
  const { cell, readings } = facts;
  const ruled: RuledCell = {
    read,
    header,
    readings,
    measured: measuredIn(readings),
    moments: momentsOf(facts),
  };
  return allRules.flatMap((rule) =>
    'checkCell' in rule ? rule.checkCell(ruled).map((diagnostic) => ({ cell, diagnostic })) : [],
  );
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

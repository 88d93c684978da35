import type { ReadCell } from '../casefile/readCase.ts';
import type { CaseFiles } from '../recording/files.ts';
import type { CellFacts } from '../study/cellFacts.ts';
import type { Header } from '../study/header.ts';
import { study } from '../study/study.ts';
import { withFindings } from '../study/studyOf.ts';
import type { Finding, Study } from '../study/types.ts';
import { allRules } from './allRules.ts';
import { measuredIn } from './measured.ts';
import type { RuledCell } from './rule.ts';

/**
 * Studies a case and lets every rule look at it. Give the previous result to compute anew only what changed.
 * `files` has what the case's captures name; without it the case has no files.
 */
export function checkCase(text: string, previous?: Study, files?: CaseFiles): Study {
  const studied = study(text, previous, files);
  const ofCells = ruled(studied, previous === undefined ? undefined : known.get(previous.memo));
  known.set(studied.memo, ofCells);
  const { merged } = ofCells;
  const more = allRules.flatMap((rule) => ('check' in rule ? rule.check(studied) : []));
  const cells = merged.map((list, cell) => {
    const here = more.length === 0 ? [] : more.filter((each) => each.cell === cell);
    return here.length === 0 ? list : inOrder([...list, ...here]);
  });
  const ofFile = more.filter((each) => each.cell === undefined);
  return withFindings(studied, [...studied.fileFindings, ...ofFile], cells);
}

/** What rules found in each cell, by what they looked at. */
interface Ruled {
  readonly facts: readonly CellFacts[];
  readonly found: readonly (readonly Finding[])[];
  /** What the study found in the cells, and both together in the order of the text. */
  readonly studied: Study['cellFindings'];
  readonly merged: Study['cellFindings'];
}

const known = new WeakMap<Study['memo'], Ruled>();

/** What was found in a cell stays as long as its facts do: they are made anew when its text or the header changes. */
function ruled({ file, memo, cellFindings }: Study, before: Ruled | undefined): Ruled {
  const facts = memo.names.cells;
  const found: (readonly Finding[])[] = [];
  const merged: (readonly Finding[])[] = [];
  for (let cell = 0; cell < facts.length; cell++) {
    const [here, read, studied] = [facts[cell], file.cells[cell], cellFindings[cell]];
    if (here === undefined || read === undefined || studied === undefined) continue;
    const old = before?.facts[cell] === here ? before.found[cell] : undefined;
    const byRules = old ?? ofCell(read, here, memo.header.header);
    const both = old !== undefined && before?.studied[cell] === studied ? before.merged[cell] : undefined;
    found[cell] = byRules;
    merged[cell] = both ?? (byRules.length === 0 ? studied : inOrder([...studied, ...byRules]));
  }
  return { facts, found, studied: cellFindings, merged };
}

function ofCell(read: ReadCell, { cell, readings }: CellFacts, header: Header): readonly Finding[] {
  const ruled: RuledCell = { read, header, measured: measuredIn(readings) };
  return allRules.flatMap((rule) =>
    'checkCell' in rule ? rule.checkCell(ruled).map((diagnostic) => ({ cell, diagnostic })) : [],
  );
}

/** By place; findings at one place stay in the order they were made. */
function inOrder(findings: readonly Finding[]): readonly Finding[] {
  return findings.toSorted((a, b) => a.diagnostic.span.start - b.diagnostic.span.start);
}

import type { ReadCell } from '../casefile/readCase.ts';
import type { CellFacts } from '../study/cellFacts.ts';
import type { Header } from '../study/header.ts';
import { study } from '../study/study.ts';
import type { Finding, Study } from '../study/types.ts';
import { allRules } from './allRules.ts';
import { measuredIn } from './measured.ts';
import type { RuledCell } from './rule.ts';

/** Studies a case and lets every rule look at it. Give the previous result to compute anew only what changed. */
export function checkCase(text: string, previous?: Study): Study {
  const studied = study(text, previous);
  const found = [
    ...ofCells(studied, previous),
    ...allRules.flatMap((rule) => ('check' in rule ? rule.check(studied) : [])),
  ];
  if (found.length === 0) return studied;
  return { ...studied, findings: inOrder([...studied.findings, ...found]) };
}

/** What was found in the cells of a study, by their facts. */
const known = new WeakMap<readonly CellFacts[], readonly (readonly Finding[])[]>();

/** What was found in a cell stays as long as its facts do: they are made anew when its text or the header changes. */
function ofCells({ file, memo }: Study, previous: Study | undefined): readonly Finding[] {
  const { cells } = memo.names;
  const cellsBefore = previous?.memo.names.cells ?? [];
  const foundBefore = known.get(cellsBefore) ?? [];
  const found = cells.map((facts, cell) => {
    const same = cellsBefore[cell] === facts ? foundBefore[cell] : undefined;
    const read = file.cells[cell];
    return same ?? (read === undefined ? [] : ofCell(read, facts, memo.header.header));
  });
  known.set(cells, found);
  return found.flat();
}

function ofCell(read: ReadCell, { cell, readings }: CellFacts, header: Header): readonly Finding[] {
  const ruled: RuledCell = { read, header, measured: measuredIn(readings) };
  return allRules.flatMap((rule) =>
    'checkCell' in rule ? rule.checkCell(ruled).map((diagnostic) => ({ cell, diagnostic })) : [],
  );
}

/** By cell, then by place; findings at one place stay in the order they were made. */
function inOrder(findings: readonly Finding[]): readonly Finding[] {
  return [...findings].sort(
    (a, b) => (a.cell ?? -1) - (b.cell ?? -1) || a.diagnostic.span.start - b.diagnostic.span.start,
  );
}

import type { CellFacts } from '../study/cellFacts.ts';
import { study } from '../study/study.ts';
import type { Finding, Study } from '../study/types.ts';
import { allRules } from './allRules.ts';
import { measuredIn } from './measured.ts';
import type { RuledCell } from './rule.ts';

/** Studies a case and lets every rule look at it. Give the previous result to compute anew only what changed. */
export function checkCase(text: string, previous?: Study): Study {
  const studied = study(text, previous);
  const found = [
    ...ofCells(studied),
    ...allRules.flatMap((rule) => ('check' in rule ? rule.check(studied) : [])),
  ];
  if (found.length === 0) return studied;
  return { ...studied, findings: inOrder([...studied.findings, ...found]) };
}

/** What was found in a cell stays as long as its facts do: they are made anew when its text or the header changes. */
const known = new WeakMap<CellFacts, readonly Finding[]>();

function ofCells({ file, memo }: Study): readonly Finding[] {
  return memo.names.cells.flatMap((facts, cell) => {
    let found = known.get(facts);
    const read = file.cells[cell];
    if (found === undefined && read !== undefined) {
      const ruled: RuledCell = { read, measured: measuredIn(facts.readings) };
      found = allRules.flatMap((rule) =>
        'checkCell' in rule ? rule.checkCell(ruled).map((diagnostic) => ({ cell, diagnostic })) : [],
      );
      known.set(facts, found);
    }
    return found ?? [];
  });
}

/** By cell, then by place; findings at one place stay in the order they were made. */
function inOrder(findings: readonly Finding[]): readonly Finding[] {
  return [...findings].sort(
    (a, b) => (a.cell ?? -1) - (b.cell ?? -1) || a.diagnostic.span.start - b.diagnostic.span.start,
  );
}

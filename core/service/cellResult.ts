import type { Cell } from '../casefile/cell.ts';
import { drawnOf } from '../chart/drawnOf.ts';
import type { Severity } from '../diagnostics/row.ts';
import { unitOf } from '../quantity/unit.ts';
import type {
  Block,
  Caution,
  ChartBlock,
  FindingLine,
  Paragraph,
  Sign,
  SuspectLine,
  Table,
  VerdictLine,
} from '../report/blocks.ts';
import { byWeight } from '../report/byWeight.ts';
import { contentOf } from '../report/casePage.ts';
import type { CellContext } from '../report/cells/cellContext.ts';
import { answerOf } from '../report/cells/questionCell.ts';
import { findingIn } from '../report/findingLine.ts';
import { blockAsMarkdown } from '../report/markdown/blocks.ts';
import type { Study } from '../study/types.ts';
import { lineIndex } from '../text/lines.ts';
import { cautionsAt, saidIn } from './cautionsAt.ts';
import { type CellParts, partsOf } from './cellParts.ts';
import { cellStatus } from './cellStatus.ts';
import { secondUnit } from './otherUnit.ts';
import type { UnitPreference } from './types.ts';

/**
 * A cell's results as plain JSON (mime type application/vnd.diag.result+json): what the report shows of the cell
 * beyond its own text, in the report's own words, with a Markdown alternative.
 */
export interface CellResult {
  readonly version: 1;
  /** The cell's kind, or "unread". */
  readonly kind: string;
  readonly title: string;
  /** In order, as they are to be shown. Empty: the cell has no output (a note, a header in order). */
  readonly blocks: readonly ResultBlock[];
  /** All blocks as Markdown; empty when there are none. */
  readonly markdown: string;
  /** The status bar's line; undefined for a cell that decides nothing and in which nothing was found. */
  readonly status: CellStatus | undefined;
}

/** Blocks of the report; the line and column of a finding count in the cell's own text, from 1. */
export type ResultBlock = Caution | Table | VerdictLine | SuspectLine | Paragraph | FindingLine | ChartBlock;

export interface CellStatus {
  /** "3 of 4 hold, 1 fails", "2 errors, all 3 hold, 1 note" */
  readonly text: string;
  /** The worst of the verdicts, said with a sign. */
  readonly sign: Sign;
  /** The whole in a sentence, for a tooltip and for those who hear it. */
  readonly says: string;
  readonly severity: Severity | undefined;
  /** The first thing that fails or is wrong, as a place in the cell: where "show me" goes. */
  readonly first: { readonly start: number; readonly end: number } | undefined;
}

/**
 * What stands under a cell as its output. A cell of which nothing changed since the last study gives the very same
 * object, so that whoever shows it sees at once that there is nothing to do.
 */
export function cellResult(study: Study, index: number, units: UnitPreference = 'as written'): CellResult {
  const cell = study.file.cells[index]?.cell;
  if (cell === undefined) return compute(study, index, units);
  const before = kept.get(cell);
  const lists = madeFrom(study, index, units);
  if (before !== undefined && sameParts(before.lists, lists)) return before.result;
  const shown = whatItShows(study, index, units);
  const isSame = before !== undefined && sameParts(before.shown, shown);
  const result = isSame ? before.result : compute(study, index, units);
  kept.set(cell, { lists, shown, result });
  return result;
}

const kept = new WeakMap<
  Cell,
  { readonly lists: readonly unknown[]; readonly shown: readonly unknown[]; readonly result: CellResult }
>();

/** What the objects of `whatItShows` stand in. After a keystroke these are the same for most cells, and the rest is not looked at. */
function madeFrom(study: Study, index: number, units: UnitPreference): readonly unknown[] {
  const { memo, cellFindings } = study;
  const outcome = memo.outcomes[index];
  const isWeighed = outcome !== undefined && outcome.suspects.length > 0;
  return [
    units,
    memo.names.cells[index],
    outcome,
    cellFindings[index],
    cautionsAt(study, index),
    drawnOf(study, index)?.drawing,
    isWeighed ? study.next : undefined,
    isWeighed ? lastSuspectCell(study) : undefined,
  ];
}

/** The very objects that a result is made from, beside the cell itself: equal objects give an equal result. */
function whatItShows(study: Study, index: number, units: UnitPreference): readonly unknown[] {
  const { readings, computed, expectations, suspects, findings } = partsOf(study, index);
  const made: unknown[] = [units, readings.length, computed.length, expectations.length, ...readings];
  for (const each of computed) made.push(each.value, each.fullName);
  for (const each of expectations) made.push(each.truth);
  for (const each of findings) made.push(each.facts, each.span.start, each.span.end);
  if (suspects.length > 0) made.push(study.next, lastSuspectCell(study));
  for (const each of cautionsAt(study, index)) made.push(saidIn(each));
  for (const each of study.memo.outcomes[index]?.answers ?? []) made.push(each.value);
  made.push(...(study.memo.names.cells[index]?.readAs ?? []));
  made.push(drawnOf(study, index)?.drawing);
  return made;
}

function lastSuspectCell({ suspects }: Study): number | undefined {
  return suspects[suspects.length - 1]?.cell;
}

function sameParts(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((each, at) => each === b[at]);
}

function compute(study: Study, index: number, units: UnitPreference): CellResult {
  const parts = partsOf(study, index);
  const { cell, raw } = study.file.cells[index] ?? {};
  const { serious, notes } = byWeight(findingLines(raw?.text ?? '', parts));
  const context: CellContext = { study, index, ...parts, pictures: noPictures, drawChart: undefined };
  const content = cell === undefined ? undefined : contentOf(cell, context);
  const answer =
    cell?.kind === 'question'
      ? answerOf(cell, index + 1, study.memo.outcomes[index]?.answers[0]?.value)
      : undefined;
  const shown = [...(content?.blocks ?? []), ...(answer?.blocks ?? [])].flatMap((each) =>
    resultOf(each, units),
  );
  const blocks: readonly ResultBlock[] = [...cautionsAt(study, index), ...serious, ...shown, ...notes];
  return {
    version: 1,
    kind: cell?.kind ?? 'unread',
    title: content?.title ?? '',
    blocks,
    markdown: blocks.map((each) => blockAsMarkdown(each, 2)).join('\n\n'),
    status: cellStatus(parts),
  };
}

/** What a paragraph tells that the cell's text does not: by what stands before it. */
const saidBeside: ReadonlySet<string> = new Set(['Next', 'Answer', 'Read as']);

/** Pictures stand in the cell's own preview; nothing is read for them here. */
const noPictures: CellContext['pictures'] = () => undefined;

/** A block that says more than the cell's own text does. */
function resultOf(block: Block, units: UnitPreference): readonly ResultBlock[] {
  switch (block.kind) {
    case 'table':
      return [units === 'as written' ? block : inUnits(block, units)];
    case 'verdict':
    case 'suspect':
    case 'chart':
      return [block];
    case 'paragraph':
      return saidBeside.has(block.lead ?? '') ? [block] : [];
    case 'finding':
    case 'caution':
    case 'prose':
    case 'facts':
    case 'bullets':
    case 'picture':
    case 'source':
      return [];
  }
}

/** The figures in the other system are left out where the row is in the wanted one already. */
function inUnits(table: Table, units: UnitPreference): Table {
  return {
    ...table,
    rows: table.rows.map((row) => {
      const [symbol = '', word] = row.unit.split(' ');
      const unit = unitOf(symbol);
      const kind = word === 'absolute' || word === 'vacuum' ? word : 'open';
      const other =
        unit === undefined ? undefined : secondUnit({ dimension: unit.dimension, kind, unit }, units);
      return other === undefined ? { ...row, other: undefined } : row;
    }),
  };
}

/** What is unusual is drawn and said beside the reading itself. */
function findingLines(text: string, { findings }: CellParts): readonly FindingLine[] {
  const told = findings.filter(({ code }) => code !== 'unusual-value');
  if (told.length === 0) return [];
  const lines = lineIndex(text);
  return told.map((each) => findingIn(text, lines, each.span, each));
}

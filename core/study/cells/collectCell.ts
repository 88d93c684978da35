import type { Cell } from '../../casefile/cell.ts';
import type { Diagnostic } from '../../diagnostics/diagnostic.ts';
import type { FileContent } from '../../recording/files.ts';
import type { CellFacts } from '../cellFacts.ts';
import type { Header } from '../header.ts';
import type { Parse } from '../source.ts';
import { takenAt } from '../takenAt.ts';
import { findTool } from '../tools.ts';
import { captureReadings } from './capture.ts';
import { checkPrefix, checkStateName } from './names.ts';
import { answeredReadings } from './obd.ts';
import { crankPlots, noPlots, plotsOf } from './plots.ts';
import { referenceReadings, takenReadings } from './readings.ts';
import { definitionsOf, expectationsOf, predictionsOf, proofsOf } from './statements.ts';
import { testReadings } from './test.ts';
import { type Collected, circumstancesOf, readValues } from './values.ts';

/** What a cell brings to the case: its readings, computed names and statements. */
export function collectCell(
  cell: Cell | undefined,
  text: string,
  index: number,
  header: Header,
  parse: Parse,
  content: FileContent | undefined,
): CellFacts {
  if (cell === undefined) return unread(text, index);
  const as = 'as' in cell ? cell.as : undefined;
  const {
    readings,
    givenCodes,
    givenVins = [],
    diagnostics,
    isUnknown = false,
    readAs = [],
    headings = [],
  } = readingsOf(cell, text, index, header, content);
  const lets = definitionsOf(cell.kind === 'check' ? cell.let : undefined, index, as?.text, header, parse);
  const states = 'states' in cell ? (cell.states ?? []) : [];
  const plots =
    cell.kind === 'chart'
      ? plotsOf(cell, parse)
      : cell.kind === 'capture'
        ? crankPlots(cell, readings, parse)
        : noPlots;
  const found: Diagnostic[] = [
    ...checkPrefix(as, header),
    ...diagnostics,
    ...lets.diagnostics,
    ...plots.diagnostics,
  ];
  if ('tool' in cell) found.push(...findTool(header.tools, cell.tool).diagnostics);
  for (const { key } of states) found.push(...checkStateName(key, header));
  const statesByName = new Map(
    states.flatMap(({ key, value }) => {
      const taken = takenAt(value);
      return taken === undefined ? [] : [[key.text, taken] as const];
    }),
  );
  return {
    cell: index,
    as: as?.text,
    unread: isUnknown,
    asSpan: as?.span,
    states: statesByName,
    answersForSignals: cell.kind === 'readings',
    open: cell.kind !== 'reference',
    readings,
    definitions: lets.definitions,
    statements: statementsOf(cell, index, parse),
    suspects: cell.kind === 'suspects' ? (cell.consider ?? []).map((each) => each.name.text.trim()) : [],
    answers: cell.kind === 'question' && cell.answer !== undefined ? [parse(cell.answer)] : [],
    plots: plots.plots,
    meantToFail: cell.kind === 'check' && cell.shows !== undefined ? cell.title.span : undefined,
    givenCodes,
    givenVins,
    diagnostics: found,
    content,
    readAs,
    headings,
  };
}

function readingsOf(
  cell: Cell,
  text: string,
  index: number,
  header: Header,
  content: FileContent | undefined,
): Collected & Partial<Pick<CellFacts, 'givenCodes' | 'givenVins'>> {
  switch (cell.kind) {
    case 'readings': {
      const around = circumstancesOf(cell, 'readings', index, header);
      const taken = takenReadings(cell, around);
      if (cell.obd === undefined) return taken;
      const { readings, diagnostics, ...given } = answeredReadings(cell, text, around, taken.readings);
      return {
        readings: [...taken.readings, ...readings],
        ...given,
        diagnostics: [...taken.diagnostics, ...diagnostics],
      };
    }
    case 'reference':
      return referenceReadings(cell, circumstancesOf(cell, 'reference', index, header), content);
    case 'capture':
      return captureReadings(cell, circumstancesOf(cell, 'capture', index, header), content);
    case 'picture':
      return readValues(cell.marks?.entries ?? [], circumstancesOf(cell, 'picture', index, header));
    case 'test':
      return testReadings(cell, circumstancesOf(cell, 'test', index, header));
    default:
      return { readings: [], diagnostics: [] };
  }
}

function statementsOf(cell: Cell, index: number, parse: Parse): CellFacts['statements'] {
  switch (cell.kind) {
    case 'check':
      return expectationsOf(cell, index, parse);
    case 'repair':
      return proofsOf(cell, index, parse);
    case 'suspects':
      return predictionsOf(cell, index, parse);
    default:
      return [];
  }
}

/** A cell that could not be read still has its name, as far as that can be seen. */
function unread(text: string, index: number): CellFacts {
  return {
    cell: index,
    as: /^as:[ \t]+([A-Za-z_][A-Za-z0-9_]*)[ \t]*(?:#.*)?$/m.exec(text)?.[1],
    unread: true,
    asSpan: undefined,
    states: new Map(),
    answersForSignals: false,
    open: false,
    readings: [],
    definitions: [],
    statements: [],
    suspects: [],
    answers: [],
    plots: [],
    meantToFail: undefined,
    givenCodes: undefined,
    givenVins: [],
    diagnostics: [],
    content: undefined,
    readAs: [],
    headings: [],
  };
}

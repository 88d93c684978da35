import { type CaseFile, readCase } from '../casefile/readCase.ts';
import { findBarometers } from './barometer.ts';
import type { CellFacts } from './cellFacts.ts';
import { collectCell } from './cells/collectCell.ts';
import { changeOf } from './change.ts';
import { evaluateDefinitions } from './evaluateCase.ts';
import { type Header, noHeader, readHeader } from './header.ts';
import { keepValues } from './keepValues.ts';
import type { Memo } from './memo.ts';
import { type Outcome, outcomeOf } from './outcome.ts';
import { type Parse, parserKnowing } from './source.ts';
import type { Surroundings } from './surroundings.ts';
import { nextMeasurement } from './suspects.ts';
import type { Finding, Reading, Study } from './types.ts';

/**
 * Studies a case: text → cells → names and types → values → verdicts.
 * Given a previous study it computes anew only what depends on a change; the result is the same either way.
 */
export function study(text: string, previous?: Study): Study {
  const memo = previous?.memo;
  const file = readCase(text, previous?.file);
  const header = headerOf(file, memo);
  const { parse, parsed } = parserKnowing(memo?.parsed ?? new Map());
  const cells = collectCells(file, header, parse, previous);
  const readings = all(cells, (each) => each.readings);
  const barometers = findBarometers(readings, header.values);
  const ofReading = (cell: number) => file.cells[cell]?.diagnostics;
  const isSame = (cell: number): boolean => ofReading(cell) === memo?.outcomes[cell]?.ofReading;
  const change = changeOf(cells, header, barometers, isSame, memo);
  const { names, order, bareNames } = change;
  const around: Surroundings = {
    names,
    header,
    barometers,
    done: change.cells.size === cells.length ? new Map() : new Map(memo?.done),
    before: outcomesBefore(file, previous),
    now: new Map(),
    reads: new Map(),
    bareNames,
    fresh: { count: 0 },
  };
  const circles = evaluateDefinitions(around, order, change.cells);
  const outcomes = cells.map((facts, cell): Outcome => {
    const same = change.cells.has(cell) ? undefined : memo?.outcomes[cell];
    if (same !== undefined) return same;
    const more = [...(cell === 0 ? header.diagnostics : []), ...(circles.get(cell) ?? [])];
    return outcomeOf(facts, around, ofReading(cell) ?? [], more);
  });
  const reading = readingsByName(readings);
  const suspects = all(outcomes, (each) => each.suspects);
  const ofFile = file.diagnostics.map((diagnostic): Finding => ({ cell: undefined, diagnostic }));
  return {
    text,
    file,
    title: header.title,
    readings: [...header.values.values(), ...readings],
    computed: all(outcomes, (each) => each.computed),
    expectations: all(outcomes, (each) => each.expectations),
    answers: all(outcomes, (each) => each.answers),
    suspects,
    next: nextMeasurement(suspects, notTakenIn(reading)),
    findings: all([{ findings: ofFile }, ...outcomes], (each) => each.findings),
    memo: {
      header: { cell: file.cells[0]?.cell, header },
      names,
      barometers,
      reading,
      parsed,
      order,
      bareNames,
      done: around.done,
      outcomes,
      fresh: around.fresh.count,
    },
  };
}

function all<P, T>(parts: readonly P[], of: (part: P) => readonly T[]): T[] {
  const list: T[] = [];
  for (const part of parts) for (const each of of(part)) list.push(each);
  return list;
}

/** The header is the file's first cell. */
function headerOf(file: CaseFile, memo: Memo | undefined): Header {
  const first = file.cells[0]?.cell;
  if (first?.kind !== 'diag') return noHeader;
  if (memo === undefined) return readHeader(first, 0);
  const { cell, header: before } = memo.header;
  if (cell === first) return before;
  const header = readHeader(first, 0);
  const values = keepValues([...header.values.values()], (name) => before.values.get(name));
  return { ...header, values: new Map(values.map((each) => [each.fullName, each])) };
}

/** What each cell brings; the very same facts as before for a cell whose text, place and header are the same. */
function collectCells(
  file: CaseFile,
  header: Header,
  parse: Parse,
  previous: Study | undefined,
): readonly CellFacts[] {
  const before = previous?.memo.header.header === header ? previous : undefined;
  return file.cells.map(({ cell, raw }, index) => {
    const known = previous?.memo.names.cells[index];
    const there = before?.file.cells[index];
    const same = cell === undefined ? there?.raw.text === raw.text : there?.cell === cell;
    if (same && known !== undefined) return known;
    const facts = collectCell(cell, raw.text, index, header, parse);
    if (previous === undefined) return facts;
    const readings = keepValues(facts.readings, (name, at) => {
      const near = known?.readings[at];
      return near?.fullName === name ? near : previous.memo.reading(name);
    });
    return { ...facts, readings };
  });
}

/** What the expressions of a cell came to before: of the cell with the same text, or else of the one in its place. */
function outcomesBefore(file: CaseFile, previous: Study | undefined): Surroundings['before'] {
  if (previous === undefined) return () => undefined;
  const { outcomes } = previous.memo;
  let places: ReadonlyMap<unknown, number> | undefined;
  return (index) => {
    const cell = file.cells[index]?.cell;
    if (cell === undefined || previous.file.cells[index]?.cell === cell) return outcomes[index]?.evaluated;
    places ??= new Map(previous.file.cells.map((each, at) => [each.cell, at]));
    return outcomes[places.get(cell) ?? index]?.evaluated;
  };
}

/** Finds readings by their full names. The index is made when the first is asked for, which few changes need. */
function readingsByName(readings: readonly Reading[]): Memo['reading'] {
  let index: ReadonlyMap<string, Reading> | undefined;
  return (fullName) => {
    index ??= new Map(readings.map((each) => [each.fullName, each]));
    return index.get(fullName);
  };
}

/** Whether a reading of that name is missing: no cell has it, or the cell says that it was not taken. */
function notTakenIn(reading: Memo['reading']): (name: string) => boolean {
  return (name) => {
    const value = reading(name)?.value;
    return value === undefined || (value.kind === 'absent' && value.status === 'not measured');
  };
}

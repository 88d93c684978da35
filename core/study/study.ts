import { limits } from '../casefile/limits.ts';
import { type CaseFile, type ReadCell, readCase } from '../casefile/readCase.ts';
import type { Stream } from '../casefile/stream.ts';
import { cellsWith } from '../casefile/traits.ts';
import { type CaseFiles, type FileContent, noFiles, sameContent } from '../recording/files.ts';
import { remade } from '../text/remade.ts';
import type { CellFacts } from './cellFacts.ts';
import { collectCell } from './cells/collectCell.ts';
import { changeOf } from './change.ts';
import { Done } from './done.ts';
import { evaluateDefinitions } from './evaluateCase.ts';
import { fileNamedBy } from './filesNamed.ts';
import { type Header, headerBasis, noHeader, readHeader, seenTheSame } from './header.ts';
import { keepValues } from './keepValues.ts';
import type { Memo } from './memo.ts';
import { type Outcome, outcomeOf } from './outcome.ts';
import { readersIn, readsTheSame } from './readers.ts';
import { type Parse, parserKnowing } from './source.ts';
import { studyOf } from './studyOf.ts';
import type { Surroundings } from './surroundings.ts';
import type { Reading, Study } from './types.ts';

/**
 * Studies a case: text → cells → names and types → values → verdicts. Who holds its text in pieces gives its stream.
 * Given a previous study it computes anew only what depends on a change; the result is the same either way.
 */
export function study(written: string | Stream, previous?: Study, files: CaseFiles = noFiles): Study {
  const known = previous !== undefined && isFull(previous) ? undefined : previous;
  const asked = askedOnce(files);
  const now = studyKnowing(written, known, asked);
  // For which names there is no room depends on all the others.
  return isFull(now) && known !== undefined ? studyKnowing(written, undefined, asked) : now;
}

/** Whether names were refused, since the case has no room for what they would keep. */
const isFull = ({ memo }: Study): boolean => memo.kept > limits.sourcesOfCase;

/** A file is the same for every cell of one study, whatever happens to it meanwhile. */
function askedOnce(files: CaseFiles): CaseFiles {
  const answers = new Map<string, FileContent>();
  return (file) => {
    let answer = answers.get(file);
    if (answer === undefined) {
      answer = files(file);
      answers.set(file, answer);
    }
    return answer;
  };
}

function studyKnowing(written: string | Stream, previous: Study | undefined, files: CaseFiles): Study {
  const memo = previous?.memo;
  const file = readCase(written, previous?.file);
  const headerRead = headerOf(file, memo);
  const { header } = headerRead;
  const { parse, parsed } = parserKnowing(memo?.parsed ?? new Map());
  const cells = collectCells(file, header, parse, previous, files);
  const ofReading = (cell: number) => file.cells[cell]?.diagnostics;
  const isSame = (cell: number): boolean =>
    file.cells[cell] === previous?.file.cells[cell] || ofReading(cell) === memo?.outcomes[cell]?.ofReading;
  const change = changeOf(cells, header, isSame, memo);
  const { names, barometers, order, bareNames } = change;
  const isWhole = change.cells.size === cells.length;
  const around: Surroundings = {
    names,
    header,
    barometers,
    done: new Done(order.definitions, isWhole ? undefined : memo?.done),
    before: outcomesBefore(file, previous),
    now: new Map(),
    reads: new Map(),
    bareNames,
    fresh: { count: 0 },
  };
  const { found, kept } = evaluateDefinitions(around, order, change.cells, isWhole ? 0 : (memo?.kept ?? 0));
  const outcomes: Outcome[] = isWhole ? [] : [...(memo?.outcomes ?? [])];
  const cellFindings = isWhole ? [] : [...(memo?.cellFindings ?? [])];
  let readsSame = !isWhole;
  for (const cell of change.cells) {
    const facts = cells[cell];
    if (facts === undefined) continue;
    const more = [...(cell === 0 ? header.diagnostics : []), ...(found.get(cell) ?? [])];
    const outcome = outcomeOf(facts, around, ofReading(cell) ?? [], more);
    readsSame &&= readsTheSame(outcomes[cell], outcome);
    outcomes[cell] = outcome;
    cellFindings[cell] = outcome.findings;
  }
  const memoNow: Memo = {
    header: headerRead,
    names,
    barometers,
    reading: readingsByName(cells),
    parsed,
    order,
    bareNames,
    done: around.done,
    kept,
    outcomes,
    readers: readsSame && memo !== undefined ? memo.readers : readersIn(outcomes),
    cellFindings,
    fresh: around.fresh.count,
  };
  return studyOf(file, memoNow);
}

/** The header is the file's first cell. */
function headerOf(file: CaseFile, memo: Memo | undefined): Memo['header'] {
  const first = file.cells[0];
  const cell = first?.cell;
  if (first === undefined || cell?.kind !== 'diag') return { cell, basis: '', header: noHeader };
  if (cell === memo?.header.cell) return memo.header;
  const basis = headerBasis(cell, first.raw.text);
  const header = readHeader(cell, 0);
  if (memo === undefined) return { cell, basis, header };
  const before = memo.header.header;
  const kept = keepValues([...header.values.values()], (name) => before.values.get(name));
  const values = new Map(kept.map((each) => [each.fullName, each]));
  const { tools, ownSignals } = basis === memo.header.basis && before !== noHeader ? before : header;
  return { cell, basis, header: { ...header, values, tools, ownSignals } };
}

/** What each cell brings; the very same facts as before for a cell with the same text and place, while the header says the same. */
function collectCells(
  file: CaseFile,
  header: Header,
  parse: Parse,
  previous: Study | undefined,
  files: CaseFiles,
): readonly CellFacts[] {
  const before =
    previous !== undefined && seenTheSame(previous.memo.header.header, header) ? previous : undefined;
  const collect = ({ cell, raw }: ReadCell, index: number): CellFacts => {
    const known = previous?.memo.names.cells[index];
    const there = before?.file.cells[index];
    const same = there?.cell === cell && (cell !== undefined || there?.raw.text === raw.text);
    const named = fileNamedBy(cell);
    const content = named === undefined ? undefined : files(named);
    if (same && known !== undefined && sameContent(known.content, content)) return known;
    const facts = collectCell(cell, raw.text, index, header, parse, content);
    if (previous === undefined) return facts;
    const near = (name: string, at: number) => {
      const here = known?.readings[at];
      return here?.fullName === name ? here : previous.memo.reading(name);
    };
    const old = previous.file.cells[index]?.raw.text ?? '';
    const readings = keepValues(
      facts.readings,
      near,
      ({ start, end }) => old.slice(start, end) === raw.text.slice(start, end),
    );
    return { ...facts, readings };
  };
  const known = before?.memo.names.cells ?? [];
  const facts = remade(file.cells, before && { of: before.file.cells, made: known }, collect);
  // The file that a cell names may have changed while the cell did not.
  const renewed = cellsWith(file, 'samples').flatMap((index) => {
    const [read, old] = [file.cells[index], known[index]];
    if (read === undefined || old === undefined || facts[index] !== old) return [];
    const now = collect(read, index);
    return now === old ? [] : [[index, now] as const];
  });
  if (renewed.length === 0) return facts;
  const list = [...facts];
  for (const [index, now] of renewed) list[index] = now;
  return list;
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
function readingsByName(cells: readonly CellFacts[]): Memo['reading'] {
  let index: Map<string, Reading> | undefined;
  return (fullName) => {
    if (index === undefined) {
      index = new Map();
      for (const { readings } of cells) for (const each of readings) index.set(each.fullName, each);
    }
    return index.get(fullName);
  };
}

import type { Cell } from '../casefile/cell.ts';
import { type CaseFile, readCase } from '../casefile/readCase.ts';
import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import { findBarometers } from './barometer.ts';
import type { CellFacts, Definition } from './cellFacts.ts';
import { collectCell } from './cells/collectCell.ts';
import { evaluateDefinitions } from './evaluateCase.ts';
import { evaluateSource } from './evaluateSource.ts';
import { expectationOf, faultsNotShown } from './expectations.ts';
import { type Header, noHeader, readHeader } from './header.ts';
import { keepValues } from './keepValues.ts';
import type { Memo } from './memo.ts';
import { collectNames } from './names.ts';
import { placedIn } from './placed.ts';
import { onOneLine, type Parse, parserKnowing } from './source.ts';
import type { Evaluated, Surroundings } from './surroundings.ts';
import { nextMeasurement, weigh } from './suspects.ts';
import type { Answer, Computed, Expectation, Finding, Reading, Study, Suspect } from './types.ts';

/**
 * Studies a case: text → cells → names and types → values → verdicts.
 * Given a previous study it computes anew only what depends on a change; the result is the same either way.
 */
export function study(text: string, previous?: Study): Study {
  const file = readCase(text, previous?.file);
  const header = headerOf(file, previous?.memo);
  const { parse, parsed } = parserKnowing(previous?.memo.parsed ?? new Map());
  const { cells, facts } = collectCells(file, header, parse, previous?.memo);
  const names = collectNames(cells, header.values, header.ownSignals);
  const readings = cells.flatMap((each) => each.readings);
  const around: Surroundings = {
    names,
    header,
    barometers: findBarometers(readings, header.values),
    done: new Map(),
    before: previous?.memo.evaluated ?? new Map(),
    now: new Map(),
    fresh: { count: 0 },
  };
  const circles = evaluateDefinitions(around);
  const computed = cells.flatMap((each) => each.definitions.map((one) => computedOf(one, around)));
  const evaluated = cells.map((each) => evaluateCell(each, around));
  const expectations = evaluated.flatMap((each) => each.expectations);
  const found = cells.map((cell, i) => [
    ...(circles[i] ?? []),
    ...cell.diagnostics,
    ...(evaluated[i]?.diagnostics ?? []),
    ...repeatedName(cells, cell),
  ]);
  const suspects = suspectsOf(cells, expectations);
  return {
    text,
    file,
    title: header.title,
    readings: [...header.values.values(), ...readings],
    computed: named(computed, readings),
    expectations,
    answers: evaluated.flatMap((each) => each.answers),
    suspects,
    next: nextMeasurement(suspects, notTakenIn(readings)),
    findings: inOrder(file, header, found),
    memo: {
      header: { cell: file.cells[0]?.cell, header },
      facts,
      readings: new Map(readings.map((each) => [each.fullName, each])),
      names,
      barometers: around.barometers,
      parsed,
      evaluated: around.now,
      fresh: around.fresh.count,
    },
  };
}

/** What a cell's own expressions come to: its computed names are done already, its statements and answers are not. */
function evaluateCell(
  cell: CellFacts,
  around: Surroundings,
): {
  readonly expectations: readonly Expectation[];
  readonly answers: readonly Answer[];
  readonly diagnostics: readonly Diagnostic[];
} {
  const diagnostics: Diagnostic[] = [];
  for (const { id, source } of cell.definitions) {
    diagnostics.push(...placedIn(source.node, around.done.get(id)?.diagnostics ?? source.diagnostics));
  }
  const expectations = cell.statements.map((statement) => {
    const at = { cell: cell.cell, name: 'a statement' };
    const evaluated = evaluateSource(statement.source, at, around);
    const result = expectationOf(statement, evaluated);
    diagnostics.push(...placedIn(statement.source.node, evaluated.diagnostics), ...result.diagnostics);
    return result.expectation;
  });
  const answers = cell.answers.map((source): Answer => {
    const at = { cell: cell.cell, name: 'an answer' };
    const { value, from, diagnostics: about } = evaluateSource(source, at, around);
    diagnostics.push(...placedIn(source.node, about));
    return { cell: cell.cell, text: onOneLine(source.node.text), value, from };
  });
  diagnostics.push(...faultsNotShown(cell, expectations));
  return { expectations, answers, diagnostics };
}

/** The header is the file's first cell. */
function headerOf(file: CaseFile, memo: Memo | undefined): Header {
  const first = file.cells[0]?.cell;
  if (first?.kind !== 'diag') return noHeader;
  if (memo === undefined) return readHeader(first, 0);
  const { cell, header: before } = memo.header;
  if (cell === first) return before;
  const header = readHeader(first, 0);
  const values = keepValues([...header.values.values()], before.values);
  return { ...header, values: new Map(values.map((each) => [each.fullName, each])) };
}

function collectCells(
  file: CaseFile,
  header: Header,
  parse: Parse,
  memo: Memo | undefined,
): { readonly cells: readonly CellFacts[]; readonly facts: Memo['facts'] } {
  const facts = new Map<Cell, CellFacts>();
  const known = memo?.header.header === header ? memo.facts : undefined;
  const readings = memo?.readings ?? new Map<string, Reading>();
  const fresh = (fact: CellFacts): CellFacts => ({ ...fact, readings: keepValues(fact.readings, readings) });
  const cells = file.cells.map(({ cell }, index) => {
    const before = cell === undefined ? undefined : known?.get(cell);
    const fact = before?.cell === index ? before : fresh(collectCell(cell, index, header, parse));
    if (cell !== undefined) facts.set(cell, fact);
    return fact;
  });
  return { cells, facts };
}

function computedOf(definition: Definition, around: Surroundings): Computed {
  const evaluated: Evaluated | undefined = around.done.get(definition.id);
  const { node } = definition.source;
  return {
    fullName: definition.id,
    name: definition.name,
    cell: definition.cell,
    typed: evaluated?.typed,
    text: onOneLine(node.text),
    value: evaluated?.value ?? { kind: 'absent', status: 'cannot compute', why: 'it needs itself' },
    from: evaluated?.from ?? [],
    keySpan: definition.keySpan,
    valueSpan: node.span,
  };
}

/** A computed name without a cell's name in front is called by its bare name where only one thing has it. */
function named(computed: readonly Computed[], readings: readonly Reading[]): readonly Computed[] {
  const count = new Map<string, number>();
  const local = (each: Computed): boolean => each.fullName === `${each.cell + 1}.${each.name}`;
  for (const each of computed) if (local(each)) count.set(each.name, (count.get(each.name) ?? 0) + 1);
  const taken = new Set(readings.map((each) => each.fullName));
  return computed.map((each) =>
    local(each) && count.get(each.name) === 1 && !taken.has(each.name)
      ? { ...each, fullName: each.name }
      : each,
  );
}

function suspectsOf(cells: readonly CellFacts[], expectations: readonly Expectation[]): readonly Suspect[] {
  return cells.flatMap(({ cell, suspects }) =>
    suspects.map((name) =>
      weigh({
        cell,
        name,
        expectations: expectations.filter((each) => each.cell === cell && each.suspect === name),
      }),
    ),
  );
}

/** Whether a reading of that name is missing: no cell has it, or the cell says that it was not taken. */
function notTakenIn(readings: readonly Reading[]): (name: string) => boolean {
  const values = new Map(readings.map((each) => [each.fullName, each.value]));
  return (name) => {
    const value = values.get(name);
    return value === undefined || (value.kind === 'absent' && value.status === 'not measured');
  };
}

function repeatedName(cells: readonly CellFacts[], cell: CellFacts): readonly Diagnostic[] {
  if (cell.as === undefined || cell.asSpan === undefined) return [];
  const first = cells.find((each) => each.as === cell.as);
  if (first === undefined || first === cell) return [];
  return [diagnose('duplicate-name', cell.asSpan, { name: cell.as, where: `cell ${first.cell + 1}` })];
}

function inOrder(
  file: CaseFile,
  header: Header,
  found: readonly (readonly Diagnostic[])[],
): readonly Finding[] {
  const findings: Finding[] = file.diagnostics.map((diagnostic) => ({ cell: undefined, diagnostic }));
  file.cells.forEach((cell, index) => {
    const here = [...cell.diagnostics, ...(index === 0 ? header.diagnostics : []), ...(found[index] ?? [])];
    here.sort((a, b) => a.span.start - b.span.start || a.span.end - b.span.end);
    for (const diagnostic of here) findings.push({ cell: index, diagnostic });
  });
  return findings;
}

import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import type { Expression } from '../expression/tree.ts';
import type { CellFacts, Definition, Plot, Source } from './cellFacts.ts';
import { refusedHere } from './crowded.ts';
import { evaluateSource } from './evaluateSource.ts';
import { expectationOf, faultsNotShown } from './expectations.ts';
import { placedIn } from './placed.ts';
import { onOneLine } from './source.ts';
import type { Evaluated, Surroundings } from './surroundings.ts';
import { weigh } from './suspects.ts';
import type { Answer, Computed, Expectation, Finding, Plotted, Suspect } from './types.ts';

/** What a cell comes to. It stays the same as long as neither the cell nor one that it reads from changes. */
export interface Outcome {
  readonly computed: readonly Computed[];
  readonly expectations: readonly Expectation[];
  readonly answers: readonly Answer[];
  readonly plotted: readonly Plotted[];
  readonly suspects: readonly Suspect[];
  /** In the order of the text, those of reading the cell with them. */
  readonly findings: readonly Finding[];
  /** What its expressions came to. */
  readonly evaluated: ReadonlyMap<Expression, Evaluated>;
  /** The cells that its expressions read from. */
  readonly reads: readonly number[];
  /** What was found when the cell was read. */
  readonly ofReading: readonly Diagnostic[];
}

/**
 * Evaluates a cell's statements and answers; its computed names are done already.
 * `ofReading` and `more` are what was found before: when the cell was read, and about its names.
 */
export function outcomeOf(
  facts: CellFacts,
  around: Surroundings,
  ofReading: readonly Diagnostic[],
  more: readonly Diagnostic[],
): Outcome {
  const { cell } = facts;
  const found: Diagnostic[] = [...ofReading, ...more, ...facts.diagnostics];
  for (const { id, source } of facts.definitions) {
    found.push(...placedIn(source.node, around.done.get(id)?.diagnostics ?? source.diagnostics));
  }
  const expectations = facts.statements.map((statement) => {
    const evaluated = evaluateSource(statement.source, { cell, name: 'a statement' }, around);
    const result = expectationOf(statement, evaluated);
    found.push(...placedIn(statement.source.node, evaluated.diagnostics), ...result.diagnostics);
    found.push(...refusedHere(statement.source, cell, evaluated.value, around));
    return result.expectation;
  });
  const answers = facts.answers.map((source): Answer => {
    const { value, from, diagnostics } = evaluateSource(source, { cell, name: 'an answer' }, around);
    found.push(...placedIn(source.node, diagnostics), ...refusedHere(source, cell, value, around));
    return { cell, text: source.text, value, from };
  });
  const plotted = facts.plots.map((plot) => plottedOf(plot, cell, around, found));
  found.push(...faultsNotShown(facts, expectations), ...repeatedName(facts, around));
  found.sort((a, b) => a.span.start - b.span.start || a.span.end - b.span.end);
  return {
    computed: facts.definitions.map((each) => computedOf(each, around)),
    expectations,
    answers,
    plotted,
    suspects: facts.suspects.map((name) =>
      weigh({ cell, name, expectations: expectations.filter((each) => each.suspect === name) }),
    ),
    findings: found.map((diagnostic) => ({ cell, diagnostic })),
    evaluated: around.now.get(cell) ?? none,
    reads: [...(around.reads.get(cell) ?? []), ...nameGivers(facts, around)],
    ofReading,
  };
}

const none: ReadonlyMap<Expression, Evaluated> = new Map();

function computedOf(definition: Definition, around: Surroundings): Computed {
  const evaluated = around.done.get(definition.id);
  const { node } = definition.source;
  const isBare = around.bareNames.has(definition.id);
  return {
    fullName: isBare ? definition.name : definition.id,
    name: definition.name,
    cell: definition.cell,
    typed: evaluated?.typed,
    text: definition.source.text,
    value: evaluated?.value ?? { kind: 'absent', status: 'cannot compute', why: 'it needs itself' },
    from: evaluated?.from ?? [],
    keySpan: definition.keySpan,
    valueSpan: node.span,
  };
}

/** What is wrong with its expressions goes to `found`. */
function plottedOf(
  { role, label, drawn, against }: Plot,
  cell: number,
  around: Surroundings,
  found: Diagnostic[],
): Plotted {
  const evaluated = (source: Source) => {
    const { value, from, diagnostics } = evaluateSource(source, { cell, name: 'a chart' }, around);
    const here = [...placedIn(source.node, diagnostics), ...refusedHere(source, cell, value, around)];
    // What a chart draws by itself is written nowhere: all of it is told at one word, and the same of it once.
    for (const each of here) if (!found.some((other) => isSame(each, other))) found.push(each);
    return { text: source.text, value, from };
  };
  const { text, value, from } =
    'range' in drawn ? { text: onOneLine(drawn.node.text), value: drawn.range, from: [] } : evaluated(drawn);
  const beside = against === undefined ? undefined : evaluated(against);
  return {
    cell,
    role,
    text,
    label,
    value,
    against: beside === undefined ? undefined : { text: beside.text, value: beside.value },
    from: [...new Set([...from, ...(beside?.from ?? [])])],
    span: drawn.node.span,
  };
}

const isSame = (a: Diagnostic, b: Diagnostic): boolean =>
  a.code === b.code &&
  a.span.start === b.span.start &&
  a.span.end === b.span.end &&
  JSON.stringify(a.facts) === JSON.stringify(b.facts);

/** A cell whose name another one has already: its computed names are that one's. */
function nameGivers({ as, cell }: CellFacts, { names }: Surroundings): readonly number[] {
  const first = as === undefined ? undefined : names.prefixes.get(as);
  return first === undefined || first === cell ? [] : [first];
}

function repeatedName(cell: CellFacts, { names }: Surroundings): readonly Diagnostic[] {
  if (cell.as === undefined || cell.asSpan === undefined) return [];
  const first = names.prefixes.get(cell.as);
  if (first === undefined || first === cell.cell) return [];
  return [diagnose('duplicate-name', cell.asSpan, { name: cell.as, where: `cell ${first + 1}` })];
}

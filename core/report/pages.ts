import { chartKindNames, chartKinds, isChartKind } from '../casefile/kinds/chartKinds.ts';
import { describeHolds } from '../casefile/kinds/describe.ts';
import type { Key, Keys, Kind } from '../casefile/kinds/key.ts';
import { kinds } from '../casefile/kinds/kinds.ts';
import { everyKey } from '../casefile/kinds/shared.ts';
import type { Code } from '../diagnostics/diagnostic.ts';
import { allCodes, rowOf } from '../diagnostics/pages.ts';
import { type CodeStructure, structureOf } from '../engine/obd/troubleCode.ts';
import type { FunctionRow, Parameter, ResultField } from '../expression/functionRow.ts';
import { sayLimits } from '../expression/sayLimits.ts';
import { allUnits, unitOf } from '../quantity/unit.ts';
import { unitRows } from '../quantity/unitTable.ts';
import { allSignals, nearestSignals, signalOf, signalsCalled } from '../signals/lookup.ts';
import { nearestStates, stateOf } from '../signals/states.ts';
import type { EngineState, Form, Signal } from '../signals/types.ts';
import { functionNames, functionRow } from '../study/functions.ts';
import { nearest } from '../text/nearest.ts';
import { formulaLines } from './formulaLines.ts';
import { keysWithin } from './keysWithin.ts';
import { languageWord, languageWords } from './languageWords.ts';
import { canBeLeftOut, rangeWords, substitutesFor } from './parameterWords.ts';
import { type SignalExample, signalExample } from './signalExample.ts';
import { unitExample } from './unitExample.ts';

/** What `casebook explain` prints: a heading and rows, each of one line or several. */
export interface Page {
  readonly title: string;
  readonly rows: readonly PageRow[];
}

interface PageRow {
  readonly name: string;
  readonly lines: readonly string[];
  /** Set as it stands, each character as wide as the next. */
  readonly verbatim?: true;
}

/**
 * Every page that a name has: a word may be a function, a signal and a unit at once. Capitals mean the same word, and so
 * does a space for a low line; what signals are also called leads to them.
 */
export function pagesOf(name: string): Page[] {
  const low = name.toLowerCase();
  for (const each of new Set([name, low, low.replaceAll(' ', '_')])) {
    const found = pagesNamed(each);
    if (found.length > 0) return found;
  }
  return signalsCalled(name).map(signalPage);
}

function pagesNamed(name: string): Page[] {
  const known = allCodes().find((each) => each === name);
  const code = known === undefined ? undefined : findingPage(known);
  const row = functionRow(name);
  const signal = signalOf(name);
  const state = stateOf(name);
  const structure = structureOf(name);
  return [
    code,
    row === undefined ? undefined : functionPage(row),
    signal === undefined ? undefined : signalPage(signal),
    unitPage(name),
    state === undefined ? undefined : statePage(state),
    kindPage(name),
    ...keyPages(name),
    wordPage(name),
    chartPage(name),
    structure === undefined ? undefined : codePage(structure),
  ].filter((page) => page !== undefined);
}

/** Names with a page that may have been meant: by spelling, or by another word for the thing ("engine speed" is rpm). */
export function nearestPages(name: string): string[] {
  const spelled = nearest(name, [
    ...allCodes(),
    ...functionNames(),
    ...allUnits().map(symbolOf),
    ...Object.keys(kinds),
    ...allKeys().keys(),
    ...languageWords.flatMap(({ words }) => words),
    ...chartKindNames,
  ]);
  return [...new Set([...spelled, ...nearestSignals(name), ...nearestStates(name)])].slice(0, 5);
}

/** A kind of chart: what it shows and what it takes. */
function chartPage(name: string): Page | undefined {
  if (!isChartKind(name)) return undefined;
  const { shows, takes } = chartKinds[name];
  return { title: `${name}: a kind of chart`, rows: [...row('shows', shows), ...row('takes', takes)] };
}

const symbolOf = (unit: { readonly symbol: string }): string => unit.symbol;

function row(name: string, text: string | undefined): PageRow[] {
  return text === undefined || text === '' ? [] : [{ name, lines: text.split('\n') }];
}

function kindPage(name: string): Page | undefined {
  if (!Object.hasOwn(kinds, name)) return undefined;
  const kind: Kind = kinds[name as keyof typeof kinds];
  const keys = Object.entries(kind.keys).filter(([key]) => !Object.hasOwn(everyKey, key));
  return {
    title: `${name}, a kind of cell: ${kind.meaning}`,
    rows: [
      ...row('Keys', keys.map(([key, { meaning }]) => `${key}: ${meaning}`).join('\n')),
      ...row(
        'In every cell',
        Object.entries(everyKey)
          .map(([key, { meaning }]: [string, Key]) => `${key}: ${meaning}`)
          .join('\n'),
      ),
    ],
  };
}

/** A key may mean one thing in one kind of cell and another in the next. */
function keyPages(name: string): Page[] {
  return (allKeys().get(name) ?? []).map(({ key, where }) => ({
    title: `${name}, a key: ${key.meaning}`,
    rows: [
      ...row('Takes', describeHolds(key.holds)),
      ...row('In', where.join('; ')),
      ...row('Example', `${name}: ${key.example}`),
    ],
  }));
}

interface KnownKey {
  readonly key: Key;
  /** "readings", "diag, within engine" */
  readonly where: string[];
}

let knownKeys: ReadonlyMap<string, readonly KnownKey[]> | undefined;

function allKeys(): ReadonlyMap<string, readonly KnownKey[]> {
  if (knownKeys !== undefined) return knownKeys;
  const found = new Map<string, KnownKey[]>();
  const add = (keys: Keys, where: string): void => {
    for (const [name, key] of Object.entries(keys)) {
      const same = found.get(name) ?? [];
      found.set(name, same);
      const known = same.find((each) => each.key.meaning === key.meaning);
      if (known === undefined) same.push({ key, where: [where] });
      else if (!known.where.includes(where)) known.where.push(where);
      const inner = keysWithin(key.holds);
      if (inner !== undefined) add(inner, `${where.split(',')[0]}, within ${name}`);
    }
  };
  for (const [name, kind] of Object.entries(kinds)) add((kind as Kind).keys, name);
  knownKeys = found;
  return found;
}

function wordPage(name: string): Page | undefined {
  const found = languageWord(name);
  if (found === undefined) return undefined;
  return {
    title: `${found.words.join(', ')}, ${found.words.length === 1 ? 'a word' : 'words'} of expressions: ${found.meaning}`,
    rows: row('Example', found.example),
  };
}

function findingPage(code: Code): Page {
  const { title, severity, why, wrong, right } = rowOf(code);
  return {
    title: `${code} (${severity === 'info' ? 'a note' : severity === 'error' ? 'an error' : 'a warning'}): ${title}`,
    rows: [...row('Why', why), ...row('Wrong', wrong), ...row('Right', right)],
  };
}

export function functionPage(of: FunctionRow): Page {
  return {
    title: `${of.name}(${of.parameters.map(parameterName).join(', ')}): ${of.summary}`,
    rows: [
      { name: 'Takes', lines: of.parameters.map(parameterLine) },
      ...row('Gives', resultWords(of)),
      ...row('Says', (of.says ?? []).map(({ words, meaning }) => `${words}: ${meaning}`).join('\n')),
      { name: 'Formula', lines: formulaLines(of), verbatim: true },
      ...row('Range', rangeWords(of)),
      ...row('No answer', of.errors.join('\n')),
      ...row('Example', `${of.example.expression}  →  ${of.example.result}`),
      ...row('Given', of.example.given === undefined ? undefined : `spec.${of.example.given}`),
      ...row('Source', of.source),
    ],
  };
}

export function parameterName(parameter: Parameter): string {
  const { name, repeats } = parameter;
  const word = repeats === true ? `${name}, …` : name;
  return canBeLeftOut(parameter) ? `[${word}]` : word;
}

function parameterLine(parameter: Parameter): string {
  const { name, takes, meaning, within } = parameter;
  const unit = takes.unit === undefined ? takes.what : takes.unit === '1' ? 'plain number' : takes.unit;
  const kind = takes.kind === undefined || takes.kind === 'none' ? '' : ` ${takes.kind}`;
  const left = substitutesFor(parameter)
    .map(({ words, is }) => (is === 'name' ? `\`${words}\`` : words))
    .join(', otherwise ');
  const limits = within === undefined ? '' : `, ${sayLimits(within)}`;
  return `${name}: ${meaning} (${unit}${kind}${limits})${left === '' ? '' : `; left out: ${left}`}`;
}

export function resultWords({ result }: FunctionRow): string {
  switch (result.kind) {
    case 'fixed':
      return [
        result.unit === '1' ? 'a plain number' : result.unit,
        ...(result.quantityKind === undefined ? [] : [result.quantityKind]),
      ].join(', ');
    case 'like':
      return `the same as \`${result.parameter}\`${result.quantityKind === undefined ? '' : `, ${result.quantityKind}`}`;
    case 'text':
      return 'a text';
    case 'fields':
      return result.fields.map(fieldLine).join('\n');
    case 'computed':
      return result.says;
  }
}

/** `evo`: exhaust valve opens (°BBDC) */
function fieldLine({ name, meaning, unit, quantityKind, by }: ResultField): string {
  const kind = quantityKind === undefined || unitOf(unit)?.kind !== undefined ? '' : ` ${quantityKind}`;
  const holds = unit === '1' ? 'plain number' : `${unit}${kind}`;
  return `.${name}: ${meaning} (${holds}${by === undefined ? '' : `, by ${by}`})`;
}

export function signalPage(signal: Signal): Page {
  return {
    title: `${signal.name}: ${signal.meaning}`,
    rows: [
      ...row('Holds', signal.holds === 'word' ? `one of: ${(signal.words ?? []).join(', ')}` : ''),
      ...row('Several', signal.by === undefined ? '' : `may be given by ${signal.by}`),
      ...signal.forms.flatMap(formRows),
      ...row('Also called', (signal.alsoCalled ?? []).join(', ')),
      ...row('Remark', signal.note),
      ...row('Example', exampleWords(signalExample(signal))),
    ],
  };
}

/** "map: 101 kPa, at key on engine off" */
function exampleWords(example: SignalExample | undefined): string | undefined {
  if (example === undefined) return undefined;
  return example.state === undefined ? example.line : `${example.line}, at ${example.state}`;
}

function formRows({ unit, kind, encoding, physical, usual, failed }: Form): PageRow[] {
  return [
    ...row('Unit', [unit === '1' ? 'none' : unit, ...(kind === undefined ? [] : [kind])].join(', ')),
    ...row(
      'Data carry',
      encoding === undefined ? '' : `${encoding.range} in steps of ${encoding.step} (${encoding.source})`,
    ),
    ...row('Possible', physical),
    ...row('Usual', (usual ?? []).map((each) => `${each.state}: ${each.range} (${each.source})`).join('\n')),
    ...row(
      'Failed',
      (failed ?? []).map((each) => `${each.value}: ${each.means.replace(/,$/, '')}`).join('\n'),
    ),
  ];
}

export function unitPage(name: string): Page | undefined {
  const unit = unitOf(name);
  if (unit === undefined) return undefined;
  const own = unitRows.find((each) => each.symbol === unit.symbol);
  return {
    title: `${unit.symbol}: ${own?.name ?? `a unit of ${unit.dimension.name}`}`,
    rows: [
      ...row('Measures', unit.dimension.name),
      ...row('In SI units', `× ${unit.factor}${unit.offset === 0 ? '' : `, then + ${unit.offset}`}`),
      ...row('Also written', (own?.also ?? []).join(', ')),
      ...row('Example', unitExample(unit)),
      ...row('Source', own?.source),
    ],
  };
}

/** What a trouble code says by its structure alone: what exactly it means stands in the maker's information. */
export function codePage({ code, system, definedBy, area }: CodeStructure): Page {
  return {
    title: `${code}, a trouble code: ${system}`,
    rows: [
      ...row(
        'Defined by',
        `${definedBy}${definedBy === 'the maker' ? ': it means another thing on another make' : ''}`,
      ),
      ...row('Area', area),
      ...row(
        'Says',
        'Where to start to look, and no part to replace. The maker’s information says what sets it.',
      ),
      ...row('Source', 'structure of SAE J2012 / ISO 15031-6; areas from memory'),
    ],
  };
}

export function statePage({ name, meaning, engine, ignition, alsoCalled = [] }: EngineState): Page {
  return {
    title: `${name}: ${meaning}`,
    rows: [
      ...row('Engine', engine),
      ...row('Ignition', ignition),
      ...row('Also called', alsoCalled.join(', ')),
      ...row('Usual then', usualAt(name).join('\n')),
    ],
  };
}

/** What the signals' usual ranges say about a state. */
function usualAt(state: string): string[] {
  return allSignals().flatMap(({ name, forms }) =>
    forms.flatMap(({ usual }) =>
      (usual ?? [])
        .filter((each) => each.state === state)
        .map((each) => `${name}: ${each.range} (${each.source})`),
    ),
  );
}

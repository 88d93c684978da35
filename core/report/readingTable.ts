import type { Curve, Fields, Members, Range, Series, Value } from '../expression/value.ts';
import { otherUnit, qualifierOf } from '../quantity/format.ts';
import type { Amount, QuantityType, Unit } from '../quantity/types.ts';
import type { Reading, Study } from '../study/types.ts';
import type { Block, Figure, Runs, Strip, Table, TableRow } from './blocks.ts';
import { absentFigure, decimalsWritten, figureIn, figureOf, inWords, wordsFigure } from './figure.ts';
import { unusual } from './unusual.ts';

/**
 * The readings of a cell as tables: single values in one, each state a column when there are several,
 * maps by cylinder or label after it, curves and captured channels last.
 * `tool` is the cell's own instrument, which is not said again at every reading.
 */
export function readingTables(
  study: Study,
  readings: readonly Reading[],
  states: readonly string[],
  tool = '',
): Block[] {
  const groups = byKey(readings);
  const rows: TableRow[] = [];
  const after: Block[] = [];
  for (const group of groups) {
    const first = group[0];
    if (first === undefined) continue;
    const several = group.some(({ value }) => value.kind === 'members' || value.kind === 'curve');
    if (several) after.push(...group.flatMap((reading) => ownTable(study, reading, group.length > 1, tool)));
    else rows.push(readingRow(study, group, states, tool));
  }
  if (rows.length === 0) return after;
  const table: Table = {
    kind: 'table',
    caption: '',
    rowsAre: 'reading',
    columns: states,
    rows,
  };
  return [table, ...after];
}

function byKey(readings: readonly Reading[]): Reading[][] {
  const groups = new Map<string, Reading[]>();
  for (const reading of readings) {
    const group = groups.get(reading.key);
    if (group === undefined) groups.set(reading.key, [reading]);
    else group.push(reading);
  }
  return [...groups.values()];
}

/** The state of a reading in a cell with several: the part of its full name before the key. */
function columnOf(reading: Reading, states: readonly string[]): number {
  const parts = reading.fullName.split('.');
  return states.indexOf(parts[parts.length - 2] ?? '');
}

function readingRow(
  study: Study,
  group: readonly Reading[],
  states: readonly string[],
  tool: string,
): TableRow {
  const columns: (Reading | undefined)[] =
    states.length === 0
      ? group.slice(0, 1)
      : states.map((_, at) => group.find((reading) => columnOf(reading, states) === at));
  const known = columns.filter((reading) => reading !== undefined);
  const first = known[0] ?? group[0];
  const type = known.map((reading) => typeOf(reading.value)).find((each) => each !== undefined);
  const figures = columns.map((reading) =>
    reading === undefined ? wordsFigure('–') : valueFigure(reading.value, writtenDecimals(study, reading)),
  );
  const remarks = known.flatMap((reading) => remarksOf(reading, states.length > 0, tool));
  const notable = known.flatMap((reading) => unusual(study, reading));
  return {
    name: nameOf(first),
    key: first === undefined || nameOf(first) === first.key ? undefined : first.key,
    figures,
    unit: type === undefined ? '' : unitWords(type),
    other: type === undefined ? undefined : otherFigures(columns, figures, type),
    remarks,
    strips: notable,
  };
}

function otherFigures(
  columns: readonly (Reading | undefined)[],
  figures: readonly Figure[],
  type: QuantityType,
): TableRow['other'] {
  const unit = otherUnit(type.unit, type.kind);
  const convertible = columns.some(
    (reading) => reading?.value.kind === 'one' || reading?.value.kind === 'range',
  );
  if (unit === undefined || !convertible) return undefined;
  return {
    unit: unit.symbol,
    figures: columns.map((reading, at) => {
      const value = reading?.value;
      if (value?.kind === 'range') return rangeFigure(value, unit);
      if (value?.kind === 'one') return figureIn(unit, value.amount, type, figures[at] ?? wordsFigure(''));
      return wordsFigure('');
    }),
  };
}

/** A map or a curve in a table of its own. */
function ownTable(study: Study, reading: Reading, sayState: boolean, tool: string): Block[] {
  const state = sayState && reading.state !== undefined ? `, ${reading.state.name}` : '';
  const caption = `${nameOf(reading)}${state}`;
  const remarks = remarksOf(reading, false, tool).map((runs): Block => ({ kind: 'paragraph', runs }));
  switch (reading.value.kind) {
    case 'members':
      return [membersTable(caption, reading, reading.value, unusual(study, reading)), ...remarks];
    case 'curve':
      return [curveTable(caption, reading.value), ...remarks];
    default:
      return [
        {
          kind: 'table',
          caption,
          rowsAre: 'reading',
          columns: [],
          rows: [readingRow(study, [reading], [], tool)],
        },
      ];
  }
}

/** Cylinders stand side by side, as they stand in the engine; labels and states below each other. */
function membersTable(caption: string, reading: Reading, value: Members, strips: readonly Strip[]): Table {
  const entries = [...value.members];
  const amounts = entries.map(([, member]) => ('kind' in member ? undefined : member));
  const figures = entries.map(([, member]) =>
    'kind' in member ? absentFigure(member) : figureOf(member, value.type),
  );
  const unit = otherUnit(value.type.unit, value.type.kind);
  const other = (at: number): Figure => {
    const amount = amounts[at];
    return unit === undefined || amount === undefined
      ? wordsFigure('')
      : figureIn(unit, amount, value.type, figures[at] ?? wordsFigure(''));
  };
  if (value.by === 'cylinder') {
    const row: TableRow = {
      name: nameOf(reading),
      key: nameOf(reading) === reading.key ? undefined : reading.key,
      figures,
      unit: unitWords(value.type),
      other:
        unit === undefined ? undefined : { unit: unit.symbol, figures: figures.map((_, at) => other(at)) },
      remarks: [],
      strips,
    };
    const columns = entries.map(([name]) => `cyl. ${name}`);
    return { kind: 'table', caption: '', rowsAre: 'reading', columns, rows: [row] };
  }
  const rows = entries.map(
    ([name], at): TableRow => ({
      name,
      key: undefined,
      figures: [figures[at] ?? wordsFigure('')],
      unit: unitWords(value.type),
      other: unit === undefined ? undefined : { unit: unit.symbol, figures: [other(at)] },
      remarks: [],
      strips: [],
    }),
  );
  const rowsAre = value.by === 'label' ? 'place' : 'state';
  return { kind: 'table', caption, rowsAre, columns: [], rows };
}

function curveTable(caption: string, curve: Curve): Table {
  const read = (si: number, type: QuantityType): Figure => figureOf({ si, spread: [] }, type);
  return {
    kind: 'table',
    caption,
    rowsAre: 'at',
    columns: [],
    rows: curve.x.map((x, at) => ({
      name: inWords(read(x, curve.xType), curve.xType.unit.symbol),
      key: undefined,
      figures: [read(curve.y[at] ?? Number.NaN, curve.yType)],
      unit: unitWords(curve.yType),
      other: undefined,
      remarks: [],
      strips: [],
    })),
  };
}

/** Any value as a figure of a table. Maps and curves are said in one line. */
export function valueFigure(value: Value, written?: number): Figure {
  switch (value.kind) {
    case 'one':
      return figureOf(value.amount, value.type, written);
    case 'words':
      return wordsFigure(value.text);
    case 'absent':
      return absentFigure(value);
    case 'truth':
      return wordsFigure(value.verdict);
    case 'range':
      return rangeFigure(value);
    case 'series':
      return wordsFigure(seriesWords(value));
    case 'members':
      return wordsFigure(membersWords(value));
    case 'fields':
      return wordsFigure(fieldsWords(value));
    case 'curve':
      return wordsFigure(`a curve of ${value.x.length} points`);
  }
}

/** "17 .. 21", "at least 142": the unit stands in its own column. */
function rangeFigure({ low, high, type }: Range, unit: Unit = type.unit): Figure {
  const end = (amount: Amount): string => {
    const own = figureOf(amount, type);
    return (unit === type.unit ? own : figureIn(unit, amount, type, own)).number ?? '';
  };
  const number =
    low === undefined
      ? high === undefined
        ? undefined
        : `at most ${end(high)}`
      : high === undefined
        ? `at least ${end(low)}`
        : `${end(low)} .. ${end(high)}`;
  return number === undefined ? wordsFigure('anything') : { ...wordsFigure(''), number, words: undefined };
}

/** Without the unit each member is a bare number: the unit stands in a column of its own, or behind them all. */
function membersWords({ members, type }: Members, unit = ''): string {
  return [...members]
    .map(
      ([name, member]) =>
        `${name}: ${'kind' in member ? member.status : inWords(figureOf(member, type), unit)}`,
    )
    .join(', ');
}

/** "evo 40 °BBDC, overlap 22 °CA": one without an answer says so in a word. */
function fieldsWords({ fields }: Fields): string {
  return [...fields]
    .map(([name, value]) => `${name} ${value.kind === 'absent' ? value.status : inLine(value)}`)
    .join(', ');
}

/**
 * A value on one line, with its unit: "19.8 ± 0.2 inHg", "1: 181 ± 3, 2: 178 ± 3 psi gauge".
 * Where a member is missing, each of the others has the unit: "post: 0.1 V, strap: not measured".
 */
export function inLine(value: Value): string {
  const figure = valueFigure(value);
  const type = typeOf(value);
  const unit = type === undefined ? '' : unitWords(type);
  if (unit === '') return inWords(figure, unit);
  switch (value.kind) {
    case 'series':
      return `${figure.words} ${unit}`;
    case 'members': {
      const isWhole = [...value.members.values()].every((member) => 'si' in member);
      return isWhole ? `${figure.words} ${unit}` : membersWords(value, unit);
    }
    default:
      return inWords(figure, unit);
  }
}

function seriesWords({ samples, time, type }: Series): string {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const sample of samples) {
    if (sample < low) low = sample;
    if (sample > high) high = sample;
  }
  if (low > high) return `${samples.length} samples`;
  const read = (si: number): string => figureOf({ si, spread: [] }, type).number ?? '';
  const seconds = (time[time.length - 1] ?? 0) - (time[0] ?? 0);
  return `${samples.length} samples over ${Number(seconds.toPrecision(4))} s, ${read(low)} .. ${read(high)}`;
}

export function typeOf(value: Value): QuantityType | undefined {
  switch (value.kind) {
    case 'one':
    case 'members':
    case 'range':
    case 'series':
      return value.type;
    case 'curve':
      return value.yType;
    case 'fields':
    case 'words':
    case 'truth':
    case 'absent':
      return undefined;
  }
}

/** The unit as a table shows it: with the kind of pressure, and nothing for plain numbers. */
export function unitWords(type: QuantityType): string {
  const { symbol } = type.unit;
  if (symbol === '1') return '';
  const word = qualifierOf(type);
  return word === undefined ? symbol : `${symbol} ${word}`;
}

function nameOf(reading: Reading | undefined): string {
  return reading?.signal?.meaning ?? reading?.key ?? '';
}

/** Where on the car it was taken, what the needle did, and with what. */
function remarksOf(reading: Reading, sayState: boolean, tool: string): Runs[] {
  const parts = [
    ...(reading.at === undefined ? [] : [`at ${reading.at}`]),
    ...(reading.saw === undefined ? [] : [reading.saw]),
    ...(reading.tool === undefined || reading.tool === tool ? [] : [`with ${reading.tool}`]),
  ];
  if (parts.length === 0) return [];
  const state = sayState && reading.state !== undefined ? `${reading.state.name}: ` : '';
  return [[`${state}${parts.join('; ')}`]];
}

/** The decimals that the author wrote, where the reading stands as a plain quantity in its cell. */
function writtenDecimals(study: Study, reading: Reading): number | undefined {
  const { cell, valueSpan, bytes } = reading;
  if (bytes !== undefined) return undefined;
  return decimalsWritten(study.file.cells[cell]?.raw.text.slice(valueSpan.start, valueSpan.end) ?? '');
}

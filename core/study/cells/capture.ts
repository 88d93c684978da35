import type { CaptureCell } from '../../casefile/cell.ts';
import { readRows, type SampleRows } from '../../casefile/rows.ts';
import type { TextNode } from '../../casefile/tree.ts';
import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import type { Absent, Series } from '../../expression/value.ts';
import { fromSi, toSi } from '../../quantity/convert.ts';
import { time as timeDimension } from '../../quantity/dimension.ts';
import { parseQuantity } from '../../quantity/parse.ts';
import type { Quantity, QuantityType } from '../../quantity/types.ts';
import { plainUnit, unitOf } from '../../quantity/unit.ts';
import type { Form, Signal } from '../../signals/types.ts';
import { nearest } from '../../text/nearest.ts';
import { type Fitted, fitTo } from '../fitTo.ts';
import { placedIn } from '../placed.ts';
import { readUnit } from '../readUnit.ts';
import { findTool, readAccuracy } from '../tools.ts';
import type { Reading } from '../types.ts';
import { type Circumstances, type Collected, isSignal, unknownSignal } from './values.ts';

/** A capture's channels as series. Samples stand in the case as `rows`; those in a file are not read here. */
export function captureReadings(cell: CaptureCell, around: Circumstances): Collected {
  if (cell.rows === undefined) return fromFile(cell, around);
  const { value: rows, diagnostics } = readRows(cell.rows);
  if (rows === undefined) return { readings: [], diagnostics };
  const found: Diagnostic[] = [...diagnostics];
  const timeAt = timeColumn(rows, cell.time);
  const time = timeOf(rows, timeAt, found);
  const readings: Reading[] = [];
  for (const channel of channelsOf(cell, rows, timeAt)) {
    const at = rows.headings.findIndex((each) => each.text === channel.column.text);
    if (at < 0) found.push(unknownColumn(channel.column, rows));
    else readings.push(channelReading(channel, rows, at, time, around, found));
  }
  return { readings, diagnostics: found };
}

interface Channel {
  readonly key: TextNode;
  readonly column: TextNode;
  readonly unit: TextNode | undefined;
  readonly signal: TextNode | undefined;
  readonly accuracy: TextNode | undefined;
}

/** The channels that the cell names; without `channels`, every column but the time under its own heading. */
function channelsOf(cell: CaptureCell, rows: SampleRows, timeAt: number): readonly Channel[] {
  if (cell.channels === undefined) {
    return rows.headings
      .filter((_, i) => i !== timeAt)
      .map((heading) => ({
        key: heading,
        column: heading,
        unit: undefined,
        signal: undefined,
        accuracy: undefined,
      }));
  }
  return cell.channels.map(({ key, value }) => ({
    key,
    column: value.column ?? key,
    unit: value.unit,
    signal: value.signal,
    accuracy: value.accuracy,
  }));
}

/** Seconds; undefined when they cannot be: another sort of unit, or a clock that runs backwards. */
function timeOf(rows: SampleRows, at: number, found: Diagnostic[]): Float64Array | undefined {
  const seconds = unitOf('s') ?? plainUnit;
  const unit = unitIn(rows, at)?.unit ?? seconds;
  const heading = rows.headings[at];
  if (unit.dimension !== timeDimension) {
    if (heading !== undefined) found.push(noTime(heading, unit.symbol));
    return undefined;
  }
  const time = numbers(rows, at, { dimension: timeDimension, kind: 'none', unit }, found);
  const back = time.findIndex((each, i) => each < (time[i - 1] ?? each));
  const place = rows.rows[back]?.[at];
  if (place === undefined) return time;
  found.push(diagnose('time-runs-back', place.span, { time: place.text, row: back + 1 }));
  return undefined;
}

const noTime = (heading: TextNode, unit: string): Diagnostic =>
  diagnose('wrong-value-shape', heading.span, {
    name: heading.text,
    got: `\`${unit}\``,
    takes: 'a time: seconds, milliseconds, minutes',
  });

function channelReading(
  channel: Channel,
  rows: SampleRows,
  at: number,
  time: Float64Array | undefined,
  around: Circumstances,
  found: Diagnostic[],
): Reading {
  const { key, signal: named } = channel;
  const signal = isSignal(named?.text ?? key.text, around.header);
  if (named !== undefined && signal === undefined) found.push(unknownSignal(named, around.header));
  const unit = channel.unit === undefined ? undefined : readUnit(channel.unit);
  found.push(...(unit?.diagnostics ?? []));
  const written = unit?.value ?? unitIn(rows, at) ?? firstValue(rows, at);
  const place = channel.unit ?? rows.headings[at] ?? channel.column;
  const fitting = written === undefined ? undefined : fitTo(written, signal, key.text, place);
  found.push(...(fitting?.diagnostics ?? []));
  const unfit = unit !== undefined && unit.value === undefined;
  const fitted = unfit ? undefined : fitting === undefined ? plainly : fitting.fitted;
  if (fitted === undefined || time === undefined) {
    const why = fitted === undefined ? 'its unit could not be read' : 'its time is in no order';
    return readingOf(key, { kind: 'absent', status: 'cannot compute', why }, signal, undefined, around);
  }
  const { type, form } = fitted;
  const samples = numbers(rows, at, type, found);
  const spread = spreadOf(channel, samples, type, around, found);
  const capture = around.prefix ?? `capture ${around.cell + 1}`;
  const value: Series = { kind: 'series', type, capture, time, samples, spread };
  return readingOf(key, value, signal, form, around);
}

/** A column of plain numbers. */
const plainly: Fitted = {
  type: { dimension: plainUnit.dimension, kind: 'none', unit: plainUnit },
  form: undefined,
};

/** A channel's ± is one source common to its samples: its own accuracy, or else that of the cell's tool. */
function spreadOf(
  channel: Channel,
  samples: Float64Array,
  type: QuantityType,
  around: Circumstances,
  found: Diagnostic[],
): Series['spread'] {
  const own = channel.accuracy === undefined ? undefined : readAccuracy(channel.accuracy);
  found.push(...(own?.diagnostics ?? []));
  const accuracy = own?.value ?? findTool(around.header.tools, around.tool).accuracy;
  if (accuracy === undefined) return [];
  const widths = samples.map((si) => accuracy.halfWidth(fromSi(si, type.unit, type.kind), type));
  const first = widths[0] ?? 0;
  if (widths.every((each) => each === 0)) return [];
  const source = `${around.prefix ?? around.cell + 1}.${channel.key.text}`;
  return [{ source, by: widths.every((each) => each === first) ? first : widths }];
}

/** The named time column, or one that is headed "time", or the first. */
function timeColumn(rows: SampleRows, named: TextNode | undefined): number {
  const exact = rows.headings.findIndex((each) => each.text === named?.text);
  if (exact >= 0) return exact;
  const headed = rows.headings.findIndex((each) => /^time\b/i.test(each.text));
  return Math.max(headed, 0);
}

/** The unit that a column's heading or the row of units gives: `Time (s)`, `O2 [V]`, `Boost (kPa gauge)`. */
function unitIn(rows: SampleRows, at: number): Quantity | undefined {
  const inHeading = /[([]([^)\]]+)[)\]]\s*$/.exec(rows.headings[at]?.text ?? '')?.[1];
  const oneOf = (text: string | undefined): Quantity | undefined =>
    text === undefined || text === '' ? undefined : parseQuantity(`1 ${text}`).value;
  return oneOf(rows.units?.[at]?.text) ?? oneOf(inHeading);
}

/** The column's first sample, which may carry the unit itself. */
function firstValue(rows: SampleRows, at: number): Quantity | undefined {
  const first = rows.rows.find((row) => !missing.has(row[at]?.text.trim() ?? ''));
  return parseQuantity(first?.[at]?.text ?? '').value;
}

/** A column's samples in SI; a sample that is not there is NaN, one that cannot be read is reported and NaN. */
function numbers(rows: SampleRows, at: number, type: QuantityType, found: Diagnostic[]): Float64Array {
  const samples = new Float64Array(rows.rows.length);
  rows.rows.forEach((row, i) => {
    const cell = row[at];
    samples[i] = Number.NaN;
    if (cell === undefined || missing.has(cell.text.trim())) return;
    const { value, diagnostics } = parseQuantity(cell.text);
    found.push(...placedIn(cell, diagnostics));
    if (value === undefined) return;
    const written = value.unit === plainUnit ? type.unit : value.unit;
    if (written.dimension === type.dimension) samples[i] = toSi(value.value, written, type.kind);
    else found.push(otherDimension(cell, rows.headings[at]?.text ?? '', type));
  });
  return samples;
}

const missing: ReadonlySet<string> = new Set(['', '-', '--', '---', 'N/A', 'n/a', 'NaN']);

function otherDimension(cell: TextNode, column: string, type: QuantityType): Diagnostic {
  return diagnose('wrong-value-shape', cell.span, {
    name: column,
    got: `\`${cell.text}\``,
    takes: `a number in ${type.unit.symbol} like the rest of its column`,
  });
}

function unknownColumn(column: TextNode, rows: SampleRows): Diagnostic {
  const states = rows.headings.map((each) => each.text);
  const close = nearest(column.text, states);
  const fixes = close.map((name) => ({
    title: `Write \`${name}\``,
    edits: [{ span: column.span, newText: name }],
  }));
  return diagnose(
    'unknown-column',
    column.span,
    { column: column.text, columns: states, nearest: close },
    fixes,
  );
}

/** Channels of a file are known by name and type, so that what uses them says why it cannot be computed. */
function fromFile(cell: CaptureCell, around: Circumstances): Collected {
  const value: Absent = { kind: 'absent', status: 'cannot compute', why: 'its capture was not read' };
  const found: Diagnostic[] = [];
  const readings = (cell.channels ?? []).map(({ key, value: channel }) => {
    const signal = isSignal(channel.signal?.text ?? key.text, around.header);
    const unit = channel.unit === undefined ? undefined : readUnit(channel.unit);
    found.push(...(unit?.diagnostics ?? []));
    const fitting =
      unit?.value === undefined ? undefined : fitTo(unit.value, signal, key.text, channel.unit ?? key);
    found.push(...(fitting?.diagnostics ?? []));
    const reading = readingOf(key, value, signal, fitting?.fitted?.form, around);
    const capture = around.prefix ?? `capture ${around.cell + 1}`;
    const quantity = fitting?.fitted?.type;
    return quantity === undefined
      ? reading
      : { ...reading, type: { kind: 'series' as const, quantity, capture } };
  });
  const place = cell.file ?? cell.title;
  const facts = { file: cell.file?.text ?? cell.title.text };
  return { readings, diagnostics: [...found, diagnose('capture-not-read', place.span, facts)] };
}

function readingOf(
  key: TextNode,
  value: Series | Absent,
  signal: Signal | undefined,
  form: Form | undefined,
  around: Circumstances,
): Reading {
  return {
    fullName: around.prefix === undefined ? key.text : `${around.prefix}.${key.text}`,
    key: key.text,
    from: 'capture',
    cell: around.cell,
    when: around.when,
    state: around.state,
    column: undefined,
    signal,
    form,
    type:
      value.kind === 'series'
        ? { kind: 'series', quantity: value.type, capture: value.capture }
        : { kind: 'unknown' },
    value,
    keySpan: key.span,
    valueSpan: key.span,
    tool: around.tool?.text,
    at: undefined,
    saw: undefined,
  };
}

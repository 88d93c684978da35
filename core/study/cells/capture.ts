import type { CaptureCell } from '../../casefile/cell.ts';
import { readRows, type SampleRows } from '../../casefile/rows.ts';
import type { TextNode } from '../../casefile/tree.ts';
import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import type { Absent, Series } from '../../expression/value.ts';
import { toSi } from '../../quantity/convert.ts';
import { time as timeDimension } from '../../quantity/dimension.ts';
import { parseQuantity } from '../../quantity/parse.ts';
import type { QuantityType, Unit } from '../../quantity/types.ts';
import { plainUnit, unitOf } from '../../quantity/unit.ts';
import type { Form, Signal } from '../../signals/types.ts';
import { nearest } from '../../text/nearest.ts';
import { placedIn } from '../placed.ts';
import type { Reading } from '../types.ts';
import { type Circumstances, type Collected, isSignal } from './values.ts';

/** A capture's channels as series. Samples stand in the case as `rows`; those in a file are not read here. */
export function captureReadings(cell: CaptureCell, around: Circumstances): Collected {
  if (cell.rows === undefined) return fromFile(cell, around);
  const { value: rows, diagnostics } = readRows(cell.rows);
  if (rows === undefined) return { readings: [], diagnostics };
  const found: Diagnostic[] = [...diagnostics];
  const timeAt = timeColumn(rows, cell.time);
  const seconds = unitOf('s') ?? plainUnit;
  const timeUnit = unitIn(rows, timeAt) ?? seconds;
  const time = numbers(
    rows,
    timeAt,
    timeUnit,
    { dimension: timeDimension, kind: 'none', unit: timeUnit },
    found,
  );
  const readings: Reading[] = [];
  for (const channel of channelsOf(cell, rows, timeAt)) {
    const at = rows.headings.findIndex((each) => each.text === channel.column.text);
    if (at < 0) {
      found.push(unknownColumn(channel.column, rows));
      continue;
    }
    const signal = isSignal(channel.signal ?? channel.key.text, around.header);
    const unit = unitOf(channel.unit?.text ?? '') ?? unitIn(rows, at) ?? firstUnit(rows, at);
    const { type, form } = typeOf(unit ?? plainUnit, signal);
    const samples = numbers(rows, at, type.unit, type, found);
    const capture = around.prefix ?? `capture ${around.cell + 1}`;
    const value: Series = { kind: 'series', type, capture, time, samples, spread: [] };
    readings.push(readingOf(channel.key, value, signal, form, around));
  }
  return { readings, diagnostics: found };
}

interface Channel {
  readonly key: TextNode;
  readonly column: TextNode;
  readonly unit: TextNode | undefined;
  readonly signal: string | undefined;
}

/** The channels that the cell names; without `channels`, every column but the time under its own heading. */
function channelsOf(cell: CaptureCell, rows: SampleRows, timeAt: number): readonly Channel[] {
  if (cell.channels === undefined) {
    return rows.headings
      .filter((_, i) => i !== timeAt)
      .map((heading) => ({ key: heading, column: heading, unit: undefined, signal: undefined }));
  }
  return cell.channels.map(({ key, value }) => ({
    key,
    column: value.column ?? key,
    unit: value.unit,
    signal: value.signal?.text,
  }));
}

/** The named time column, or one that is headed "time", or the first. */
function timeColumn(rows: SampleRows, named: TextNode | undefined): number {
  const exact = rows.headings.findIndex((each) => each.text === named?.text);
  if (exact >= 0) return exact;
  const headed = rows.headings.findIndex((each) => /^time\b/i.test(each.text));
  return Math.max(headed, 0);
}

/** The unit that a column's heading or the row of units gives: `Time (s)`, `O2 [V]`. */
function unitIn(rows: SampleRows, at: number): Unit | undefined {
  const inHeading = /[([]([^)\]]+)[)\]]\s*$/.exec(rows.headings[at]?.text ?? '')?.[1];
  return unitOf(rows.units?.[at]?.text ?? '') ?? unitOf(inHeading ?? '');
}

/** The unit that the column's first sample carries itself. */
function firstUnit(rows: SampleRows, at: number): Unit | undefined {
  return parseQuantity(rows.rows[0]?.[at]?.text ?? '').value?.unit;
}

function typeOf(
  unit: Unit,
  signal: Signal | undefined,
): { readonly type: QuantityType; readonly form: Form | undefined } {
  const form = signal?.forms.find((each) => unitOf(each.unit)?.dimension === unit.dimension);
  return { type: { dimension: unit.dimension, kind: form?.kind ?? unit.kind ?? 'none', unit }, form };
}

/** A column's samples in SI; a sample that is not there is NaN, one that cannot be read is reported and NaN. */
function numbers(
  rows: SampleRows,
  at: number,
  unit: Unit,
  type: QuantityType,
  found: Diagnostic[],
): Float64Array {
  const samples = new Float64Array(rows.rows.length);
  rows.rows.forEach((row, i) => {
    const cell = row[at];
    samples[i] = Number.NaN;
    if (cell === undefined || missing.has(cell.text.trim())) return;
    const { value, diagnostics } = parseQuantity(cell.text);
    found.push(...placedIn(cell, diagnostics));
    if (value === undefined) return;
    const written = value.unit === plainUnit ? unit : value.unit;
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
  const readings = (cell.channels ?? []).map(({ key, value: channel }) => {
    const signal = isSignal(channel.signal?.text ?? key.text, around.header);
    const { type, form } = typeOf(unitOf(channel.unit?.text ?? '') ?? plainUnit, signal);
    const reading = readingOf(key, value, signal, form, around);
    const capture = around.prefix ?? `capture ${around.cell + 1}`;
    return { ...reading, type: { kind: 'series' as const, quantity: type, capture } };
  });
  const place = cell.file ?? cell.title;
  const facts = { file: cell.file?.text ?? cell.title.text };
  return { readings, diagnostics: [diagnose('capture-not-read', place.span, facts)] };
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

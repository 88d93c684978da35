import type { CaptureCell, ReferenceCell } from '../../casefile/cell.ts';
import { readRows } from '../../casefile/rows.ts';
import type { TextNode } from '../../casefile/tree.ts';
import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import type { Absent, Series } from '../../expression/value.ts';
import { fromSi } from '../../quantity/convert.ts';
import { formatQuantity } from '../../quantity/format.ts';
import type { QuantityType } from '../../quantity/types.ts';
import type { FileContent } from '../../recording/files.ts';
import type { Form, Signal } from '../../signals/types.ts';
import { fitTo } from '../fitTo.ts';
import { readUnit } from '../readUnit.ts';
import { findTool, readAccuracy } from '../tools.ts';
import type { Reading } from '../types.ts';
import { channelsOf, type Planned, planChannel, signalOf } from './channels.ts';
import { timedChannels } from './channelTimes.ts';
import { fileSamples } from './fileSamples.ts';
import { areSame, groupsOf, isSame, wordsOf } from './groups.ts';
import { inlineSamples } from './inlineSamples.ts';
import { isOfWords, type Samples } from './samples.ts';
import type { Circumstances, Collected } from './values.ts';

/** A capture's channels as series: from its `rows`, or from the file that it names. */
export function captureReadings(
  cell: CaptureCell | ReferenceCell,
  around: Circumstances,
  content: FileContent | undefined,
): Collected {
  const rows = 'rows' in cell ? cell.rows : undefined;
  if (rows !== undefined) {
    const { value, diagnostics } = readRows(rows);
    if (value === undefined) return { readings: [], diagnostics };
    const place: TextNode = { ...cell.title, span: rows.span };
    return fromSamples(cell, inlineSamples(value, place), around, diagnostics, true);
  }
  if (cell.file === undefined || content === undefined)
    return withoutSamples(cell, noFileNamed.why, around, []);
  const read = fileSamples(cell, cell.file, content);
  if (read.samples === undefined) return withoutSamples(cell, read.why, around, read.diagnostics);
  const collected = fromSamples(cell, read.samples, around, read.diagnostics, false);
  return { ...collected, readAs: [read.words, ...(collected.readAs ?? [])] };
}

function fromSamples(
  cell: CaptureCell | ReferenceCell,
  samples: Samples,
  around: Circumstances,
  before: readonly Diagnostic[],
  isInline: boolean,
): Collected {
  const found: Diagnostic[] = [...before];
  const { channels, main } = timedChannels(cell, samples, isInline, found);
  const plans = channels.map(({ channel, at, time }) => {
    const planned = at === undefined ? undefined : planChannel(channel, samples, at, around, found);
    return { channel, time, planned, signal: planned?.signal ?? signalOf(channel, around, []) };
  });
  const groups = groupsOf(main, plans);
  const read = samples.read(groups, found);
  const [first] = read;
  for (const { back } of read)
    if (back !== undefined)
      found.push(diagnose('time-runs-back', back.span, { time: back.time, place: back.place }));
  if (read.some(({ time, back }) => back === undefined && time.length === 1)) {
    found.push(diagnose('capture-one-sample', (cell.file ?? cell.title).span, { what: what(cell) }));
  }
  const readings = plans.map(({ channel, time, planned, signal }) => {
    if (planned === undefined) return readingOf(channel.key, notRead, signal, undefined, around);
    const of = groups.findIndex((each) => time !== undefined && isSame(each.time, time.column));
    const group = groups[of];
    const sampled = read[of];
    const at = group?.channels.indexOf(planned.column) ?? -1;
    const column = sampled?.columns[at];
    if (sampled === undefined || column === undefined || sampled.back !== undefined) {
      const why = time === undefined ? 'its time is not known' : 'its time is in no order';
      const value: Absent = { kind: 'absent', status: 'cannot compute', why };
      const { fitted } = planned;
      return typed(readingOf(channel.key, value, signal, fitted.form, around), fitted.type, around);
    }
    // Times that are the same all along are one.
    const isFirst = first !== undefined && areSame(first.time, sampled.time);
    const clock = isFirst ? '' : `, ${samples.headings[group?.time.at ?? 0]}`;
    const taken: Taken = {
      time: isFirst ? first.time : sampled.time,
      samples: column,
      widths: sampled.widths[at],
      capture: `${captureOf(around)}${clock}`,
    };
    return seriesReading(planned, taken, around, found);
  });
  const times = isInline ? [] : wordsOf(main, channels);
  return {
    readings,
    diagnostics: found,
    headings: samples.headings,
    readAs: times.length === 0 ? [] : [...times, ...leftOut(cell, samples)],
  };
}

/** Columns without numbers, where the cell does not say which channels it wants. */
function leftOut({ channels }: CaptureCell | ReferenceCell, samples: Samples): readonly string[] {
  if (channels !== undefined) return [];
  const words = samples.headings.filter((_, at) => isOfWords(samples, at));
  return words.length === 0
    ? []
    : [`left out, since they hold no numbers: ${words.map((each) => `\`${each}\``).join(', ')}`];
}

const notRead: Absent = { kind: 'absent', status: 'cannot compute', why: 'its column could not be read' };
const noFileNamed = { why: 'its cell names no file' };

const what = (cell: CaptureCell | ReferenceCell): string =>
  cell.file === undefined ? 'This capture' : `\`${cell.file.text.trim()}\``;

/** What was read of a channel. */
interface Taken {
  readonly time: Float64Array;
  readonly samples: Float64Array;
  /** The half-widths that samples state themselves. */
  readonly widths: Float64Array | undefined;
  /** Whose moments they are. */
  readonly capture: string;
}

function seriesReading(planned: Planned, taken: Taken, around: Circumstances, found: Diagnostic[]): Reading {
  const { channel, signal, fitted } = planned;
  const { type, form } = fitted;
  const { key, column } = channel;
  const { time, samples, widths, capture } = taken;
  const spread = spreadOf(planned, samples, widths, around, found);
  const value: Series = { kind: 'series', type, capture, time, samples, spread };
  const first = samples.find((each) => !Number.isNaN(each));
  if (first === undefined && samples.length > 0) {
    found.push(diagnose('channel-without-samples', key.span, { name: key.text, column: column.text }));
  } else if (first !== undefined && samples.length >= fewest && samples.every((each) => each === first)) {
    const facts = { name: key.text, value: formatQuantity(first, type), samples: samples.length };
    found.push(diagnose('channel-never-changes', key.span, facts));
  }
  return readingOf(key, value, signal, form, around);
}

/** Samples of a channel that stands still by chance: a few may well be equal. */
const fewest = 20;

/**
 * A channel's ± are sources common to its samples: what a sample states itself, or else the channel's own accuracy, or
 * else that of the cell's tool; its scale's and its offset's.
 */
function spreadOf(
  { channel, fitted: { type }, column, scaleShare, offsetWidth }: Planned,
  samples: Float64Array,
  stated: Float64Array | undefined,
  around: Circumstances,
  found: Diagnostic[],
): Series['spread'] {
  const own = channel.accuracy === undefined ? undefined : readAccuracy(channel.accuracy);
  found.push(...(own?.diagnostics ?? []));
  const accuracy = own?.value ?? findTool(around.header.tools, around.tool).accuracy;
  const source = `${around.prefix ?? around.cell + 1}.${channel.key.text}`;
  const { raw, factor, offset } = column;
  // Volts of a probe whose scale makes amperes of them: what its meter may be off by goes through the scale.
  const isOfRaw = raw.dimension !== type.dimension && accuracy?.dimension === raw.dimension;
  const ofTool = (si: number): number =>
    isOfRaw
      ? accuracy.halfWidth((si - offset) / factor, raw) * Math.abs(factor / raw.unit.factor)
      : (accuracy?.halfWidth(fromSi(si, type.unit, type.kind), type) ?? 0);
  const widthOf = (si: number, i: number): number => stated?.[i] || ofTool(si);
  return [
    ...(accuracy === undefined && stated === undefined ? [] : commonTo(samples, source, widthOf)),
    ...(offsetWidth === 0 ? [] : [{ source: `${source} offset`, by: offsetWidth }]),
    ...(scaleShare === 0
      ? []
      : commonTo(samples, `${source} scale`, (si) => (si - column.offset) * scaleShare)),
  ];
}

/** One source whose half-width may differ from sample to sample. */
function commonTo(
  samples: Float64Array,
  source: string,
  width: (si: number, at: number) => number,
): Series['spread'] {
  const widths = samples.map(width);
  const first = widths[0] ?? 0;
  if (widths.every((each) => each === 0)) return [];
  return [{ source, by: widths.every((each) => each === first) ? first : widths }];
}

/** Channels without samples are known by name and type, so that what uses them says why it cannot be computed. */
function withoutSamples(
  cell: CaptureCell | ReferenceCell,
  why: string,
  around: Circumstances,
  before: readonly Diagnostic[],
): Collected {
  const value: Absent = { kind: 'absent', status: 'cannot compute', why };
  const found: Diagnostic[] = [...before];
  const readings = channelsOf(cell, undefined, []).map((channel) => {
    const { key } = channel;
    const signal = signalOf(channel, around, found);
    const unit = channel.unit === undefined ? undefined : readUnit(channel.unit);
    found.push(...(unit?.diagnostics ?? []));
    const isFitted = unit?.value !== undefined && channel.scale === undefined;
    const fitting = isFitted ? fitTo(unit.value, signal, key.text, channel.unit ?? key) : undefined;
    found.push(...(fitting?.diagnostics ?? []));
    const reading = readingOf(key, value, signal, fitting?.fitted?.form, around);
    const quantity = fitting?.fitted?.type;
    return quantity === undefined ? reading : typed(reading, quantity, around);
  });
  return { readings, diagnostics: found, isUnknown: cell.channels === undefined };
}

/** A channel whose samples are missing is still a series of its type. */
function typed(reading: Reading, quantity: QuantityType, around: Circumstances): Reading {
  return { ...reading, type: { kind: 'series', quantity, capture: captureOf(around) } };
}

const captureOf = (around: Circumstances): string => around.prefix ?? `capture ${around.cell + 1}`;

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
    from: around.from,
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

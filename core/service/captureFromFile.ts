import type { TextNode } from '../casefile/tree.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { fromSi } from '../quantity/convert.ts';
import { formatNumber } from '../quantity/format.ts';
import type { QuantityType, Unit } from '../quantity/types.ts';
import { formatText, isUsual, layoutWords, readingWords } from '../recording/describe.ts';
import type { FileBytes } from '../recording/files.ts';
import type { Format, Layout } from '../recording/layout.ts';
import { plainName } from '../recording/plainName.ts';
import { proposeSignal } from '../recording/proposeSignal.ts';
import { layoutOf } from '../recording/recording.ts';
import { formFor, signalOf } from '../signals/lookup.ts';
import { samplesOf } from '../study/cells/fileSamples.ts';
import { takenByLanguage } from '../study/cells/names.ts';
import type { Column, Samples } from '../study/cells/samples.ts';
import { findTime } from '../study/cells/timeColumn.ts';
import { unitMeant } from '../study/fitTo.ts';

/** What is made of a recorder's file: cells for a case, and what their author should know. */
export interface ImportedCapture {
  /** A capture cell and, where a channel is a known signal, a readings cell: their texts. */
  readonly cells: readonly string[];
  readonly channels: number;
  /** How the file was read. */
  readonly readAs: string;
}

/** Why nothing is made of it: said to whoever asked, `format` being what would settle it. */
export interface NotImported {
  readonly why: string;
}

export interface Import {
  /** As the capture is to name it. */
  readonly file: string;
  readonly content: FileBytes;
  readonly format: Format;
  /** Names that the case has already. */
  readonly taken: ReadonlySet<string>;
  /** Readings at this moment, in seconds of the file’s time, in place of means over all of it. */
  readonly at: number | undefined;
}

/** A capture cell for a file, its channels named by the vocabulary where their headings are known to it. */
export function captureFromFile(asked: Import): ImportedCapture | NotImported {
  const { file, content, format, taken } = asked;
  const layout = layoutOf(content, format);
  if ('is' in layout) return { why: whyUnclear(layout) };
  const place: TextNode = {
    kind: 'text',
    text: file,
    style: 'plain',
    span: { start: 0, end: 0 },
    map: [[0, 0]],
  };
  const samples = samplesOf(content, layout, file, place);
  const found: Diagnostic[] = [];
  const time = findTime(undefined, samples, false, found);
  const name = nameFor(file, taken);
  const channels = channelsIn(samples, time?.column.at);
  const capture = [
    `capture: ${titleFor(file)}`,
    `as: ${name}`,
    '# The engine state it was recorded in, where it was one: `state: warm idle`.',
    `file: ${written(file)}`,
    ...(isUsual(layout) ? [] : [`format: ${formatText(layout)}`]),
    ...timeLine(samples, time?.column),
    'channels:',
    ...channels.map(channelLine),
    ...samples.headings.flatMap((each, at) =>
      samples.holdsNumbers(at) ? [] : [`  # left out, since it holds words: ${each}`],
    ),
  ];
  const readings = time === undefined ? [] : readingsFrom(asked, samples, time.column, channels, name);
  return {
    cells: [capture, readings].filter((each) => each.length > 0).map((each) => each.join('\n')),
    channels: channels.length,
    readAs: [layoutWords(layout), ...(time === undefined ? [] : [time.words])].join('; '),
  };
}

function whyUnclear(unclear: Exclude<ReturnType<typeof layoutOf>, Layout>): string {
  switch (unclear.is) {
    case 'lost':
      return 'it could not be read to its end. Try again';
    case 'empty':
      return 'it is empty';
    case 'binary':
      return 'it is no text. Export it from the tool as delimited text';
    case 'no samples':
      return `no line of it holds numbers in columns. It starts with \`${unclear.first}\``;
    case 'two readings':
      return `its line \`${unclear.line}\` can be read in ${unclear.readings.length} ways: ${unclear.readings
        .map((each, at) => `(${at + 1}) ${readingWords(each)}`)
        .join('; ')}. Say which with \`--delimiter\` and \`--decimal\``;
    case 'more columns than names':
      return `its line \`${unclear.line}\` has ${unclear.reading.headings.length} columns, and its heading names ${unclear.names}. If its commas are decimal marks, export it with semicolons or tabs; if they part the columns, say so with \`--delimiter comma\``;
  }
}

interface Proposed {
  readonly name: string;
  readonly heading: string;
  readonly at: number;
  readonly signal: string | undefined;
  readonly unit: Unit | undefined;
  /** What the author has to say: units that the signal may have. */
  readonly lacks: string | undefined;
}

function channelsIn(samples: Samples, timeAt: number | undefined): readonly Proposed[] {
  const used = new Set<string>();
  return samples.headings.flatMap((heading, at): Proposed[] => {
    if (at === timeAt || !samples.holdsNumbers(at)) return [];
    const unit = (samples.unitIn(at) ?? samples.firstValue(at))?.unit;
    const called = proposeSignal(heading, undefined);
    const of = called === undefined ? undefined : signalOf(called);
    const meant = unit === undefined || of === undefined ? undefined : unitMeant(unit, of);
    const signal = meant === undefined ? proposeSignal(heading, unit?.dimension) : called;
    const name = free(signal ?? plainName(heading).toLowerCase(), used);
    const forms = signal === undefined ? [] : (signalOf(signal)?.forms ?? []);
    const needs = unit === undefined && forms.length > 0 && forms.every((form) => form.unit !== '1');
    const lacks = meant ?? (needs ? forms.map((form) => form.unit).join(' or ') : undefined);
    return [{ name, heading, at, signal, unit, lacks }];
  });
}

function free(name: string, used: Set<string>): string {
  let candidate = name;
  for (let more = 2; used.has(candidate); more++) candidate = `${name}_${more}`;
  used.add(candidate);
  return candidate;
}

function channelLine({ name, heading, signal, lacks }: Proposed): string {
  const remark =
    lacks === undefined
      ? ''
      : `   # say its unit, such as {column: ${JSON.stringify(heading)}, unit: ${lacks}}`;
  if (signal === undefined || signal === name) return `  ${name}: ${written(heading)}${remark}`;
  return `  ${name}: {column: ${JSON.stringify(heading)}, signal: ${signal}}${remark}`;
}

/** The time is named where it would not be found, so that the cell says what has to be said. */
function timeLine(samples: Samples, time: Column | undefined): readonly string[] {
  if (time === undefined) return ['time:   # the heading of the column that holds the time'];
  return [`time: ${written(samples.headings[time.at] ?? '')}`];
}

/** A text as YAML takes it for itself. */
function written(text: string): string {
  return /^[A-Za-z_][\w ()/%°²³.-]*$/.test(text) && !text.endsWith(' ') ? text : JSON.stringify(text);
}

const baseOf = (file: string): string =>
  (file.split('/').at(-1) ?? file).replace(/(?:\.[A-Za-z0-9]{1,4})+$/, '');

const titleFor = (file: string): string => {
  const words = baseOf(file)
    .replace(/[_-]+/g, ' ')
    .replace(/[^\p{L}\p{N} .]+/gu, ' ')
    .trim();
  return words === '' ? 'Log' : `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
};

function nameFor(file: string, taken: ReadonlySet<string>): string {
  const name = plainName(baseOf(file)).toLowerCase();
  const isFree = takenByLanguage(name) === undefined && signalOf(name) === undefined;
  return free(isFree ? name : `${name}_log`, new Set(taken));
}

/** The means of the channels that are signals, or their values at a moment, as readings that can be checked by hand. */
function readingsFrom(
  { file, at }: Import,
  samples: Samples,
  time: Column,
  channels: readonly Proposed[],
  name: string,
): readonly string[] {
  const known = channels.flatMap((channel) => {
    const { signal, unit } = channel;
    const form =
      signal === undefined || unit === undefined
        ? undefined
        : formFor(signalOf(signal) ?? noSignal, unit.dimension);
    if (form === undefined || unit === undefined || signal !== channel.name) return [];
    const type: QuantityType = { dimension: unit.dimension, kind: form.kind ?? 'none', unit };
    const offset = type.kind === 'point' ? unit.offset : 0;
    return [
      { channel, type, column: { at: channel.at, raw: type, factor: unit.factor, offset, isClock: false } },
    ];
  });
  if (known.length === 0) return [];
  const { columns } = samples.read([time, ...known.map((each) => each.column)], []);
  const [moments, ...read] = columns;
  if (moments === undefined || moments.length === 0) return [];
  const index = at === undefined ? undefined : nearestTo(moments, at);
  const lines = known.flatMap(({ channel, type }, i) => {
    const column = read[i] ?? new Float64Array(0);
    const si = index === undefined ? meanOf(column) : (column[index] ?? Number.NaN);
    if (Number.isNaN(si)) return [];
    // What kind of pressure or temperature it is, its signal says.
    const unit = type.unit.symbol === '1' ? '' : ` ${type.unit.symbol}`;
    return [`  ${channel.name}: ${formatNumber(fromSi(si, type.unit, type.kind), 0, 4)}${unit}`];
  });
  if (lines.length === 0) return [];
  const shown = index === undefined ? undefined : formatNumber(moments[index] ?? 0, 0, 6);
  return [
    shown === undefined
      ? `readings: Means of ${titleFor(file)}`
      : `readings: ${titleFor(file)} at ${shown} s`,
    `as: ${free(`${name}_${shown === undefined ? 'means' : 'moment'}`, new Set())}`,
    '# These figures stand for one engine state: keep those that do, and say which: `state: warm idle`.',
    'values:',
    ...lines,
  ];
}

const noSignal = { name: '', meaning: '', family: '', holds: 'quantity', forms: [] } as const;

function nearestTo(moments: Float64Array, at: number): number {
  let best = 0;
  moments.forEach((each, i) => {
    if (Math.abs(each - at) < Math.abs((moments[best] ?? 0) - at)) best = i;
  });
  return best;
}

function meanOf(samples: Float64Array): number {
  let sum = 0;
  let count = 0;
  for (const each of samples) {
    if (Number.isNaN(each)) continue;
    sum += each;
    count++;
  }
  return sum / count;
}

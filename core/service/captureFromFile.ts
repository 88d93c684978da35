import type { TextNode } from '../casefile/tree.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { fromSi } from '../quantity/convert.ts';
import { formatNumber } from '../quantity/format.ts';
import type { QuantityType, Unit } from '../quantity/types.ts';
import { formatText, isUsual, layoutWords, readingWords, whyNoSamples } from '../recording/describe.ts';
import type { FileBytes } from '../recording/files.ts';
import type { Format, Layout } from '../recording/layout.ts';
import { plainName } from '../recording/plainName.ts';
import { proposeSignal } from '../recording/proposeSignal.ts';
import { layoutOf } from '../recording/recording.ts';
import { formFor, signalOf } from '../signals/lookup.ts';
import { takenByLanguage } from '../study/cells/names.ts';
import { ownTimes } from '../study/cells/ownTimes.ts';
import { type Column, isOfWords, type Samples } from '../study/cells/samples.ts';
import { samplesOf } from '../study/cells/samplesOfFile.ts';
import { findTime, type Time, timeAt } from '../study/cells/timeColumn.ts';
import { unitMeant } from '../study/fitTo.ts';

/** What is made of a recorder's file: cells for a case, and what their author should know. */
export interface ImportedCapture {
  /** A capture cell and, where a channel is a known signal, a readings cell: their texts. */
  readonly cells: readonly string[];
  readonly channels: number;
  /** How the file was read. */
  readonly readAs: string;
}

/** Why nothing is made of it. */
export interface NotImported {
  readonly why: string;
  /** Where its author can settle it: by which options of the command line, or in a cell that offers the choice. */
  readonly asks?: { readonly options: string; readonly cell: string };
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
  if ('is' in layout)
    return notImported(layout, [
      `capture: ${titleFor(file)}`,
      `as: ${nameFor(file, taken)}`,
      `file: ${written(file)}`,
    ]);
  const place: TextNode = {
    kind: 'text',
    text: file,
    style: 'plain',
    span: { start: 0, end: 0 },
    map: [[0, 0]],
  };
  const samples = samplesOf(content, layout, file, place);
  const found: Diagnostic[] = [];
  const own = ownTimes(samples);
  const time = findTime(undefined, samples, false, found);
  const name = nameFor(file, taken);
  const channels = channelsIn(samples, time, own);
  const capture = [
    `capture: ${titleFor(file)}`,
    `as: ${name}`,
    '# The engine state it was recorded in, where it was one: `state: warm idle`.',
    `file: ${written(file)}`,
    ...(isUsual(layout) ? [] : [`format: ${formatText(layout)}`]),
    timeLine(samples, time?.column, found),
    'channels:',
    ...channels.map(channelLine),
    ...samples.headings.flatMap((each, at) =>
      isOfWords(samples, at) ? [`  # left out, since it holds no numbers: ${each}`] : [],
    ),
  ];
  const readings = time === undefined ? [] : readingsFrom(asked, samples, channels, name);
  const others = new Set(channels.map((each) => each.time?.words).filter((each) => each !== undefined));
  if (time !== undefined) others.delete(time.words);
  return {
    cells: [capture, readings].filter((each) => each.length > 0).map((each) => each.join('\n')),
    channels: channels.length,
    readAs: [layoutWords(layout), ...(time === undefined ? [] : [time.words]), ...others].join('; '),
  };
}

function notImported(
  unclear: Exclude<ReturnType<typeof layoutOf>, Layout>,
  cell: readonly string[],
): NotImported {
  const why = whyUnclear(unclear);
  switch (unclear.is) {
    case 'two readings':
      return {
        why,
        asks: { options: 'Say which with `--delimiter` and `--decimal`', cell: cell.join('\n') },
      };
    case 'more columns than names':
      return {
        why,
        asks: { options: 'If they part the columns, say so with `--delimiter comma`', cell: cell.join('\n') },
      };
    default:
      return { why };
  }
}

function whyUnclear(unclear: Exclude<ReturnType<typeof layoutOf>, Layout>): string {
  switch (unclear.is) {
    case 'lost':
      return 'it could not be read to its end. Try again';
    case 'two readings':
      return `its line \`${unclear.line}\` can be read in ${unclear.readings.length} ways: ${unclear.readings
        .map((each, at) => `(${at + 1}) ${readingWords(each)}`)
        .join('; ')}`;
    case 'more columns than names':
      return `its line \`${unclear.line}\` has ${unclear.reading.headings.length} columns, and its heading names ${unclear.names}. If its commas are decimal marks, export it with semicolons or tabs`;
    default:
      return whyNoSamples(unclear);
  }
}

interface Proposed {
  readonly name: string;
  readonly heading: string;
  readonly at: number;
  /** The time that it was taken by; `own`: its heading, where it is not the capture's. */
  readonly time: Time | undefined;
  readonly own: string | undefined;
  readonly signal: string | undefined;
  readonly unit: Unit | undefined;
  /** What the author has to say: units that the signal may have. */
  readonly lacks: string | undefined;
}

function channelsIn(
  samples: Samples,
  main: Time | undefined,
  own: ReadonlyMap<number, number> | undefined,
): readonly Proposed[] {
  const used = new Set<string>();
  const times = new Set(own?.values());
  return samples.written.flatMap((heading, at): Proposed[] => {
    if (at === main?.column.at || times.has(at) || !samples.holdsNumbers(at)) return [];
    const behind = own?.get(at);
    const isOwn = behind !== undefined && behind !== main?.column.at;
    const unit = (samples.unitIn(at) ?? samples.firstValue(at))?.unit;
    const called = proposeSignal(heading, undefined);
    const of = called === undefined ? undefined : signalOf(called);
    const meant = unit === undefined || of === undefined ? undefined : unitMeant(unit, of);
    const signal = meant === undefined ? proposeSignal(heading, unit?.dimension) : called;
    const name = free(signal ?? plainName(heading).toLowerCase(), used);
    const forms = signal === undefined ? [] : (signalOf(signal)?.forms ?? []);
    const needs = unit === undefined && forms.length > 0 && forms.every((form) => form.unit !== '1');
    const lacks = meant ?? (needs ? forms.map((form) => form.unit).join(' or ') : undefined);
    return [
      {
        name,
        heading: samples.headings[at] ?? heading,
        at,
        time: isOwn ? timeAt(behind, undefined, samples, false, []) : main,
        own: isOwn ? samples.headings[behind] : undefined,
        signal,
        unit,
        lacks,
      },
    ];
  });
}

function free(name: string, used: Set<string>): string {
  let candidate = name;
  for (let more = 2; used.has(candidate); more++) candidate = `${name}_${more}`;
  used.add(candidate);
  return candidate;
}

function channelLine({ name, heading, signal, lacks, own }: Proposed): string {
  const remark =
    lacks === undefined
      ? ''
      : `   # say its unit, such as {column: ${JSON.stringify(heading)}, unit: ${lacks}}`;
  const more = [
    ...(own === undefined ? [] : [`time: ${JSON.stringify(own)}`]),
    ...(signal === undefined || signal === name ? [] : [`signal: ${signal}`]),
  ];
  if (more.length === 0) return `  ${name}: ${written(heading)}${remark}`;
  return `  ${name}: {column: ${JSON.stringify(heading)}, ${more.join(', ')}}${remark}`;
}

/** The time is named where it would not be found, so that the cell says what has to be said. */
function timeLine(samples: Samples, time: Column | undefined, found: readonly Diagnostic[]): string {
  if (time !== undefined) return `time: ${written(samples.headings[time.at] ?? '')}`;
  for (const each of found) {
    if (each.code !== 'capture-clock-unclear') continue;
    const { column, text } = each.facts;
    return `time: ${written(column)}   # say what ${text} is: {column: ${JSON.stringify(column)}, unit: mm:ss} or unit: hh:mm`;
  }
  return 'time:   # the heading of the column that holds the time';
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
  channels: readonly Proposed[],
  name: string,
): readonly string[] {
  const known = channels.flatMap((channel) => {
    const { signal, unit } = channel;
    const form =
      signal === undefined || unit === undefined
        ? undefined
        : formFor(signalOf(signal) ?? noSignal, unit.dimension);
    const time = channel.time?.column;
    if (form === undefined || unit === undefined || signal !== channel.name || time === undefined) return [];
    const type: QuantityType = { dimension: unit.dimension, kind: form.kind ?? 'none', unit };
    const offset = type.kind === 'point' ? unit.offset : 0;
    const factor = unit.factor;
    const column: Column = { at: channel.at, raw: type, factor, offset, clock: undefined, fromFirst: false };
    return [{ channel, type, column, time }];
  });
  const times = [...new Map(known.map(({ time }) => [time.at, time])).values()];
  const groups = times.map((time) => ({
    time,
    channels: known.filter((each) => each.time.at === time.at).map((each) => each.column),
  }));
  const read = samples.read(groups, []);
  const moments = read[0]?.time;
  if (moments === undefined || moments.length === 0) return [];
  const shown = at === undefined ? undefined : formatNumber(moments[nearestTo(moments, at)] ?? 0, 0, 6);
  const lines = known.flatMap(({ channel, type, column: of, time }) => {
    const group = times.findIndex((each) => each.at === time.at);
    const taken = read[group];
    const column = taken?.columns[groups[group]?.channels.indexOf(of) ?? -1] ?? new Float64Array(0);
    const index = at === undefined ? undefined : nearestTo(taken?.time ?? moments, at);
    const si = index === undefined ? meanOf(column) : (column[index] ?? Number.NaN);
    if (Number.isNaN(si)) return [];
    // What kind of pressure or temperature it is, its signal says.
    const unit = type.unit.symbol === '1' ? '' : ` ${type.unit.symbol}`;
    return [`  ${channel.name}: ${formatNumber(fromSi(si, type.unit, type.kind), 0, 4)}${unit}`];
  });
  if (lines.length === 0) return [];
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

import type { CaptureCell } from '../../casefile/cell.ts';
import type { TextNode } from '../../casefile/tree.ts';
import { type Diagnostic, diagnose, type Fix } from '../../diagnostics/diagnostic.ts';
import { time as timeDimension } from '../../quantity/dimension.ts';
import type { Quantity, Unit } from '../../quantity/types.ts';
import { plainUnit, unitOf } from '../../quantity/unit.ts';
import { type ClockForm, day } from '../../recording/clock.ts';
import { readUnit } from '../readUnit.ts';
import { columnNamed } from './columnNamed.ts';
import type { Column, Samples } from './samples.ts';
import { timeWords } from './timeWords.ts';

/** A time of a capture: its column, and how it was taken, in words. */
export interface Time {
  readonly column: Column;
  readonly words: string;
}

type Named = CaptureCell['time'];

/**
 * The column of the time: the one that is named, or else one that is headed as a time, measured in one, or a clock's.
 * Where the rows stand in the case, the first is taken at last. Reported when it cannot be a time.
 */
export function findTime(
  named: Named,
  samples: Samples,
  isInline: boolean,
  found: Diagnostic[],
): Time | undefined {
  const at = columnOf(named, samples, isInline, found);
  return at === undefined ? undefined : timeAt(at, named, samples, isInline, found);
}

/** The time of a column that is known. */
export function timeAt(
  at: number,
  named: Named,
  samples: Samples,
  isInline: boolean,
  found: Diagnostic[],
): Time | undefined {
  const heading = samples.headings[at] ?? '';
  const said = clockSaid(named?.unit);
  const clock = samples.clock(at, said);
  if (clock === 'two readings') {
    found.push(clockUnclear(named, samples, at));
    return undefined;
  }
  if (clock !== undefined) {
    const raw = { dimension: timeDimension, kind: 'none', unit: seconds } as const;
    const column: Column = { at, raw, factor: 1, offset: 0, clock, fromFirst: false };
    const short = clock.turn < day ? ' in minutes and seconds' : '';
    return { column, words: `time from \`${heading}\`, a clock${short}, in seconds since its first sample` };
  }
  const written = named?.unit === undefined || said !== undefined ? undefined : readUnit(named.unit);
  found.push(...(written?.diagnostics ?? []));
  if (written !== undefined && written.value === undefined) return undefined;
  const given = written?.value ?? samples.unitIn(at) ?? samples.firstValue(at);
  const first = Math.abs(samples.firstNumber(at) ?? 0);
  const isGiven = given !== undefined && given.unit !== plainUnit;
  const unit = isGiven ? given.unit : (sinceEpoch(first) ?? seconds);
  const fromFirst = first * unit.factor >= longAgo;
  const words = wordsFor(heading, given, unit, fromFirst);
  if (given === undefined && !isInline) found.push(assumed(named, samples.placeOf(at), heading, unit, words));
  if (unit.dimension !== timeDimension) {
    const place = named?.unit ?? samples.placeOf(at);
    const facts = {
      name: heading,
      got: `\`${unit.symbol}\``,
      takes: 'a time: seconds, milliseconds, minutes',
    };
    found.push(diagnose('wrong-value-shape', place.span, facts));
    return undefined;
  }
  const raw = { dimension: timeDimension, kind: 'none', unit } as const;
  return { column: { at, raw, factor: unit.factor, offset: 0, clock: undefined, fromFirst }, words };
}

function clockSaid(unit: TextNode | undefined): ClockForm['two'] | undefined {
  const text = unit?.text.trim();
  return text === 'mm:ss' || text === 'hh:mm' ? text : undefined;
}

/** A recording counts for hours or days; what counts for thirty years counts from 1970. */
const longAgo = 1e9;

/** Numbers without a unit that count from 1 January 1970: seconds of now have ten digits, milliseconds 13, microseconds 16. */
function sinceEpoch(first: number): Unit | undefined {
  if (first >= 1e9 && first < 1e10) return seconds;
  if (first >= 1e12 && first < 1e13) return unitOf('ms');
  return first >= 1e15 && first < 1e16 ? unitOf('µs') : undefined;
}

/** What is taken for granted is shown; the fix says so in the cell. */
function assumed(named: Named, file: TextNode, heading: string, unit: Unit, how: string): Diagnostic {
  return diagnose('capture-recognised', file.span, { file: file.text.trim(), how }, [
    saysTime(named, file, heading, unit.symbol),
  ]);
}

function clockUnclear(named: Named, samples: Samples, at: number): Diagnostic {
  const file = samples.placeOf(at);
  const heading = samples.headings[at] ?? '';
  const text = samples.texts(at).find((each) => each !== '') ?? '';
  const fixes = ['mm:ss', 'hh:mm'].map((unit) => saysTime(named, file, heading, unit));
  return diagnose('capture-clock-unclear', (named?.node ?? file).span, { column: heading, text }, fixes);
}

/** Writes `time` in the place of the one that is there, or on a line of its own below the file's. */
function saysTime(named: Named, file: TextNode, heading: string, unit: string): Fix {
  const text = `{column: ${JSON.stringify(heading)}, unit: ${unit}}`;
  const { end } = file.span;
  const edit =
    named === undefined
      ? { span: { start: end, end }, newText: `\ntime: ${text}` }
      : { span: named.node.span, newText: text };
  return { title: `Write \`time: ${text}\``, edits: [edit] };
}

const seconds: Unit = unitOf('s') ?? plainUnit;

function wordsFor(heading: string, given: Quantity | undefined, unit: Unit, fromFirst: boolean): string {
  const from = fromFirst ? ', counted from its first sample' : '';
  if (given !== undefined) return `time from \`${heading}\`, in ${unit.symbol}${from}`;
  if (!fromFirst) return `time from \`${heading}\`, in seconds, since no unit is given`;
  const each = unit === seconds ? 'seconds' : unit.symbol;
  return `time from \`${heading}\`, in ${each} since 1970, as its numbers are that large${from}`;
}

function columnOf(
  named: Named,
  samples: Samples,
  isInline: boolean,
  found: Diagnostic[],
): number | undefined {
  const { headings } = samples;
  const all = headings.map((_, at) => at);
  if (named?.column !== undefined) return columnNamed(named.column, samples, found);
  const isTime = (at: number): boolean => samples.unitIn(at)?.unit.dimension === timeDimension;
  const headed = all.find((at) => timeWords.test(headings[at] ?? ''));
  const known =
    headed ?? all.find((at) => samples.clock(at, undefined) !== undefined) ?? all.slice(0, 1).find(isTime);
  if (known !== undefined) return known;
  if (isInline) return 0;
  const columns = headings.slice(0, mostNamed);
  const file = samples.placeOf(0);
  const rising = all.filter((at) => samples.rises(at)).slice(0, mostOffered);
  const fixes = rising.flatMap((at) =>
    ['s', 'ms'].map((unit) => saysTime(undefined, file, headings[at] ?? '', unit)),
  );
  found.push(diagnose('capture-no-time', file.span, { columns }, fixes));
  return undefined;
}

const mostNamed = 12;
const mostOffered = 2;

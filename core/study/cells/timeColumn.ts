import type { CaptureCell } from '../../casefile/cell.ts';
import type { TextNode } from '../../casefile/tree.ts';
import { type Diagnostic, diagnose, type Fix } from '../../diagnostics/diagnostic.ts';
import { time as timeDimension } from '../../quantity/dimension.ts';
import type { Quantity, Unit } from '../../quantity/types.ts';
import { plainUnit, unitOf } from '../../quantity/unit.ts';
import { nearest } from '../../text/nearest.ts';
import { readUnit } from '../readUnit.ts';
import type { Column, Samples } from './samples.ts';

/** The time of a capture: its column, and how it was taken, in words. */
export interface Time {
  readonly column: Column;
  readonly words: string;
}

/**
 * The column of the time: the one that is named, or else one that is headed as a time, measured in one, or a clock's.
 * Where the rows stand in the case, the first is taken at last. Reported when it cannot be a time.
 */
export function findTime(
  named: CaptureCell['time'],
  samples: Samples,
  isInline: boolean,
  found: Diagnostic[],
): Time | undefined {
  const at = columnOf(named, samples, isInline, found);
  if (at === undefined) return undefined;
  const heading = samples.headings[at] ?? '';
  const isClock = samples.isClock(at);
  const written = named?.unit === undefined ? undefined : readUnit(named.unit);
  found.push(...(written?.diagnostics ?? []));
  if (written !== undefined && written.value === undefined) return undefined;
  const given = written?.value ?? samples.unitIn(at) ?? (isClock ? undefined : samples.firstValue(at));
  const unit = given === undefined || given.unit === plainUnit ? seconds : given.unit;
  const words = wordsFor(heading, isClock, given, unit);
  if (given === undefined && !isClock && !isInline)
    found.push(assumed(named, samples.placeOf(at), heading, words));
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
  const column: Column = { at, raw, factor: isClock ? 1 : unit.factor, offset: 0, isClock };
  return { column, words };
}

/** Seconds are taken for granted, and shown; the fix says so in the cell. */
function assumed(named: CaptureCell['time'], file: TextNode, heading: string, how: string): Diagnostic {
  return diagnose('capture-recognised', file.span, { file: file.text.trim(), how }, [
    saysTime(named, file, heading, 's'),
  ]);
}

/** Writes `time` in the place of the one that is there, or on a line of its own below the file's. */
function saysTime(named: CaptureCell['time'], file: TextNode, heading: string, unit: string): Fix {
  const text = `{column: ${JSON.stringify(heading)}, unit: ${unit}}`;
  const { end } = file.span;
  const edit =
    named === undefined
      ? { span: { start: end, end }, newText: `\ntime: ${text}` }
      : { span: named.node.span, newText: text };
  return { title: `Write \`time: ${text}\``, edits: [edit] };
}

const seconds: Unit = unitOf('s') ?? plainUnit;

function wordsFor(heading: string, isClock: boolean, given: Quantity | undefined, unit: Unit): string {
  if (isClock) return `time from \`${heading}\`, a clock, in seconds since its first sample`;
  if (given === undefined) return `time from \`${heading}\`, in seconds, since no unit is given`;
  return `time from \`${heading}\`, in ${unit.symbol}`;
}

function columnOf(
  named: CaptureCell['time'],
  samples: Samples,
  isInline: boolean,
  found: Diagnostic[],
): number | undefined {
  const { headings } = samples;
  const all = headings.map((_, at) => at);
  if (named?.column !== undefined) {
    const { text, span } = named.column;
    const exact = headings.indexOf(text);
    if (exact >= 0) return exact;
    const close = nearest(text, headings);
    const fixes = close.map((name) => ({
      title: `Write \`${name}\``,
      edits: [{ span, newText: JSON.stringify(name) }],
    }));
    found.push(diagnose('unknown-column', span, { column: text, columns: headings, nearest: close }, fixes));
    return undefined;
  }
  const isTime = (at: number): boolean => samples.unitIn(at)?.unit.dimension === timeDimension;
  const headed = all.find((at) => timeWords.test(headings[at] ?? ''));
  const known = headed ?? all.find((at) => samples.isClock(at)) ?? all.slice(0, 1).find(isTime);
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

/** How tools head their time, in the languages that they are sold in. */
const timeWords =
  /^(?:time|t|timestamp|elapsed|relative time|zeit|temps|tiempo|tempo|tijd|seconds?|sec|clock)(?![A-Za-z])/i;

const mostNamed = 12;
const mostOffered = 2;

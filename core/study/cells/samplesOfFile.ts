import type { TextNode } from '../../casefile/tree.ts';
import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { parseQuantity } from '../../quantity/parse.ts';
import type { Quantity } from '../../quantity/types.ts';
import { isNumber } from '../../recording/body.ts';
import { type ClockForm, clockFormOf, clockSeconds, isClockTime, sinceFirst } from '../../recording/clock.ts';
import type { FileBytes } from '../../recording/files.ts';
import type { Layout } from '../../recording/layout.ts';
import { isMissing, numberIn } from '../../recording/numbers.ts';
import { type Recording, recordingsOf } from '../../recording/recording.ts';
import type { Refusal } from '../../recording/rows.ts';
import { unitIn, unitOfHeading } from '../../recording/unitWords.ts';
import { noFile } from './noFile.ts';
import type { Column, Group, SampledColumns, Samples } from './samples.ts';

/** The samples of a file whose layout is known. `file` is where findings are shown. */
export function samplesOf(content: FileBytes, layout: Layout, name: string, file: TextNode): Samples {
  const { headings, written, sample, units, decimal } = layout;
  const texts = (at: number): readonly string[] => sample.map((row) => row[at] ?? '');
  const held = (at: number): readonly string[] => texts(at).filter((each) => !isMissing(each));
  return {
    headings,
    written,
    placeOf: () => file,
    unitIn: (at) => quantityOf(unitIn(units?.[at] ?? '')) ?? quantityOf(unitOfHeading(written[at] ?? '')),
    firstValue: (at) => {
      const first = held(at)[0] ?? '';
      if (numberIn(first, decimal) !== undefined) return undefined;
      return parseQuantity(decimal === 'comma' ? first.replace(',', '.') : first).value;
    },
    firstNumber: (at) => numberIn(held(at)[0] ?? '', decimal),
    clock: (at, said) => {
      const clocks = held(at);
      const [first = ''] = clocks;
      if (numberIn(first, decimal) !== undefined || !isClockTime(first)) return undefined;
      return clockFormOf(clocks, said ?? formSaid(units?.[at] ?? '') ?? formSaid(written[at] ?? ''));
    },
    texts,
    holdsNumbers: (at) => {
      const some = held(at);
      return some.length === 0 || some.some((each) => isNumber(each, decimal) && !isClockTime(each));
    },
    rises: (at) => {
      const numbers = Float64Array.from(
        held(at),
        (each) => numberIn(each, decimal) ?? clockSeconds(each) ?? Number.NaN,
      );
      if (isClockTime(held(at)[0] ?? '')) sinceFirst(numbers);
      return (
        numbers.length > 1 && numbers.every((each, i) => i === 0 || each > (numbers[i - 1] ?? Number.NaN))
      );
    },
    read: (groups, found) => {
      if (groups.length === 0) return [];
      const wanted = groups.map((group) => [group.time, ...group.channels].map(wantedOf));
      const recordings = recordingsOf(content, layout, wanted);
      const [lost] = recordings.flatMap((each) => each.lost ?? []);
      if (lost !== undefined) found.push(...[noFile(lost, name, file)].filter((each) => each !== undefined));
      found.push(...refused(recordings, name, headings, file));
      const later = afterFirst(groups, recordings);
      return recordings.map(({ columns: [time = noSamples, ...columns], back }, i): SampledColumns => {
        const place = `line ${back?.line} of \`${name}\``;
        return {
          time: moved(time, later[i] ?? 0),
          columns,
          widths: [],
          back: back === undefined ? undefined : { time: back.text, place, span: file.span },
        };
      });
    },
  };
}

const noSamples = new Float64Array(0);

const wantedOf = ({ at, raw, factor, offset, clock, fromFirst }: Column) => ({
  column: at,
  unit: raw.unit,
  factor,
  offset,
  clock,
  fromFirst,
});

/** A heading that shows how its clock is written: `Time (mm:ss)`. */
function formSaid(heading: string): ClockForm['two'] | undefined {
  if (/h:mm?:ss/i.test(heading)) return undefined;
  return /\bm?m:ss/i.test(heading) ? 'mm:ss' : /\bh?h:mm/i.test(heading) ? 'hh:mm' : undefined;
}

/**
 * By how many seconds each time begins later than the earliest, where they count from their first moments: so all of
 * them count from one moment. Clocks without a date may have passed midnight between two beginnings.
 */
function afterFirst(groups: readonly Group[], recordings: readonly Recording[]): readonly number[] {
  const begins = groups.map(({ time }, i) => {
    const { first = 0, rows = 0 } = recordings[i] ?? {};
    return (time.clock === undefined && !time.fromFirst) || rows === 0
      ? undefined
      : { first, clock: time.clock };
  });
  const reference = begins.find((each) => each !== undefined);
  const apart = begins.map((each) => {
    if (each === undefined || reference === undefined) return undefined;
    const gap = each.first - reference.first;
    const turn =
      each.clock === undefined || each.first >= longAgo ? Number.POSITIVE_INFINITY : each.clock.turn;
    return gap > turn / 2 ? gap - turn : gap < -turn / 2 ? gap + turn : gap;
  });
  const earliest = Math.min(...apart.filter((each) => each !== undefined));
  return apart.map((each) => (each === undefined ? 0 : Math.round((each - earliest) * 1e9) / 1e9));
}

/** Seconds that no clock of a day shows: there is a date. */
const longAgo = 1e7;

const moved = (time: Float64Array, by: number): Float64Array =>
  by === 0 ? time : time.map((each) => each + by);

const quantityOf = (unit: string | undefined): Quantity | undefined =>
  unit === undefined ? undefined : parseQuantity(`1 ${unit}`).value;

function refused(
  recordings: readonly Recording[],
  name: string,
  headings: readonly string[],
  file: TextNode,
): Diagnostic[] {
  const found: Diagnostic[] = [];
  const rows = Math.max(0, ...recordings.map((each) => each.rows));
  if (recordings.some((each) => each.isCut))
    found.push(diagnose('capture-too-long', file.span, { file: name, rows }));
  const lines = recordings.reduce((sum, each) => sum + each.refusedLines, 0);
  const fields = recordings.reduce((sum, each) => sum + each.refusedFields, 0);
  if (lines + fields > 0) {
    const refusals = recordings.flatMap((each) => each.refusals).slice(0, mostTold);
    const first = refusals.map((each) => refusalWords(each, headings));
    found.push(diagnose('capture-lines-refused', file.span, { file: name, lines, fields, rows, first }));
  }
  if (rows === 0 && recordings.every((each) => each.lost === undefined))
    found.push(diagnose('capture-no-samples', file.span, { file: name, why: 'no row of it could be read' }));
  return found;
}

const mostTold = 5;

function refusalWords({ line, column, text, why, width }: Refusal, headings: readonly string[]): string {
  const heading = headings[column ?? 0] ?? '';
  switch (why) {
    case 'no number':
      return `Line ${line}: \`${text}\` under \`${heading}\` is no number.`;
    case 'no time':
      return column === undefined
        ? `Line ${line} has no time: \`${text}\`.`
        : `Line ${line} has no time under \`${heading}\`.`;
    case 'no clock':
      return `Line ${line} has a plain number under \`${heading}\`, which is a clock.`;
    case 'width':
      return `Line ${line} has ${width} ${width === 1 ? 'column' : 'columns'} and the heading ${headings.length}: \`${text}\`.`;
  }
}

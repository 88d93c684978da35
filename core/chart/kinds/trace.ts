import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { time as timeDimension } from '../../quantity/dimension.ts';
import type { QuantityType } from '../../quantity/types.ts';
import { plainUnit, unitOf } from '../../quantity/unit.ts';
import type { Chart, Draw, Item } from '../chart.ts';
import type { Band, Drawing, Frame, Rule } from '../drawing.ts';
import { type MarkAxis, marksOff, marksOn } from '../marking.ts';
import { extremes, quantityWord, roundAxis, sameScale, shown, unitWords } from '../measure.ts';
import { nothingToPlot } from '../nothing.ts';
import { toneAt } from '../palette.ts';
import { figuresOf, seriesSentence, seriesTable } from '../seriesFigures.ts';
import { isSeries, type SeriesItem, sayValue } from '../sort.ts';
import { takenOf } from '../taken.ts';
import { timeAxisOf, tracePoints } from '../timeAxis.ts';

const mostFrames = 8;
const mostInFrame = 3;

/** Channels over one time: those of one unit share a frame, others stand below on scales of their own. */
export const trace: Draw = (chart, { items, marks, listed }, extent) => {
  const diagnostics: Diagnostic[] = listed ? notSeries(chart, items) : [];
  const drawn = items.filter(isSeries).filter(({ value }) => value.samples.length > 0);
  const [first] = drawn;
  if (first === undefined) {
    return nothingToPlot(chart, items, 'the samples of a capture', diagnostics);
  }
  const groups = groupsOf(drawn).slice(0, mostFrames);
  const { axis: x, factor } = timeAxisOf(
    drawn.map(({ value }) => value),
    extent,
  );
  const along = alongTime(factor);
  const axes: readonly MarkAxis[] = [...groups.map(({ type }): MarkAxis => ({ along: 'y', type })), along];
  diagnostics.push(...marksOff(marks, axes));
  const onAxes = marksOn(marks, axes);
  const moments = onAxes[groups.length] ?? [];
  const height = groups.length === 1 ? 230 : groups.length === 2 ? 140 : groups.length === 3 ? 105 : 80;
  const drawing: Drawing = {
    kind: 'trace',
    title: titleOf(drawn),
    taken: takenOf(drawn),
    x,
    frames: groups.map(({ items: here, type }, at): Frame => {
      const limits = onAxes[at] ?? [];
      const only = here.length === 1 ? here[0] : undefined;
      return {
        y: roundAxis(only?.label ?? quantityWord(type), unitWords(type), ends(here, limits)),
        height,
        layers: [
          ...limits,
          ...moments.map((mark) => (at === 0 ? mark : { ...mark, says: '' })),
          ...here.map((item, place) => ({
            kind: 'line' as const,
            tone: toneAt(place),
            of: item.label,
            ...tracePoints({ ...item.value, type }, extent, factor),
            says: only === undefined ? item.label : '',
          })),
        ],
      };
    }),
    beneath: [],
    secondsInOne: factor,
    summary: drawn.map(seriesSentence),
    table: seriesTable(drawn, 'channel'),
  };
  return { drawing, diagnostics };
};

/** Seconds on an axis of minutes or milliseconds. */
export function alongTime(factor: number): MarkAxis {
  const type: QuantityType = { dimension: timeDimension, kind: 'none', unit: unitOf('s') ?? plainUnit };
  return { along: 'x', type, place: (seconds) => seconds / factor };
}

interface Group {
  readonly type: QuantityType;
  readonly items: SeriesItem[];
}

function groupsOf(items: readonly SeriesItem[]): readonly Group[] {
  const groups: Group[] = [];
  for (const item of items) {
    const { type } = item.value;
    const group = groups.find((each) => each.items.length < mostInFrame && sameScale(each.type, type));
    if (group === undefined) groups.push({ type, items: [item] });
    else group.items.push(item);
  }
  return groups;
}

function ends(items: readonly SeriesItem[], limits: readonly (Band | Rule)[]): readonly [number, number] {
  const [first] = items;
  const values = items.flatMap(({ value }) => {
    if (first === undefined) return [];
    const { least, greatest } = figuresOf(value);
    const back = (at: number): number =>
      shown(at * value.type.unit.factor + offset(value.type), first.value.type);
    return value.type.unit === first.value.type.unit ? [least, greatest] : [back(least), back(greatest)];
  });
  const marked = limits.flatMap((each) =>
    each.kind === 'rule' ? [each.at] : [each.from, each.to].filter((end) => end !== undefined),
  );
  return extremes([values, marked]) ?? [0, 1];
}

const offset = ({ kind, unit }: QuantityType): number => (kind === 'point' ? unit.offset : 0);

function titleOf(items: readonly SeriesItem[]): string {
  const [first] = items;
  if (items.length === 1 && first !== undefined) return `${first.label} over time`;
  if (
    first !== undefined &&
    items.every(({ value }) => value.type.dimension === first.value.type.dimension)
  ) {
    const { name } = first.value.type.dimension;
    if (/^[a-z][a-z ]+$/.test(name)) return `${name.slice(0, 1).toUpperCase()}${name.slice(1)} over time`;
  }
  const whole = items.map(({ label }) => label).join(', ');
  return whole.length <= 70 ? whole : `${items.length} channels over time`;
}

export function notSeries(chart: Chart, items: readonly Item[]): Diagnostic[] {
  return items
    .filter((item) => !isSeries(item) && item.value.kind !== 'absent')
    .map((item) =>
      diagnose('not-plotted', item.span, {
        kind: chart.kind,
        what: item.name,
        is: sayValue(item.value),
        takes: 'the samples of a capture',
      }),
    );
}

import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { aligned } from '../../expression/series.ts';
import type { Series } from '../../expression/value.ts';
import { turn } from '../../quantity/dimension.ts';
import { formatNumber } from '../../quantity/format.ts';
import type { Kind } from '../../quantity/types.ts';
import { decimate } from '../../waveform/decimate.ts';
import type { Draw, Item, Mark } from '../chart.ts';
import type { Axis, Drawing, Line, Stretch, TableFigure, Tick } from '../drawing.ts';
import { marksOff, marksOn } from '../marking.ts';
import {
  extremes,
  numberFigure,
  quantityWord,
  roundAxis,
  said,
  sameScale,
  shown,
  unitWords,
} from '../measure.ts';
import { nothingToPlot } from '../nothing.ts';
import { toneAt } from '../palette.ts';
import { seriesSentence, seriesTable } from '../seriesFigures.ts';
import { isSeries, type SeriesItem, sayValue, unitOrNumber } from '../sort.ts';
import { takenOf } from '../taken.ts';

/** From the firing top dead centre, two turns of the crankshaft. */
const strokes: readonly Stretch[] = [
  { from: 0, to: 180, says: 'expansion' },
  { from: 180, to: 360, says: 'exhaust' },
  { from: 360, to: 540, says: 'intake' },
  { from: 540, to: 720, says: 'compression' },
];

const deadCentres: readonly Tick[] = [0, 180, 360, 540, 720].map((at, place) => ({
  at,
  says: place % 2 === 0 ? 'TDC' : 'BDC',
}));

/** More turns laid over each other show no more. */
const mostCycles = 12;
const mostLines = 3;

interface Against extends SeriesItem {
  readonly angle: Series;
}

/** A pressure against crank angle: the strokes in words beneath, ticks at the valve events only, their angles in the table. */
export const crank: Draw = (chart, { items, marks, listed }, extent) => {
  const diagnostics: Diagnostic[] = [];
  const found = items.flatMap((item): Against[] => {
    const angle = angleOf(item);
    if (isSeries(item) && angle !== undefined) return [{ ...item, angle }];
    if (!listed || item.value.kind === 'absent' || item.against?.value.kind === 'absent') return [];
    const takes = 'samples `against` their crank angle, `crank_angle(…)`';
    const facts = { kind: chart.kind, what: item.name, is: sayValue(item.value), takes };
    diagnostics.push(diagnose('not-plotted', item.span, facts));
    return [];
  });
  const [first] = found;
  if (first === undefined) {
    const needs = 'a cylinder’s pressure `against` its crank angle, `crank_angle(…)`';
    return nothingToPlot(chart, items, needs, diagnostics);
  }
  const { type } = first.value;
  const drawn = found.slice(0, mostLines).filter((item) => {
    if (sameScale(item.value.type, type)) return true;
    const facts = {
      kind: chart.kind,
      what: item.name,
      is: unitOrNumber(item.value.type),
      others: unitOrNumber(type),
    };
    diagnostics.push(diagnose('mixed-units', item.span, facts));
    return false;
  });
  const events = marks.flatMap((mark) => eventsOf(mark, drawn.length > 1 ? drawn : []));
  const owners = new Set(events.map(({ of }) => of));
  const [owner = ''] = owners;
  const others = marks.filter((mark) => eventsOf(mark, []).length === 0);
  const axes = [{ along: 'y', type }] as const;
  diagnostics.push(...marksOff(others, axes));
  const lines = drawn.map((item, at) => ({
    kind: 'line' as const,
    tone: toneAt(at),
    of: item.label,
    ...cyclesOf({ ...item, value: { ...item.value, type } }, extent.columns),
    says: drawn.length > 1 ? item.label : '',
  }));
  const unit = unitWords(type);
  const whole = extremes(lines.map(({ y }) => y)) ?? [0, 1];
  const low = lowerPart(lines, whole, unit);
  const at = events.map(({ at }) => ({ kind: 'rule' as const, along: 'x' as const, at, says: '' }));
  const drawing: Drawing = {
    kind: 'crank',
    title: `${drawn.length === 1 ? first.label : 'Pressure'} against crank angle`,
    taken: takenOf(drawn),
    x: {
      name: `${owners.size === 1 && owner !== '' ? `events of ${owner}; ` : ''}crank angle from the firing top dead centre`,
      unit: '°',
      from: 0,
      to: 720,
      ticks:
        events.length > 0
          ? events.map(({ at, short, of }) => ({ at, says: owners.size > 1 ? named(short, of) : short }))
          : deadCentres,
    },
    frames: [
      {
        y: roundAxis(quantityWord(type), unit, whole),
        height: 260,
        layers: [...marksOn(others, axes).flat(), ...at, ...lines],
      },
      ...(low === undefined ? [] : [{ y: low, height: 150, layers: [...at, ...lines.map(within(low))] }]),
    ],
    beneath: strokes,
    secondsInOne: undefined,
    summary: [
      ...drawn.map(seriesSentence),
      ...events.map(({ name, of, says, at }) => `${named(name, of)}: ${says}, in ${strokeAt(at)}.`),
    ],
    table:
      events.length === 0
        ? seriesTable(drawn, 'channel')
        : {
            rowsAre: 'event',
            columns: ['crank angle', 'from the firing top dead centre'],
            rows: events.map(({ name, of, figure, unit, at }) => ({
              name: named(name, of),
              figures: [figure, numberFigure(Number(at.toPrecision(6)))],
              unit,
            })),
          },
  };
  return { drawing, diagnostics };
};

/**
 * The towers of a cylinder dwarf what happens while its valves are open: where that takes less than a quarter of the
 * frame, a second one beneath shows it by itself, with a little of the pressures around it.
 */
function lowerPart(
  lines: readonly Line[],
  [least, most]: readonly [number, number],
  unit: string,
): Axis | undefined {
  const open = lines.map(({ x, y }) => y.filter((_, i) => (x[i] ?? 0) >= 180 && (x[i] ?? 0) <= 540));
  const ends = extremes(open);
  if (ends === undefined) return undefined;
  const [low, high] = ends;
  if (high === low || (high - low) * 4 > most - least) return undefined;
  return roundAxis('the lower part', unit, [low, high + (high - low) / 2]);
}

/** The line where it lies inside an axis; another frame shows it whole. */
function within({ from, to }: Axis): (line: Line) => Line {
  return (line) => {
    const isIn = (at: number): boolean =>
      (line.y[at] ?? Number.NaN) >= from && (line.y[at] ?? Number.NaN) <= to;
    const kept = [...line.x.keys()].filter((at) => isIn(at) || isIn(at - 1));
    return {
      ...line,
      of: '',
      x: Float64Array.from(kept, (at) => line.x[at] ?? 0),
      y: Float64Array.from(kept, (at) => (isIn(at) ? (line.y[at] ?? 0) : Number.NaN)),
    };
  };
}

function angleOf({ against }: Item): Series | undefined {
  const value = against?.value;
  return value?.kind === 'series' && value.type.dimension === turn ? value : undefined;
}

/** The cycles one after the other, each with as many points as are seen; a break stands between them. */
function cyclesOf(
  { value, angle }: Against,
  columns: number,
): { readonly x: Float64Array; readonly y: Float64Array } {
  const [up, along] = aligned(value, angle);
  // Before the first dead centre and behind the last one nobody knows the angle.
  const isKnown = (_: number, i: number): boolean => Number.isFinite(along.samples[i]);
  const degrees = along.samples.filter(isKnown).map((turns) => wrapped(turns * 360));
  const samples = up.samples.filter(isKnown);
  const x: number[] = [];
  const y: number[] = [];
  let start = 0;
  for (let cycle = 0; cycle < mostCycles && start < degrees.length; cycle++) {
    let end = start + 1;
    while (end < degrees.length && !((degrees[end] ?? 0) < (degrees[end - 1] ?? 0))) end++;
    const few = decimate(degrees.subarray(start, end), samples.subarray(start, end), columns);
    if (cycle > 0) {
      x.push(0);
      y.push(Number.NaN);
    }
    for (let i = 0; i < few.time.length; i++) {
      x.push(few.time[i] ?? 0);
      y.push(shown(few.samples[i] ?? Number.NaN, value.type));
    }
    start = end;
  }
  return { x: Float64Array.from(x), y: Float64Array.from(y) };
}

/** 720 itself stays: it ends a cycle. */
const wrapped = (degrees: number): number => (degrees === 720 ? 720 : ((degrees % 720) + 720) % 720);

interface Event {
  readonly name: string;
  readonly short: string;
  /** Whose it is, where several are drawn: the label of the pressure that it was found in. */
  readonly of: string;
  readonly says: string;
  readonly figure: TableFigure;
  readonly unit: string;
  /** Degrees from the firing top dead centre. */
  readonly at: number;
}

const named = (name: string, of: string): string => (of === '' ? name : `${name}, ${of}`);

/** A mark that is an angle; `drawn` are those that it may be of. */
function eventsOf({ text, label, value, from }: Mark, drawn: readonly Item[]): readonly Event[] {
  if (value.kind !== 'one' || value.type.dimension !== turn) return [];
  const { type, amount } = value;
  const number = shown(amount.si, type);
  const unit = type.unit.symbol;
  const last = text.split('.').at(-1) ?? text;
  const name = label === undefined || label === '' ? last : label;
  const short = /^[a-z]{2,4}$/.test(last) ? last.toUpperCase() : name;
  const at = placeOf(amount.si * 360, type.kind);
  const of = drawn.find((item) => item.from.some((each) => from.includes(each)))?.label ?? '';
  return [
    {
      name,
      short,
      of,
      says: said(number, unit),
      figure: numberFigure(Number(formatNumber(number))),
      unit,
      at,
    },
  ];
}

/** Exhaust opens about the bottom that ends expansion, intake closes about the one that ends the intake; the valves overlap about the top between. */
function placeOf(degrees: number, kind: Kind): number {
  switch (kind) {
    case 'bbdc':
      return 180 - degrees;
    case 'abdc':
      return 540 + degrees;
    case 'btdc':
      return 360 - degrees;
    case 'atdc':
      return 360 + degrees;
    default:
      return wrapped(degrees);
  }
}

function strokeAt(at: number): string {
  return strokes.find(({ from, to }) => at >= from && at <= to)?.says ?? 'expansion';
}

import type { Diagnostic } from '../../diagnostics/diagnostic.ts';
import type { QuantityType } from '../../quantity/types.ts';
import { crossingsOf } from '../../waveform/crossings.ts';
import { shareAbove } from '../../waveform/cycles.ts';
import { isRecorded, recorded } from '../../waveform/recorded.ts';
import type { Draw, Extent } from '../chart.ts';
import type { Drawing, Frame, Layer } from '../drawing.ts';
import { type MarkAxis, marksOff, marksOn } from '../marking.ts';
import { extremes, numberFigure, roundAxis, said, shown, unitWords } from '../measure.ts';
import { nothingToPlot } from '../nothing.ts';
import { figuresOf } from '../seriesFigures.ts';
import { isSeries, type SeriesItem } from '../sort.ts';
import { takenOf } from '../taken.ts';
import { timeAxisOf, tracePoints } from '../timeAxis.ts';
import { alongTime, notSeries } from './trace.ts';

/** Volts, as in the oxygen sensor tests of SAE J1979 (values from memory): the level, and the band that a switch must leave. */
const usualLevel = 0.45;
const usualBand = 0.3;

/** More ticks than this would be a bar; then the number alone is said. */
const mostTicks = 240;

const mostFrames = 4;

/** An oxygen sensor against its switching level: each switch ticked, and the shares of the time on both sides. */
export const switching: Draw = (chart, { items, marks, listed }, extent) => {
  const diagnostics: Diagnostic[] = listed ? notSeries(chart, items) : [];
  const all = items
    .filter(isSeries)
    .filter(({ value }) => value.type.dimension.name === 'voltage' && value.samples.length > 0);
  const sensors = all.filter(({ signal }) => /^o2_b\d/.test(signal));
  const drawn = (listed || sensors.length === 0 ? all : sensors).slice(0, mostFrames);
  const [first] = drawn;
  if (first === undefined) {
    return nothingToPlot(chart, items, 'the samples of an oxygen sensor in volts (`o2_b1s1`)', diagnostics);
  }
  const { axis: x, factor } = timeAxisOf(
    drawn.map(({ value }) => value),
    extent,
  );
  const { type: firstType } = first.value;
  const given = marks.find(
    ({ value }) => value.kind === 'one' && value.type.dimension === firstType.dimension,
  )?.value;
  const level = given?.kind === 'one' ? given.amount.si : usualLevel;
  const band = given === undefined ? usualBand : 0;
  const axesOf = (type: QuantityType): readonly MarkAxis[] => [{ along: 'y', type }, alongTime(factor)];
  diagnostics.push(...marksOff(marks, axesOf(firstType)));
  const read = drawn.map((item) => readingsOf(item, level, band));
  const drawing: Drawing = {
    kind: 'switching',
    title: drawn.length === 1 ? `${first.label}, switching` : 'Switching of the oxygen sensors',
    taken: takenOf(drawn),
    x,
    frames: drawn.map((item, at): Frame => {
      const type = item.value.type;
      const { least, greatest } = figuresOf(item.value);
      const threshold = shown(level, type);
      // Sensors may be recorded in V and in mV: a limit stands where its own frame has it.
      const [limits = [], moments = []] = marksOn(marks, axesOf(type));
      const y = roundAxis(item.label, unitWords(type), extremes([[least, greatest, threshold, 0]]) ?? [0, 1]);
      return {
        y,
        height: drawn.length === 1 ? 220 : 130,
        layers: [
          ...limits.filter((each) => each.kind === 'band'),
          ...moments.map((mark) => (at === 0 ? mark : { ...mark, says: '' })),
          { kind: 'rule', along: 'y', at: threshold, says: said(threshold, unitWords(type)) },
          { kind: 'line', tone: 'ink', of: item.label, ...tracePoints(item.value, extent, factor), says: '' },
          ...switchLayers(read[at], threshold, y, factor, extent),
        ],
      };
    }),
    beneath: [],
    secondsInOne: factor,
    summary: drawn.map((item, at) => sentence(item, read[at], level, band)),
    table: {
      rowsAre: 'over the whole record',
      columns: drawn.map(({ label }) => label),
      rows: [
        { name: 'time rich', figures: read.map((each) => numberFigure(percent(each?.rich))), unit: '%' },
        { name: 'time lean', figures: read.map((each) => numberFigure(percent(each?.lean))), unit: '%' },
        {
          name: 'switches',
          figures: read.map((each) => numberFigure(each?.switches.length ?? Number.NaN)),
          unit: '',
        },
        {
          name: 'switches a second',
          figures: read.map((each) => numberFigure(each?.rate ?? Number.NaN)),
          unit: 'Hz',
        },
        {
          name: 'least',
          figures: drawn.map(({ value }) => numberFigure(figuresOf({ ...value, type: firstType }).least)),
          unit: unitWords(firstType),
        },
        {
          name: 'greatest',
          figures: drawn.map(({ value }) => numberFigure(figuresOf({ ...value, type: firstType }).greatest)),
          unit: unitWords(firstType),
        },
      ],
    },
  };
  return { drawing, diagnostics };
};

const percent = (share: number | undefined): number => (share === undefined ? Number.NaN : share * 100);

/** The same as `time_rich(x, level)` and `crossings(x, level, hysteresis)` give a check. */
interface Switching {
  readonly rich: number;
  readonly lean: number;
  /** Seconds. */
  readonly switches: readonly number[];
  /** A second. */
  readonly rate: number;
}

function readingsOf({ value }: SeriesItem, level: number, band: number): Switching | undefined {
  const record = recorded(value);
  if (!isRecorded(record)) return undefined;
  const rich = shareAbove(record, level);
  if (typeof rich !== 'number') return undefined;
  const switches = crossingsOf(record, level, band).flatMap(({ times }) => times);
  return { rich, lean: 1 - rich, switches, rate: switches.length / record.duration };
}

function switchLayers(
  read: Switching | undefined,
  threshold: number,
  y: Frame['y'],
  factor: number,
  { window }: Extent,
): Layer[] {
  if (read === undefined) return [];
  const seen =
    window === undefined ? read.switches : read.switches.filter((at) => at >= window.from && at <= window.to);
  return [
    ...(seen.length > mostTicks || seen.length === 0
      ? []
      : [{ kind: 'marks' as const, at: seen.map((at) => at / factor), y: threshold }]),
    { kind: 'note', y: (threshold + y.to) / 2, says: `rich ${said(Math.round(read.rich * 1000) / 10, '%')}` },
    {
      kind: 'note',
      y: (threshold + y.from) / 2,
      says: `lean ${said(Math.round(read.lean * 1000) / 10, '%')}`,
    },
  ];
}

function sentence(
  { label, value }: SeriesItem,
  read: Switching | undefined,
  level: number,
  band: number,
): string {
  if (read === undefined) return `${label}: too few samples to tell rich from lean.`;
  const unit = unitWords(value.type);
  const { least, greatest } = figuresOf(value);
  const counted =
    band === 0 ? '' : `, each beyond ${said(level - band / 2, 'V')} or ${said(level + band / 2, 'V')}`;
  return `${label}: rich ${said(percent(read.rich), '%')} of the time, lean ${said(percent(read.lean), '%')}; ${read.switches.length} switches of ${said(level, 'V')}${counted} (${said(read.rate, 'a second')}); from ${said(least, unit)} to ${said(greatest, unit)}.`;
}

import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { firstAtOrAfter } from '../../expression/series.ts';
import { crossingsOf, risingOf } from '../../waveform/crossings.ts';
import { isRecorded, recorded, swingOf } from '../../waveform/recorded.ts';
import type { Draw, Item } from '../chart.ts';
import type { Drawing } from '../drawing.ts';
import { marksOff, marksOn } from '../marking.ts';
import {
  extremes,
  numberFigure,
  quantityWord,
  roundAxis,
  said,
  sameScale,
  shown,
  timeUnit,
  unitWords,
} from '../measure.ts';
import { nothingToPlot } from '../nothing.ts';
import { toneAt } from '../palette.ts';
import { figuresOf, seriesTable } from '../seriesFigures.ts';
import { isSeries, type SeriesItem, unitOrNumber } from '../sort.ts';
import { takenOf } from '../taken.ts';
import { tracePoints } from '../timeAxis.ts';
import { alongTime, notSeries } from './trace.ts';

/** How far beyond the level the signal must go for an event to count, as a share of its swing. */
const tolerance = 0.1;

const mostCaptures = 3;

/**
 * Captures laid over each other: each is moved so that its first rise through the level stands at 0.
 * The level is the first mark in the samples' unit; without one, each capture's own middle.
 */
export const compare: Draw = (chart, { items, marks, listed }, extent) => {
  const diagnostics: Diagnostic[] = listed ? notSeries(chart, items) : [];
  const series = items.filter(isSeries).filter(({ value }) => value.samples.length > 0);
  const [first, second] = series;
  if (first === undefined || second === undefined) {
    return nothingToPlot(
      chart,
      items,
      'the samples of two captures, such as a known good one and the suspect',
      diagnostics,
    );
  }
  const { type } = first.value;
  const fitting = series.filter((item) => {
    if (sameScale(item.value.type, type)) return true;
    const facts = {
      kind: chart.kind,
      what: item.name,
      is: unitOrNumber(item.value.type),
      others: unitOrNumber(type),
    };
    if (listed) diagnostics.push(diagnose('mixed-units', item.span, facts));
    return false;
  });
  const level = marks.find(({ value }) => value.kind === 'one' && sameScale(value.type, type))?.value;
  const laid = fitting.slice(0, mostCaptures).map((item) => ({
    item: { ...item, value: { ...item.value, type } },
    event: eventOf(item, level?.kind === 'one' ? level.amount.si : undefined),
  }));
  const starts = laid.map(
    ({ item, event }) => (item.value.time[0] ?? 0) - (event ?? item.value.time[0] ?? 0),
  );
  const ends = laid.map(
    ({ item, event }) => (item.value.time.at(-1) ?? 0) - (event ?? item.value.time[0] ?? 0),
  );
  const both = { from: Math.max(...starts), to: Math.min(...ends) };
  // Where they do not overlap, all of each is shown.
  const whole = both.to > both.from ? both : { from: Math.min(...starts), to: Math.max(...ends) };
  const { from, to } = extent.window ?? whole;
  const { unit, factor } = timeUnit(whole.to - whole.from);
  const axes = [{ along: 'y' as const, type }, alongTime(factor)];
  diagnostics.push(...marksOff(marks, axes));
  const limits = marksOn(marks, axes).flat();
  const yUnit = unitWords(type);
  const drawing: Drawing = {
    kind: 'compare',
    title: laid.map(({ item }) => item.label).join(' and '),
    taken: takenOf(fitting),
    x: {
      name: laid.some(({ event }) => event !== undefined) ? 'time from the event' : 'time',
      unit,
      from: from / factor,
      to: to / factor,
    },
    frames: [
      {
        y: roundAxis(
          quantityWord(type),
          yUnit,
          extremes([
            laid.flatMap(({ item }) => [figuresOf(item.value).least, figuresOf(item.value).greatest]),
          ]) ?? [0, 1],
        ),
        height: 250,
        layers: [
          ...limits,
          { kind: 'rule', along: 'x', at: 0, says: '' },
          ...laid.map(({ item, event }, at) => ({
            kind: 'line' as const,
            tone: toneAt(at),
            of: item.label,
            ...tracePoints(
              item.value,
              { ...extent, window: { from, to } },
              factor,
              event ?? item.value.time[0] ?? 0,
              extent.window === undefined ? 0 : 1,
            ),
            says: item.label,
          })),
        ],
      },
    ],
    beneath: [],
    secondsInOne: factor,
    summary: laid.map(({ item, event }) => sentence(item, event, yUnit)),
    table: {
      ...seriesTable(
        laid.map(({ item }) => item),
        'capture',
      ),
      columns: ['least', 'greatest', 'mean', 'samples', 'event at, s'],
      rows: laid.map(({ item, event }) => {
        const { least, greatest, mean, samples } = figuresOf(item.value);
        return {
          name: item.label,
          figures: [least, greatest, mean, samples, event ?? Number.NaN].map((each) => numberFigure(each)),
          unit: yUnit,
        };
      }),
    },
  };
  return { drawing, diagnostics };
};

/** Seconds on the capture's own clock; undefined where the signal never rises through the level. */
function eventOf({ value }: Item & SeriesItem, level: number | undefined): number | undefined {
  const record = recorded(value);
  if (!isRecorded(record)) return undefined;
  const { low, high } = swingOf(record.samples);
  if (!(high > low)) return undefined;
  const at = level ?? low + (high - low) / 2;
  for (const stretch of crossingsOf(record, at, tolerance * (high - low))) {
    const [rise] = risingOf(stretch);
    if (rise !== undefined) return rise;
  }
  return undefined;
}

function sentence({ label, value }: SeriesItem, event: number | undefined, unit: string): string {
  const { least, greatest } = figuresOf(value);
  const said1 = `${label}: from ${said(least, unit)} to ${said(greatest, unit)}`;
  if (event === undefined) return `${said1}; no event to lay it by was found.`;
  const at = firstAtOrAfter(value.time, event);
  return `${said1}; laid by its first rise at ${said(Number(event.toPrecision(4)), 's')} (${said(shown(value.samples[at] ?? Number.NaN, value.type), unit)}).`;
}

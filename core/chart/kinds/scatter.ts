import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { aligned, firstAtOrAfter } from '../../expression/series.ts';
import type { Value } from '../../expression/value.ts';
import type { QuantityType } from '../../quantity/types.ts';
import { decimate } from '../../waveform/decimate.ts';
import type { Draw, Item } from '../chart.ts';
import type { ChartTable, Dot, Drawing } from '../drawing.ts';
import { marksOff, marksOn } from '../marking.ts';
import {
  extremes,
  numberFigure,
  roundAxis,
  said,
  sameScale,
  shown,
  shownWidth,
  unitWords,
} from '../measure.ts';
import { nothingToPlot } from '../nothing.ts';
import { shapeAt, toneAt } from '../palette.ts';
import { sayValue, unitOrNumber } from '../sort.ts';
import { takenOf } from '../taken.ts';

/** Of a log, so many columns of time; each keeps its extremes. */
const cloudColumns = 250;

interface Set {
  readonly item: Item;
  readonly xName: string;
  readonly xType: QuantityType;
  readonly yType: QuantityType;
  readonly dots: readonly Dot[];
  readonly cloud: boolean;
}

/** One quantity against another: samples of one capture, values by state, cylinder or label, or single values. */
export const scatter: Draw = (chart, { items, marks, listed }) => {
  const diagnostics: Diagnostic[] = [];
  const found = items.map((item) => ({ item, set: setOf(item) }));
  const [first] = found.flatMap(({ set }) => set ?? []);
  const sets: Set[] = [];
  for (const { item, set } of found) {
    const what = { kind: chart.kind, what: item.name };
    if (set === undefined) {
      if (!listed || item.value.kind === 'absent' || item.against?.value.kind === 'absent') continue;
      const takes =
        'a value `against` another of the same shape: samples of one capture, or values by the same states';
      diagnostics.push(diagnose('not-plotted', item.span, { ...what, is: sayValue(item.value), takes }));
    } else if (first !== undefined && sameScale(set.yType, first.yType) && sameScale(set.xType, first.xType))
      sets.push(set);
    else if (first !== undefined) {
      const of = ({ xType, yType }: Set): string => `${unitOrNumber(yType)} against ${unitOrNumber(xType)}`;
      diagnostics.push(diagnose('mixed-units', item.span, { ...what, is: of(set), others: of(first) }));
    }
  }
  if (first === undefined) {
    return nothingToPlot(
      chart,
      items,
      'in a `chart` cell, something to `plot` and what it stands `against`',
      diagnostics,
    );
  }
  const axes = [
    { along: 'y', type: first.yType },
    { along: 'x', type: first.xType },
  ] as const;
  diagnostics.push(...marksOff(marks, axes));
  const all = sets.flatMap(({ dots }) => dots);
  const [xUnit, yUnit] = [unitWords(first.xType), unitWords(first.yType)];
  const drawing: Drawing = {
    kind: 'scatter',
    title: `${sets.length === 1 ? first.item.label : first.yType.dimension.name} against ${first.xName}`,
    taken: takenOf(sets.map(({ item }) => item)),
    x: roundAxis(
      first.xName,
      xUnit,
      extremes([all.flatMap(({ x, plusMinusX }) => [x - plusMinusX, x + plusMinusX])]) ?? [0, 1],
    ),
    frames: [
      {
        y: roundAxis(
          sets.length === 1 ? first.item.label : '',
          yUnit,
          extremes([all.flatMap(({ y, plusMinus }) => [y - plusMinus, y + plusMinus])]) ?? [0, 1],
        ),
        height: 260,
        layers: [
          ...marksOn(marks, axes).flat(),
          ...sets.map(({ dots, cloud, item }, at) => ({
            kind: 'dots' as const,
            tone: toneAt(at),
            shape: cloud ? ('cloud' as const) : shapeAt(at),
            dots,
            says: sets.length > 1 ? item.label : '',
          })),
        ],
      },
    ],
    beneath: [],
    secondsInOne: undefined,
    summary: sets.map(({ item, dots }) => {
      const [low, high] = extremes([dots.map(({ y }) => y)]) ?? [0, 0];
      const [left, right] = extremes([dots.map(({ x }) => x)]) ?? [0, 0];
      return `${item.label}: ${dots.length} points, from ${said(low, yUnit)} to ${said(high, yUnit)}, against ${said(left, xUnit)} to ${said(right, xUnit)}.`;
    }),
    table: tableOf(sets, xUnit, yUnit),
  };
  return { drawing, diagnostics };
};

function setOf(item: Item): Set | undefined {
  const { value: y, against } = item;
  const x = against?.value;
  if (against === undefined || x === undefined || !('type' in y) || !('type' in x) || y.kind !== x.kind)
    return undefined;
  const base = { item, xName: against.label, xType: x.type, yType: y.type };
  const dots = dotsOf(y, x);
  return dots === undefined || dots.length === 0 ? undefined : { ...base, dots, cloud: y.kind === 'series' };
}

function dotsOf(y: Value, x: Value): readonly Dot[] | undefined {
  if (y.kind === 'one' && x.kind === 'one') {
    return [
      {
        x: shown(x.amount.si, x.type),
        y: shown(y.amount.si, y.type),
        plusMinus: shownWidth(y.amount, y.type),
        plusMinusX: shownWidth(x.amount, x.type),
        says: '',
      },
    ];
  }
  if (y.kind === 'members' && x.kind === 'members') {
    return [...y.members].flatMap(([name, amount]): Dot[] => {
      const other = x.members.get(name);
      if (other === undefined || !('si' in amount) || !('si' in other)) return [];
      return [
        {
          x: shown(other.si, x.type),
          y: shown(amount.si, y.type),
          plusMinus: shownWidth(amount, y.type),
          plusMinusX: shownWidth(other, x.type),
          says: name,
        },
      ];
    });
  }
  if (y.kind !== 'series' || x.kind !== 'series' || y.capture !== x.capture) return undefined;
  const [up, along] = aligned(y, x);
  const few = decimate(up.time, up.samples, cloudColumns);
  const dots: Dot[] = [];
  for (let i = 0; i < few.time.length; i++) {
    const at = few.samples[i] ?? Number.NaN;
    const beside = along.samples[firstAtOrAfter(along.time, few.time[i] ?? 0)] ?? Number.NaN;
    if (!Number.isFinite(at) || !Number.isFinite(beside)) continue;
    dots.push({ x: shown(beside, x.type), y: shown(at, y.type), plusMinus: 0, plusMinusX: 0, says: '' });
  }
  return dots;
}

function tableOf(sets: readonly Set[], xUnit: string, yUnit: string): ChartTable {
  const [first] = sets;
  if (first === undefined || first.cloud || sets.length > 1) {
    return {
      rowsAre: 'value',
      columns: ['least', 'greatest'],
      rows: sets.flatMap(({ item, xName, dots }) =>
        [
          { name: item.label, values: dots.map(({ y }) => y), unit: yUnit },
          { name: xName, values: dots.map(({ x }) => x), unit: xUnit },
        ].map(({ name, values, unit }) => ({
          name,
          figures: (extremes([values]) ?? [Number.NaN, Number.NaN]).map((each) => numberFigure(each)),
          unit,
        })),
      ),
    };
  }
  return {
    rowsAre: 'value',
    columns: first.dots.map(({ says }, at) => (says === '' ? `${at + 1}` : says)),
    rows: [
      {
        name: first.xName,
        figures: first.dots.map(({ x, plusMinusX }) => numberFigure(x, plusMinusX)),
        unit: xUnit,
      },
      {
        name: first.item.label,
        figures: first.dots.map(({ y, plusMinus }) => numberFigure(y, plusMinus)),
        unit: yUnit,
      },
    ],
  };
}

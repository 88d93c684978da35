import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import type { Curve, One } from '../../expression/value.ts';
import type { Draw, Item } from '../chart.ts';
import type { Dot, Drawing } from '../drawing.ts';
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
import { toneAt } from '../palette.ts';
import { isCurve, sayValue, unitOrNumber } from '../sort.ts';

type CurveItem = Item & { readonly value: Curve };

/** Transfer curves, straight between their points as `interpolate` takes them, and readings on them with their uncertainty. */
export const curve: Draw = (chart, { items, marks }) => {
  const diagnostics: Diagnostic[] = [];
  const curves = items.filter(isCurve);
  const [first] = curves;
  if (first === undefined) {
    return nothingToPlot(chart, items, 'a transfer curve: a list of pairs in a `reference`', []);
  }
  const { xType, yType } = first.value;
  const fitting: CurveItem[] = [];
  const readings: { readonly item: Item; readonly dot: Dot }[] = [];
  for (const item of items) {
    const { value, against } = item;
    const what = { kind: chart.kind, what: item.name };
    if (isCurve(item)) {
      if (sameScale(item.value.xType, xType) && sameScale(item.value.yType, yType)) fitting.push(item);
      else {
        const is = `${unitOrNumber(item.value.xType)} to ${unitOrNumber(item.value.yType)}`;
        const others = `${unitOrNumber(xType)} to ${unitOrNumber(yType)}`;
        diagnostics.push(diagnose('mixed-units', item.span, { ...what, is, others }));
      }
    } else if (value.kind === 'absent' || against?.value.kind === 'absent') continue;
    else if (value.kind === 'one' && against?.value.kind === 'one') {
      if (sameScale(value.type, yType) && sameScale(against.value.type, xType))
        readings.push({ item, dot: dotOf(item, value, against.value, first.value) });
      else {
        const is = `${unitOrNumber(value.type)} against ${unitOrNumber(against.value.type)}`;
        const others = `${unitOrNumber(yType)} against ${unitOrNumber(xType)}`;
        diagnostics.push(diagnose('mixed-units', item.span, { ...what, is, others }));
      }
    } else {
      const takes = 'transfer curves, and single values `against` what the curve is entered with';
      diagnostics.push(diagnose('not-plotted', item.span, { ...what, is: sayValue(value), takes }));
    }
  }
  const axes = [
    { along: 'y', type: yType },
    { along: 'x', type: xType },
  ] as const;
  diagnostics.push(...marksOff(marks, axes));
  const lines = fitting.map((item) => ({
    item,
    x: Float64Array.from(item.value.x, (at) => shown(at, xType)),
    y: Float64Array.from(item.value.y, (at) => shown(at, yType)),
  }));
  const xs = [
    ...lines.map(({ x }) => x),
    readings.flatMap(({ dot: { x, plusMinusX } }) => [x - plusMinusX, x + plusMinusX]),
  ];
  const ys = [
    ...lines.map(({ y }) => y),
    readings.flatMap(({ dot: { y, plusMinus } }) => [y - plusMinus, y + plusMinus]),
  ];
  const [xUnit, yUnit] = [unitWords(xType), unitWords(yType)];
  const drawing: Drawing = {
    kind: 'curve',
    title: `${first.label}: transfer curve`,
    taken: '',
    x: roundAxis(xType.dimension.name, xUnit, extremes(xs) ?? [0, 1]),
    frames: [
      {
        y: roundAxis(yType.dimension.name, yUnit, extremes(ys) ?? [0, 1]),
        height: 260,
        layers: [
          ...marksOn(marks, axes).flat(),
          ...lines.flatMap(({ item, x, y }, at) => [
            {
              kind: 'line' as const,
              tone: toneAt(at),
              of: item.label,
              x,
              y,
              says: lines.length > 1 ? item.label : '',
            },
            {
              kind: 'dots' as const,
              tone: toneAt(at),
              shape: 'cloud' as const,
              dots: Array.from(x, (each, place) => ({
                x: each,
                y: y[place] ?? 0,
                plusMinus: 0,
                plusMinusX: 0,
                says: '',
              })),
              says: '',
            },
          ]),
          { kind: 'dots', tone: 'second', shape: 'open', dots: readings.map(({ dot }) => dot), says: '' },
        ],
      },
    ],
    beneath: [],
    secondsInOne: undefined,
    summary: [
      ...lines.map(
        ({ item, x, y }) =>
          `${item.label}: ${x.length} points, from ${said(y[0] ?? 0, yUnit)} at ${said(x[0] ?? 0, xUnit)} to ${said(y.at(-1) ?? 0, yUnit)} at ${said(x.at(-1) ?? 0, xUnit)}.`,
      ),
      ...readings.map(
        ({ item, dot }) =>
          `${item.label}: ${said(dot.y, yUnit, dot.plusMinus)} at ${said(dot.x, xUnit, dot.plusMinusX)}.`,
      ),
    ],
    table: {
      rowsAre: `${xType.dimension.name}${xUnit === '' ? '' : `, ${xUnit}`}`,
      columns: [yType.dimension.name],
      rows: [
        ...lines.flatMap(({ x, y, item }) =>
          Array.from(x, (at, place) => ({
            name: lines.length > 1 ? `${item.label}, ${said(at, '')}` : said(at, ''),
            figures: [numberFigure(y[place] ?? Number.NaN)],
            unit: yUnit,
          })),
        ),
        ...readings.map(({ item, dot }) => ({
          name: `${item.label}, ${said(dot.x, '', dot.plusMinusX)}`,
          figures: [numberFigure(dot.y, dot.plusMinus)],
          unit: yUnit,
        })),
      ],
    },
  };
  return { drawing, diagnostics };
};

function dotOf({ label }: Item, y: One, x: One, { xType, yType }: Curve): Dot {
  return {
    x: shown(x.amount.si, xType),
    y: shown(y.amount.si, yType),
    plusMinus: shownWidth(y.amount, yType),
    plusMinusX: shownWidth(x.amount, xType),
    says: label,
  };
}

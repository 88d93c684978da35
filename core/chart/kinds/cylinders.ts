import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import type { Members } from '../../expression/value.ts';
import type { QuantityType } from '../../quantity/types.ts';
import type { Draw, Item } from '../chart.ts';
import type { Dot, Drawing } from '../drawing.ts';
import { marksOff, marksOn } from '../marking.ts';
import {
  extremes,
  numberFigure,
  quantityWord,
  roundAxis,
  said,
  sameScale,
  shown,
  shownWidth,
  unitWords,
  wordsFigure,
} from '../measure.ts';
import { nothingToPlot } from '../nothing.ts';
import { shapeAt, toneAt } from '../palette.ts';
import { isByCylinder, sayValue, unitOrNumber } from '../sort.ts';
import { takenOf } from '../taken.ts';

type ByCylinder = Item & { readonly value: Members };

/** Dots in firing order with their uncertainty: where one stands apart, its neighbours in firing order stand beside it. */
export const cylinders: Draw = (chart, { items, marks, engine, listed }) => {
  const diagnostics: Diagnostic[] = [];
  const drawn = items.filter(isByCylinder);
  const first = drawn[0];
  const type = first?.value.type;
  const fitting = drawn.filter((item) => type !== undefined && sameScale(item.value.type, type));
  if (listed) {
    for (const item of items) {
      const facts = { kind: chart.kind, what: item.name };
      if (item.value.kind === 'absent' || fitting.some((each) => each === item)) continue;
      diagnostics.push(
        isByCylinder(item) && type !== undefined
          ? diagnose('mixed-units', item.span, {
              ...facts,
              is: unitOrNumber(item.value.type),
              others: unitOrNumber(type),
            })
          : diagnose('not-plotted', item.span, {
              ...facts,
              is: sayValue(item.value),
              takes: 'values by cylinder',
            }),
      );
    }
  }
  if (first === undefined || type === undefined) {
    return nothingToPlot(chart, items, 'a value by cylinder, such as `compression`', diagnostics);
  }
  const order = orderOf(fitting, engine.firingOrder);
  const unit = unitWords(type);
  const axes = [{ along: 'y', type }] as const;
  const bands = marksOn(marks, axes).flat();
  diagnostics.push(...marksOff(marks, axes));
  const sets = fitting.map((item, at) => ({ item, dots: dotsOf(item, type, order, at, fitting.length) }));
  const ends = sets.flatMap(({ dots }) => dots.flatMap(({ y, plusMinus }) => [y - plusMinus, y + plusMinus]));
  const marked = bands.flatMap((each) =>
    each.kind === 'rule' ? [each.at] : [each.from, each.to].filter((end) => end !== undefined),
  );
  const inFiringOrder = engine.firingOrder !== undefined;
  const drawing: Drawing = {
    kind: 'cylinders',
    title: `${fitting.length === 1 ? first.label : nameOfAll(fitting)} by cylinder`,
    taken: takenOf(fitting),
    x: {
      name: inFiringOrder ? 'cylinder, in firing order' : 'cylinder, by number',
      unit: '',
      from: 0.4,
      to: order.length + 0.6,
      ticks: order.map((says, at) => ({ at: at + 1, says })),
    },
    frames: [
      {
        y: roundAxis(quantityWord(type), unit, extremes([ends, marked]) ?? [0, 1]),
        height: 220,
        layers: [
          ...bands,
          ...sets.map(({ item, dots }, at) => ({
            kind: 'dots' as const,
            tone: toneAt(at),
            shape: shapeAt(at),
            dots,
            says: fitting.length > 1 ? item.label : '',
          })),
        ],
      },
    ],
    beneath: [],
    secondsInOne: undefined,
    summary: sets.flatMap(({ item, dots }) => sentence(item, dots, order, unit)),
    table: {
      rowsAre: inFiringOrder ? 'in firing order' : 'by number',
      columns: order.map((name) => `cylinder ${name}`),
      rows: fitting.map((item) => ({
        name: item.label,
        figures: order.map((name) => {
          const amount = item.value.members.get(name);
          return amount === undefined || !('si' in amount)
            ? wordsFigure('–')
            : numberFigure(shown(amount.si, type), shownWidth(amount, type));
        }),
        unit,
      })),
    },
  };
  return { drawing, diagnostics };
};

/** The firing order where it names every cylinder that has a value, otherwise by number. */
function orderOf(items: readonly ByCylinder[], firing: readonly string[] | undefined): readonly string[] {
  const named = [...new Set(items.flatMap(({ value }) => [...value.members.keys()]))];
  if (firing !== undefined && named.every((name) => firing.includes(name))) return firing;
  return named.sort((a, b) => Number(a) - Number(b));
}

/** Several sets stand beside each other within the place of their cylinder. */
function dotsOf(
  { value }: ByCylinder,
  type: QuantityType,
  order: readonly string[],
  at: number,
  of: number,
): Dot[] {
  const aside = of === 1 ? 0 : (at - (of - 1) / 2) * (0.36 / (of - 1));
  return order.flatMap((name, place) => {
    const amount = value.members.get(name);
    if (amount === undefined || !('si' in amount)) return [];
    const y = shown(amount.si, type);
    const plusMinus = shownWidth(amount, type);
    return [
      {
        x: place + 1 + aside,
        y,
        plusMinus,
        plusMinusX: 0,
        says: said(y, '', plusMinus).split(' ±')[0] ?? '',
      },
    ];
  });
}

function nameOfAll(items: readonly ByCylinder[]): string {
  const signals = new Set(items.map(({ signal }) => signal));
  const [one = ''] = signals;
  const name = signals.size === 1 && one !== '' ? one : (items[0]?.value.type.dimension.name ?? '');
  return name === '' || name === 'plain number' ? 'Values' : name;
}

function sentence(
  { label }: ByCylinder,
  dots: readonly Dot[],
  order: readonly string[],
  unit: string,
): string[] {
  const least = dots.reduce<Dot | undefined>(
    (low, dot) => (low === undefined || dot.y < low.y ? dot : low),
    undefined,
  );
  const most = dots.reduce<Dot | undefined>(
    (high, dot) => (high === undefined || dot.y > high.y ? dot : high),
    undefined,
  );
  if (least === undefined || most === undefined) return [];
  const named = ({ x, y, plusMinus }: Dot): string =>
    `${said(y, unit, plusMinus)} in cylinder ${order[Math.round(x) - 1] ?? ''}`;
  return [`${label}: lowest ${named(least)}, highest ${named(most)}.`];
}

import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import type { Series } from '../../expression/value.ts';
import { add, exact } from '../../quantity/amount.ts';
import type { Amount, QuantityType } from '../../quantity/types.ts';
import { percentUnit } from '../../quantity/unit.ts';
import { decimate } from '../../waveform/decimate.ts';
import type { ChartData, Draw, Item } from '../chart.ts';
import type { Band, ChartTable, Dot, Drawing, Layer, Rule } from '../drawing.ts';
import { marksOff, marksOn } from '../marking.ts';
import {
  extremes,
  numberFigure,
  roundAxis,
  said,
  shown,
  shownWidth,
  unitWords,
  wordsFigure,
} from '../measure.ts';
import { nothingToPlot } from '../nothing.ts';
import { toneAt } from '../palette.ts';
import { isSeries, sayValue } from '../sort.ts';

const needs =
  'a short-term and a long-term trim (`stft_b1`, `ltft_b1`) in the same state or log, with the air flow (`maf`)';

/** The total trim of each bank against what the engine takes in; states are joined, a log is a cloud. */
export const trims: Draw = (chart, data) => {
  const { items } = data;
  const along = alongAxis(data);
  const found = along === undefined ? [] : banksOf(data, along.wanted);
  const diagnostics: Diagnostic[] = data.listed ? unfit(data) : [];
  const banks = found.filter(({ points }) => points.length > 0);
  const first = banks[0];
  if (along === undefined || first === undefined) {
    return nothingToPlot(chart, items, needs, diagnostics);
  }
  const trimType = first.type;
  const axes = [
    { along: 'y', type: trimType },
    { along: 'x', type: along.type },
  ] as const;
  const marks = marksOn(data.marks, axes).flat();
  diagnostics.push(...marksOff(data.marks, axes));
  const bands: readonly (Band | Rule)[] = marks.some((each) => each.along === 'y')
    ? marks
    : [...marks, usual(trimType)];
  const all = banks.flatMap(({ points }) => points);
  const unit = unitWords(along.type);
  const drawing: Drawing = {
    kind: 'trims',
    title: `Total fuel trim against ${along.name}`,
    taken: takenIn(data),
    x: roundAxis(along.name, unit, [0, Math.max(...all.map(({ x, plusMinusX }) => x + plusMinusX))]),
    frames: [
      {
        y: roundAxis(
          'total trim',
          unitWords(trimType),
          extremes([
            all.flatMap(({ y, plusMinus }) => [y - plusMinus, y + plusMinus]),
            [0],
            bands.flatMap((each) => endsOf(each)),
          ]) ?? [0, 1],
        ),
        height: 250,
        layers: [
          ...bands,
          { kind: 'rule', along: 'y', at: 0, says: '' },
          ...banks.flatMap((bank, at) => layersOf(bank, banks, at)),
        ],
      },
    ],
    beneath: [],
    secondsInOne: undefined,
    summary: banks.map((bank) => sentence(bank, unitWords(trimType), unit)),
    table: tableOf(banks, along.name, unitWords(trimType), unit),
  };
  return { drawing, diagnostics };
};

/** Common practice: total trims within ten percent are usual. */
function usual({ unit }: QuantityType): Band {
  const ten = 0.1 / unit.factor;
  return { kind: 'band', along: 'y', from: -ten, to: ten, says: 'usual: -10 .. 10 % (common practice)' };
}

const endsOf = (mark: Band | Rule): number[] =>
  mark.along === 'x'
    ? []
    : mark.kind === 'rule'
      ? [mark.at]
      : [mark.from, mark.to].filter((each) => each !== undefined);

interface Bank {
  readonly says: string;
  readonly type: QuantityType;
  readonly points: readonly Dot[];
  /** True for the samples of a log. */
  readonly cloud: boolean;
}

interface Along {
  readonly name: string;
  readonly type: QuantityType;
  readonly wanted: (item: Item) => boolean;
}

/** Against air flow; where it was not taken, against what stands for it. */
function alongAxis({ items }: ChartData): Along | undefined {
  const names = [
    ['maf', 'air flow'],
    ['load', 'calculated load'],
    ['map', 'manifold pressure'],
    ['rpm', 'engine speed'],
  ] as const;
  const against = items.find(({ against }) => against !== undefined && 'type' in against.value)?.against;
  if (against !== undefined && 'type' in against.value) {
    const known = names.find(([signal]) => against.name.split('.').at(-1) === signal);
    return { name: known?.[1] ?? against.name, type: against.value.type, wanted: () => false };
  }
  for (const [signal, name] of names) {
    const wanted = (item: Item): boolean => item.signal === signal && 'type' in item.value;
    const item = items.find(wanted);
    if (item === undefined || !('type' in item.value)) continue;
    // Air flow in volts or hertz has its order, but not its scale.
    if (signal === 'maf' && item.value.type.dimension.name !== 'mass flow') continue;
    return { name, type: item.value.type, wanted };
  }
  return undefined;
}

function banksOf(data: ChartData, isAlong: (item: Item) => boolean): Bank[] {
  if (data.listed) return data.items.flatMap(listedBank);
  const series = seriesBanks(data, isAlong);
  return series.length > 0 ? series : stateBanks(data, isAlong);
}

/** `plot: total_trim(…)` with `against`. */
function listedBank({ value, against, label }: Item): Bank[] {
  const beside = against?.value;
  if (beside === undefined) return [];
  if (value.kind === 'series' && beside.kind === 'series') return [cloudOf(label, value, beside)];
  if (value.kind === 'one' && beside.kind === 'one') {
    return [
      {
        says: label,
        type: value.type,
        cloud: false,
        points: [dotOf(value.amount, value.type, beside.amount, beside.type, '')],
      },
    ];
  }
  if (value.kind !== 'members' || beside.kind !== 'members') return [];
  const points = [...value.members].flatMap(([name, amount]) => {
    const x = beside.members.get(name);
    return x !== undefined && 'si' in x && 'si' in amount
      ? [dotOf(amount, value.type, x, beside.type, name)]
      : [];
  });
  return [{ says: label, type: value.type, cloud: false, points: inOrder(points) }];
}

const bankNumbers = ['1', '2'] as const;

function stateBanks({ items }: ChartData, isAlong: (item: Item) => boolean): Bank[] {
  return bankNumbers.flatMap((number): Bank[] => {
    const short = items.filter(({ signal }) => signal === `stft_b${number}`);
    const long = items.filter(({ signal }) => signal === `ltft_b${number}`);
    let type: QuantityType | undefined;
    const points = long.flatMap((item): Dot[] => {
      const same = (other: Item): boolean => other.column === item.column && other.state === item.state;
      const added = short.find(same)?.value;
      const x = items.find((other) => isAlong(other) && same(other))?.value;
      if (item.value.kind !== 'one' || added?.kind !== 'one' || x?.kind !== 'one') return [];
      type ??= item.value.type;
      const total = add(item.value.amount, added.amount);
      return [dotOf(total, item.value.type, x.amount, x.type, item.column ?? item.state ?? '')];
    });
    return type === undefined
      ? []
      : [{ says: `bank ${number}`, type, cloud: false, points: inOrder(points) }];
  });
}

function seriesBanks({ items }: ChartData, isAlong: (item: Item) => boolean): Bank[] {
  const x = items.find((item) => isAlong(item) && isSeries(item))?.value;
  if (x?.kind !== 'series') return [];
  return bankNumbers.flatMap((number): Bank[] => {
    const of = (signal: string): Series | undefined =>
      items.filter(isSeries).find((item) => item.signal === signal)?.value;
    const short = of(`stft_b${number}`);
    const long = of(`ltft_b${number}`);
    if (short === undefined || long === undefined || short.samples.length !== long.samples.length) return [];
    const samples = long.samples.map((sample, at) => sample + (short.samples[at] ?? Number.NaN));
    return [cloudOf(`bank ${number}`, { ...long, samples }, x)];
  });
}

/** So many columns of time; each keeps its extremes. */
const cloudColumns = 100;

function cloudOf(says: string, total: Series, along: Series): Bank {
  const kept = decimate(total.time, total.samples, cloudColumns);
  const points: Dot[] = [];
  let at = 0;
  for (let i = 0; i < kept.time.length; i++) {
    const moment = kept.time[i] ?? Number.NaN;
    while (at < along.time.length && (along.time[at] ?? 0) < moment) at++;
    const x = along.time[at] === moment ? (along.samples[at] ?? Number.NaN) : Number.NaN;
    const y = kept.samples[i] ?? Number.NaN;
    if (Number.isFinite(x) && Number.isFinite(y))
      points.push(dotOf(exact(y), total.type, exact(x), along.type, ''));
  }
  return { says, type: total.type, cloud: true, points };
}

function dotOf(y: Amount, yType: QuantityType, x: Amount, xType: QuantityType, says: string): Dot {
  return {
    x: shown(x.si, xType),
    y: shown(y.si, yType),
    plusMinus: shownWidth(y, yType),
    plusMinusX: shownWidth(x, xType),
    says,
  };
}

const inOrder = (points: readonly Dot[]): Dot[] => points.toSorted((a, b) => a.x - b.x);

/** Where both banks stand at one air flow, the state's name stands at the higher of them only. */
function layersOf(bank: Bank, banks: readonly Bank[], at: number): Layer[] {
  const { cloud, points } = bank;
  const tone = toneAt(at);
  const says = banks.length > 1 ? bank.says : '';
  if (cloud) return [{ kind: 'dots', tone, shape: 'cloud', dots: points, says }];
  const others = banks.filter((other) => other !== bank);
  const dots = points.map((dot) => {
    const twin = others
      .flatMap((other) => other.points)
      .find((other) => other.x === dot.x && other.says === dot.says);
    const higher = twin === undefined || dot.y > twin.y || (dot.y === twin.y && at === 0);
    return higher ? dot : { ...dot, says: '' };
  });
  return [
    {
      kind: 'line',
      tone,
      of: `total trim, ${bank.says}`,
      x: Float64Array.from(points, ({ x }) => x),
      y: Float64Array.from(points, ({ y }) => y),
      says,
    },
    { kind: 'dots', tone, shape: at === 0 ? 'filled' : 'open', dots, says: '' },
  ];
}

function takenIn({ items }: ChartData): string {
  const whens = new Set(items.flatMap(({ when }) => when ?? []));
  const states = new Set(items.flatMap(({ column, state }) => (column === undefined ? (state ?? []) : [])));
  return [...(states.size === 1 ? states : []), ...(whens.size === 1 ? whens : [])].join(', ');
}

function sentence({ says, points, cloud }: Bank, unit: string, xUnit: string): string {
  const name = `${says.slice(0, 1).toUpperCase()}${says.slice(1)}`;
  if (cloud) {
    const [low, high] = extremes([points.map(({ y }) => y)]) ?? [0, 0];
    return `${name}: ${points.length} points, from ${said(low, unit)} to ${said(high, unit)}.`;
  }
  const each = points.map(
    (dot) =>
      `${said(dot.y, unit, dot.plusMinus)} at ${said(dot.x, xUnit)}${dot.says === '' ? '' : ` (${dot.says})`}`,
  );
  return `${name}: ${each.join(', ')}.`;
}

function tableOf(banks: readonly Bank[], along: string, unit: string, xUnit: string): ChartTable {
  const [first] = banks;
  if (first === undefined || first.cloud) {
    return {
      rowsAre: 'bank',
      columns: ['least', 'greatest'],
      rows: banks.map(({ says, points }) => {
        const [low, high] = extremes([points.map(({ y }) => y)]) ?? [Number.NaN, Number.NaN];
        return { name: says, figures: [numberFigure(low), numberFigure(high)], unit };
      }),
    };
  }
  const longest = banks.reduce((a, b) => (b.points.length > a.points.length ? b : a), first);
  return {
    rowsAre: 'value',
    columns: longest.points.map(({ says }, at) => (says === '' ? `${at + 1}` : says)),
    rows: [
      {
        name: along,
        figures: longest.points.map(({ x, plusMinusX }) => numberFigure(x, plusMinusX)),
        unit: xUnit,
      },
      ...banks.map(({ says, points }) => ({
        name: `total trim, ${says}`,
        figures: longest.points.map(({ x, says: state }) => {
          const dot = points.find((each) => each.x === x && each.says === state);
          return dot === undefined ? wordsFigure('–') : numberFigure(dot.y, dot.plusMinus);
        }),
        unit,
      })),
    ],
  };
}

function unfit({ items }: ChartData): Diagnostic[] {
  return items.flatMap(({ name, value, against, span }) => {
    const fits =
      'type' in value &&
      value.type.unit === percentUnit &&
      value.kind !== 'range' &&
      against !== undefined &&
      against.value.kind === value.kind;
    if (fits || value.kind === 'absent' || against?.value.kind === 'absent') return [];
    const takes = 'a trim in percent `against` the air flow of the same states or the same log';
    return [diagnose('not-plotted', span, { kind: 'trims', what: name, is: sayValue(value), takes })];
  });
}

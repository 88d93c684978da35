import type { Cell, ChartCell } from '../casefile/cell.ts';
import { type ChartKind, isChartKind } from '../casefile/kinds/chartKinds.ts';
import type { Computed, Plotted, Reading, Study } from '../study/types.ts';
import type { Span } from '../text/span.ts';
import type { Chart, ChartData, Engine, Item, Mark } from './chart.ts';

/** A chart that a cell asks for, with the values that it draws. */
export interface Asked {
  readonly chart: Chart;
  readonly data: ChartData;
}

/** A chart without `kind` whose values do not show how they are drawn. */
export interface Unclear {
  readonly unclear: Span;
}

/** What chart a cell asks for; undefined for a cell without one. */
export function chartOf(study: Study, index: number): Asked | Unclear | undefined {
  const cell = study.file.cells[index]?.cell;
  if (cell === undefined) return undefined;
  if (cell.kind === 'chart') return ownChart(study, index, cell);
  const asked = 'chart' in cell ? cell.chart : undefined;
  if (asked === undefined || !isChartKind(asked.text)) return undefined;
  const { items, marks } = plottedIn(study, index);
  const own = [
    ...(study.memo.names.cells[index]?.readings ?? []).map((each) => ofReading(study, each)),
    ...(study.memo.outcomes[index]?.computed ?? []).map((each) => ofComputed(each)),
  ];
  return {
    chart: { kind: asked.text, span: asked.span },
    data: { items: items.length > 0 ? items : own, marks, engine: engineOf(study), listed: false },
  };
}

/** What the cell lists to be drawn and marked, or what its chart stands for. */
function plottedIn(study: Study, index: number): Pick<ChartData, 'items' | 'marks'> {
  const plotted = study.memo.outcomes[index]?.plotted ?? [];
  return {
    items: plotted.filter(({ role }) => role === 'plot').map((each) => ofPlotted(study, each)),
    marks: plotted
      .filter(({ role }) => role === 'mark')
      .map(({ text, label, value, from, span }): Mark => ({ text, label, value, from, span })),
  };
}

function ownChart(study: Study, index: number, cell: ChartCell): Asked | Unclear | undefined {
  const { items, marks } = plottedIn(study, index);
  const written = cell.chartKind;
  const name = written?.text;
  if (name !== undefined && !isChartKind(name)) return undefined;
  const kind = name ?? kindFrom(items);
  if (kind === undefined) return { unclear: cell.title.span };
  return {
    chart: { kind, span: written?.span ?? cell.title.span },
    data: { items, marks, engine: engineOf(study), listed: true },
  };
}

/** How values are drawn whose author does not say it. */
function kindFrom(items: readonly Item[]): ChartKind | undefined {
  const values = items.map(({ value }) => value);
  if (values.some(({ kind }) => kind === 'curve')) return 'curve';
  if (items.some(({ against }) => against !== undefined)) return 'scatter';
  if (values.some(({ kind }) => kind === 'series')) return 'trace';
  return values.some((value) => value.kind === 'members' && value.by === 'cylinder')
    ? 'cylinders'
    : undefined;
}

function ofReading(study: Study, reading: Reading): Item {
  const { fullName, key, column, state, value, keySpan, signal } = reading;
  return {
    name: fullName,
    label: shortMeaning(signal?.meaning) ?? key,
    signal: signal?.name ?? key,
    column,
    state: state?.name,
    when: whenOf(study, reading),
    value,
    against: undefined,
    from: [fullName],
    span: keySpan,
  };
}

/** "Cranking compression, throttle open, the highest reading" is too long for a margin; "Short-term fuel trim, bank 1" is not. */
function shortMeaning(meaning: string | undefined): string | undefined {
  return meaning === undefined || meaning.length <= longestLabel ? meaning : meaning.split(', ')[0];
}

const longestLabel = 34;

/** As the author wrote it: what was found without a word of when is not called "before". */
function whenOf(study: Study, { cell, when }: Reading): Item['when'] {
  const holder: Cell | undefined = study.file.cells[cell]?.cell;
  return holder !== undefined && 'when' in holder && holder.when !== undefined ? when : undefined;
}

function ofComputed({ fullName, name, value, from, keySpan }: Computed): Item {
  return {
    name: fullName,
    label: name,
    signal: name,
    column: undefined,
    state: undefined,
    when: undefined,
    value,
    against: undefined,
    from,
    span: keySpan,
  };
}

function ofPlotted(study: Study, { text, label, value, against, span, from }: Plotted): Item {
  const readings = from.flatMap((name) => study.memo.reading(name) ?? []);
  const [only] = readings;
  const bare = study.memo.reading(text);
  const meaningOf = (name: string): string | undefined =>
    shortMeaning(study.memo.reading(name)?.signal?.meaning);
  const same = <T>(of: (reading: Reading) => T): T | undefined =>
    only !== undefined && readings.every((each) => of(each) === of(only)) ? of(only) : undefined;
  return {
    name: text,
    label: label ?? meaningOf(text) ?? text,
    signal: bare?.signal?.name ?? '',
    column: undefined,
    state: same((each) => each.state?.name),
    when: same((each) => whenOf(study, each)),
    value,
    against:
      against === undefined
        ? undefined
        : { name: against.text, label: meaningOf(against.text) ?? against.text, value: against.value },
    from,
    span,
  };
}

function engineOf({ memo }: Study): Engine {
  const order = memo.header.header.values.get('engine.firing_order')?.value;
  const named =
    order?.kind === 'words' ? order.text.split(/\s*[-–,]\s*|\s+/).filter((each) => each !== '') : [];
  return { firingOrder: named.length > 1 ? named : undefined };
}

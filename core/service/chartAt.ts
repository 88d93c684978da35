import { isChartKind } from '../casefile/kinds/chartKinds.ts';
import type { Item } from '../chart/chart.ts';
import { chartOf } from '../chart/chartOf.ts';
import { draw } from '../chart/draw.ts';
import type { Drawing } from '../chart/drawing.ts';
import { titleOf } from '../chart/layout.ts';
import type { ChartSpec } from '../chart/spec.ts';
import { vegaLiteOf } from '../chart/vegaLite.ts';
import type { Named } from '../study/names.ts';
import type { Reading, Study } from '../study/types.ts';
import type { Span } from '../text/span.ts';
import { type Occurrence, occurrenceAt } from './occurrences.ts';
import { type Spot, spotAt } from './spots.ts';
import { type Standing, standingOf } from './standing.ts';

/** A chart that is shown where one points. */
export interface ChartAt {
  readonly span: Span;
  readonly title: string;
  readonly spec: ChartSpec;
}

/** Pixels: as wide as a hover is, and so many columns of points as it shows. */
const width = 480;
const columns = 240;

/** The chart that the cell asks for, at the words that ask for it; the trace of a channel, at its name. */
export function chartAt(study: Study, cell: number, offset: number): ChartAt | undefined {
  const standing = standingOf(study, cell);
  const spot = standing === undefined ? undefined : spotAt(standing, offset);
  if (standing === undefined || spot === undefined) return undefined;
  if (asksForChart(spot)) {
    const asked = chartOf(study, cell);
    if (asked === undefined || 'unclear' in asked) return undefined;
    return shown(draw(asked.chart, asked.data, { columns }).drawing, spot.node.span);
  }
  const at = occurrenceAt(standing, offset);
  const item = at === undefined ? undefined : sampled(standing, spot, at);
  if (at === undefined || item === undefined) return undefined;
  const data = { items: [item], marks: [], engine: { firingOrder: undefined }, listed: true };
  return shown(draw({ kind: 'trace', span: at.span }, data, { columns }).drawing, at.span);
}

function shown(drawing: Drawing | undefined, span: Span): ChartAt | undefined {
  if (drawing === undefined) return undefined;
  const small = { ...drawing, width };
  return { span, title: titleOf(small), spec: vegaLiteOf(small) };
}

function asksForChart({ role, node, under, path }: Spot): boolean {
  if (role === 'kind') return node.text === 'chart';
  if (role === 'key')
    return path.length === 2 && (node.text === 'chart' || (path[0] === 'chart' && node.text === 'kind'));
  return role === 'word' && isChartKind(node.text) && (under?.text === 'chart' || under?.text === 'kind');
}

/** What is sampled over time under a name. */
function sampled(standing: Standing, { role, node }: Spot, at: Occurrence): Item | undefined {
  if (at.named !== undefined) return ofName(standing, at.named, at);
  if (role !== 'channel') return undefined;
  const reading = standing.facts?.readings.find(({ key }) => key === node.text);
  return reading === undefined ? undefined : ofReading(reading, at);
}

function ofName({ study }: Standing, named: Named, at: Occurrence): Item | undefined {
  if (named.kind === 'reading') return ofReading(named.reading, at);
  if (named.kind !== 'definition') return undefined;
  const value = study.memo.done.get(named.definition.id)?.value;
  if (value?.kind !== 'series') return undefined;
  return { ...plain, name: at.written, label: named.definition.name, value, span: at.span };
}

function ofReading({ value, fullName, key, signal, state }: Reading, at: Occurrence): Item | undefined {
  if (value.kind !== 'series') return undefined;
  const label = signal?.meaning.split(', ')[0] ?? key;
  return { ...plain, name: fullName, label, state: state?.name, value, span: at.span };
}

const plain = {
  signal: '',
  column: undefined,
  state: undefined,
  when: undefined,
  against: undefined,
  from: [],
} as const;

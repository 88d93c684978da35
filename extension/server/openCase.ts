import { separatorStart } from '../../core/casefile/stream.ts';
import type { Finding, Study } from '../../core/study/types.ts';
import type { Span } from '../../core/text/span.ts';
import type { Lines, Point, Stretch, View } from './view.ts';
import type { Viewed } from './written.ts';

/** A case that is open in the editor, studied as it stands at one version. Its views are in the order of the file. */
export interface OpenCase extends Viewed {
  /** The notebook's uri, or that of the file opened as text. */
  readonly uri: string;
  readonly isNotebook: boolean;
  readonly version: number;
  readonly study: Study;
  /** Where in the file the stretch of each view starts. */
  readonly starts: readonly number[];
}

/** Where a question was asked: a cell of the study, and the offset in its text. */
export interface Spot {
  readonly cell: number;
  readonly offset: number;
}

/** A stretch of one of the documents. */
export interface Place extends Stretch {
  readonly view: View;
}

/** Where in the file a view's stretch starts. */
export function startOf({ starts }: OpenCase, view: View): number {
  return starts[view.index] ?? 0;
}

/** The cell and the offset at a point of a document; nothing outside every cell's text, as on a `---` line. */
export function spotAt(open: OpenCase, view: View, point: Point): Spot | undefined {
  const inFile = startOf(open, view) + view.lines.offsetAt(point);
  const { cells, stream } = open.study.file;
  for (let cell = view.pastCell - 1; cell >= view.firstCell; cell--) {
    const raw = cells[cell]?.raw;
    if (raw === undefined || separatorStart(stream, cell) > inFile) continue;
    const offset = inFile - (stream.starts[cell] ?? 0);
    return offset < 0 || offset > raw.text.length ? undefined : { cell, offset };
  }
  return undefined;
}

/** The parts of a document's stretch that lie in cells, cell by cell. */
export function spansWithin(
  open: OpenCase,
  view: View,
  { start, end }: Stretch,
): readonly { readonly cell: number; readonly span: Span }[] {
  const { cells, stream } = open.study.file;
  const from = startOf(open, view) + view.lines.offsetAt(start);
  const to = startOf(open, view) + view.lines.offsetAt(end);
  const found: { cell: number; span: Span }[] = [];
  for (let cell = view.firstCell; cell < view.pastCell; cell++) {
    const length = cells[cell]?.raw.text.length;
    const at = stream.starts[cell] ?? 0;
    if (length === undefined || at > to || at + length < from) continue;
    found.push({ cell, span: { start: Math.max(0, from - at), end: Math.min(length, to - at) } });
  }
  return found;
}

/** Where a span of a cell stands in the editor; nothing for a cell that is not shown. */
export function placeOf(open: OpenCase, cell: number, span: Span): Place | undefined {
  const view = open.views.find((each) => each.firstCell <= cell && cell < each.pastCell);
  return view === undefined ? undefined : placeInView(open, view, cell, span);
}

/** The same in one view; nothing for a cell that another one shows. */
export function placeInView(open: OpenCase, view: View, cell: number, span: Span): Place | undefined {
  const { cells, stream } = open.study.file;
  if (cells[cell] === undefined || cell < view.firstCell || cell >= view.pastCell) return undefined;
  return placeIn(view, (stream.starts[cell] ?? 0) - startOf(open, view), span);
}

/** Where a stretch of the file stands in one view: what the view does not show is at its nearest end. */
export function placeOfFile(open: OpenCase, view: View, span: Span): Place {
  return placeIn(view, -startOf(open, view), span);
}

/** Whether a stretch of the file stands in one document, so that it can be edited there. */
export function isShown(open: OpenCase, view: View, span: Span): boolean {
  const start = startOf(open, view);
  return start <= span.start && span.end <= start + view.length;
}

/** `base` is where the span counts from, in the view. */
function placeIn(view: View, base: number, { start, end }: Span): Place {
  const from = view.lines.pointAt(Math.max(0, start + base));
  return { view, start: from, end: end === start ? from : view.lines.pointAt(Math.max(0, end + base)) };
}

/** What each view of a case shows. */
export interface Found {
  readonly of: OpenCase;
  readonly byView: readonly (readonly PlacedFinding[])[];
}

/**
 * The findings that each view shows, in the views' order. Those about the file as a whole are placed in the view that shows
 * their end, or the next one. A list is the same as before as long as its cell's findings and lines are.
 */
export function findingsByView(open: OpenCase, before?: Found): readonly (readonly PlacedFinding[])[] {
  const { views, study } = open;
  const found = inCells(open, before?.of.study.fileFindings.length === 0 ? before : undefined);
  if (study.fileFindings.length === 0) return found;
  const all = [...found];
  for (const finding of study.fileFindings) {
    const { span } = finding.diagnostic;
    const view = views.find((each) => span.end <= startOf(open, each) + each.length) ?? views.at(-1);
    if (view === undefined) continue;
    all[view.index] = [...(all[view.index] ?? []), { finding, place: placeOfFile(open, view, span) }];
  }
  return all;
}

/** Where each view shows one cell, those of which neither the view nor the findings are others stay as they are. */
function inCells(open: OpenCase, before: Found | undefined): Found['byView'] {
  const { views, study } = open;
  const isKnown = open.isOneToOne && before?.of.isOneToOne && before.of.views.length === views.length;
  if (!isKnown) return views.map((view) => placedFindings(open, view));
  let all: (readonly PlacedFinding[])[] | undefined;
  const { views: oldViews, study: old } = before.of;
  for (let at = 0; at < views.length; at++) {
    const view = views[at];
    if (view === undefined) continue;
    if (view === oldViews[at] && study.cellFindings[at] === old.cellFindings[at]) continue;
    all ??= [...before.byView];
    all[at] = placedFindings(open, view);
  }
  return all ?? before.byView;
}

const none: readonly PlacedFinding[] = [];

/** What was placed of a cell's findings, and by which lines. */
const known = new WeakMap<
  readonly Finding[],
  { readonly of: Lines; readonly placed: readonly PlacedFinding[] }
>();

function placedFindings(open: OpenCase, view: View): readonly PlacedFinding[] {
  const { firstCell, pastCell, lines } = view;
  if (pastCell - firstCell !== 1) {
    const cells = Array.from({ length: pastCell - firstCell }, (_, index) => firstCell + index);
    return cells.flatMap((cell) => placed(open, view, cell));
  }
  const findings = open.study.cellFindings[firstCell] ?? [];
  if (findings.length === 0) return none;
  const before = known.get(findings);
  if (before?.of === lines) return before.placed;
  const now = placed(open, view, firstCell);
  known.set(findings, { of: lines, placed: now });
  return now;
}

function placed(open: OpenCase, view: View, cell: number): readonly PlacedFinding[] {
  return (open.study.cellFindings[cell] ?? []).flatMap((finding) => {
    const place = placeInView(open, view, cell, finding.diagnostic.span);
    return place === undefined ? [] : { finding, place };
  });
}

export interface PlacedFinding {
  readonly finding: Finding;
  readonly place: Place;
}

import type { Finding, Study } from '../../core/study/types.ts';
import type { Span } from '../../core/text/span.ts';
import type { Lines, Point, Stretch, View } from './view.ts';

/** A case that is open in the editor, studied as it stands at one version. */
export interface OpenCase {
  /** The notebook's uri, or that of the file opened as text. */
  readonly uri: string;
  readonly isNotebook: boolean;
  readonly version: number;
  readonly study: Study;
  /** In the order of the file. */
  readonly views: readonly View[];
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

/** The cell and the offset at a point of a document; nothing outside every cell's text, as on a `---` line. */
export function spotAt({ study }: OpenCase, view: View, point: Point): Spot | undefined {
  const inFile = view.start + view.lines.offsetAt(point);
  const { cells } = study.file;
  for (let cell = view.pastCell - 1; cell >= view.firstCell; cell--) {
    const raw = cells[cell]?.raw;
    if (raw === undefined || raw.separatorStart > inFile) continue;
    const offset = inFile - raw.start;
    return offset < 0 || offset > raw.text.length ? undefined : { cell, offset };
  }
  return undefined;
}

/** The parts of a document's stretch that lie in cells, cell by cell. */
export function spansWithin(
  { study }: OpenCase,
  view: View,
  { start, end }: Stretch,
): readonly { readonly cell: number; readonly span: Span }[] {
  const from = view.start + view.lines.offsetAt(start);
  const to = view.start + view.lines.offsetAt(end);
  const found: { cell: number; span: Span }[] = [];
  for (let cell = view.firstCell; cell < view.pastCell; cell++) {
    const raw = study.file.cells[cell]?.raw;
    if (raw === undefined || raw.start > to || raw.start + raw.text.length < from) continue;
    const span = {
      start: Math.max(0, from - raw.start),
      end: Math.min(raw.text.length, to - raw.start),
    };
    found.push({ cell, span });
  }
  return found;
}

/** Where a span of a cell stands in the editor; nothing for a cell that is not shown. */
export function placeOf({ study, views }: OpenCase, cell: number, span: Span): Place | undefined {
  const raw = study.file.cells[cell]?.raw;
  const view = views.find((each) => each.firstCell <= cell && cell < each.pastCell);
  return raw === undefined || view === undefined ? undefined : placeIn(view, raw.start, span);
}

/** Where a stretch of the file stands in the editor: what no document shows is at the nearest place below it. */
function placeInFile({ views }: OpenCase, span: Span): Place | undefined {
  const view = views.find((each) => span.end <= each.end) ?? views.at(-1);
  return view === undefined ? undefined : placeIn(view, 0, span);
}

/** Whether a stretch of the file stands in one document, so that it can be edited there. */
export function isShown(view: View, span: Span): boolean {
  return view.start <= span.start && span.end <= view.end;
}

export function placeIn(view: View, base: number, { start, end }: Span): Place {
  const by = base - view.start;
  const from = view.lines.pointAt(Math.max(0, start + by));
  return { view, start: from, end: end === start ? from : view.lines.pointAt(Math.max(0, end + by)) };
}

/**
 * The findings that each view shows, in the views' order. Those about the file as a whole are placed with `placeInFile`.
 * A list is the same as before as long as its cell's findings and lines are.
 */
export function findingsByView(open: OpenCase): readonly (readonly PlacedFinding[])[] {
  const { study, views } = open;
  const found = views.map((view) => placedFindings(study, view));
  for (const finding of study.fileFindings) {
    const place = placeInFile(open, finding.diagnostic.span);
    const at = place === undefined ? -1 : views.indexOf(place.view);
    if (place !== undefined && at >= 0) found[at] = [...(found[at] ?? []), { finding, place }];
  }
  return found;
}

const none: readonly PlacedFinding[] = [];

/** What was placed of a cell's findings, and by which lines. */
const known = new WeakMap<
  readonly Finding[],
  { readonly of: Lines; readonly placed: readonly PlacedFinding[] }
>();

function placedFindings({ cellFindings, file }: Study, view: View): readonly PlacedFinding[] {
  const { firstCell, pastCell, lines } = view;
  if (pastCell - firstCell !== 1) {
    const cells = Array.from({ length: pastCell - firstCell }, (_, index) => firstCell + index);
    return cells.flatMap((cell) => placed(cell, view));
  }
  const findings = cellFindings[firstCell] ?? [];
  if (findings.length === 0) return none;
  const before = known.get(findings);
  if (before?.of === lines) return before.placed;
  const now = placed(firstCell, view);
  known.set(findings, { of: lines, placed: now });
  return now;

  function placed(cell: number, view: View): readonly PlacedFinding[] {
    const raw = file.cells[cell]?.raw;
    if (raw === undefined) return none;
    return (cellFindings[cell] ?? []).map((finding) => ({
      finding,
      place: placeIn(view, raw.start, finding.diagnostic.span),
    }));
  }
}

export interface PlacedFinding {
  readonly finding: Finding;
  readonly place: Place;
}

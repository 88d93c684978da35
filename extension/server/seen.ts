import { diagnose } from '../../core/diagnostics/diagnostic.ts';
import { withFindings } from '../../core/study/studyOf.ts';
import type { Finding, Study } from '../../core/study/types.ts';
import type { OpenCase } from './openCase.ts';
import { type ServerSettings, severityOf } from './settings.ts';
import type { View } from './view.ts';
import { viewsOf, type Written } from './written.ts';

/** A study as the editor is to see it: in its documents, with the severities that were chosen. */
export function seenCase(
  document: { readonly uri: string; readonly version: number; readonly kind: 'notebook' | 'text' },
  written: Written,
  study: Study,
  { severity }: ServerSettings,
  before: readonly View[],
): OpenCase {
  const views = viewsOf(written, study, before);
  const isNotebook = document.kind === 'notebook';
  const inside = isNotebook ? separatorsInside(study, views) : [];
  const { uri, version } = document;
  return { uri, isNotebook, version, study: seenStudy(study, inside, severity), views };
}

/** The file and everything computed stay as they are. */
function seenStudy(study: Study, more: readonly Finding[], severity: ServerSettings['severity']): Study {
  const isPlain = Object.keys(severity).length === 0;
  if (isPlain && more.length === 0) return study;
  const fileFindings = [...study.fileFindings, ...more];
  if (isPlain) return withFindings(study, fileFindings, study.cellFindings);
  const chosen = (list: readonly Finding[]) => list.flatMap((each) => severityOf(each, severity));
  return withFindings(study, chosen(fileFindings), study.cellFindings.map(chosen));
}

/** The `---` lines that stand inside a notebook's cell. */
function separatorsInside({ file }: Study, views: readonly View[]): Finding[] {
  const found: Finding[] = [];
  for (const { firstCell, pastCell } of views) {
    for (let cell = firstCell + 1; cell < pastCell; cell++) {
      const raw = file.cells[cell]?.raw;
      if (raw === undefined) continue;
      const span = { start: raw.separatorStart, end: raw.separatorStart + 3 };
      found.push({ cell: undefined, diagnostic: diagnose('separator-in-cell', span, {}) });
    }
  }
  return found;
}

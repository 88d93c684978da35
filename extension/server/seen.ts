import { separatorStart } from '../../core/casefile/stream.ts';
import { diagnose } from '../../core/diagnostics/diagnostic.ts';
import { withFindings } from '../../core/study/studyOf.ts';
import type { Finding, Study } from '../../core/study/types.ts';
import type { OpenCase } from './openCase.ts';
import { type ServerSettings, severityOf } from './settings.ts';
import { type Viewed, viewsOf, type Written } from './written.ts';

/** A study as the editor is to see it: in its documents, with the severities that were chosen. */
export function seenCase(
  document: { readonly uri: string; readonly version: number; readonly kind: 'notebook' | 'text' },
  written: Written,
  study: Study,
  { severity }: ServerSettings,
  before?: Viewed,
): OpenCase {
  const viewed = viewsOf(written, study, before);
  const isNotebook = document.kind === 'notebook';
  const inside = isNotebook && !viewed.isOneToOne ? separatorsInside(study, viewed) : [];
  const { uri, version } = document;
  const { starts } = written;
  return { uri, isNotebook, version, study: seenStudy(study, inside, severity), starts, ...viewed };
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
function separatorsInside({ file }: Study, { views }: Viewed): Finding[] {
  const found: Finding[] = [];
  for (const { firstCell, pastCell } of views) {
    for (let cell = firstCell + 1; cell < pastCell; cell++) {
      if (file.cells[cell] === undefined) continue;
      const start = separatorStart(file.stream, cell);
      const span = { start, end: start + 3 };
      found.push({ cell: undefined, diagnostic: diagnose('separator-in-cell', span, {}) });
    }
  }
  return found;
}

import { diagnose } from '../../core/diagnostics/diagnostic.ts';
import type { Finding, Study } from '../../core/study/types.ts';
import type { OpenCase } from './openCase.ts';
import { type ServerSettings, withSeverities } from './settings.ts';
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
  const all = inside.length === 0 ? study : { ...study, findings: [...study.findings, ...inside] };
  const { uri, version } = document;
  return { uri, isNotebook, version, study: withSeverities(all, severity), views };
}

/** The `---` lines that stand inside a notebook's cell. */
function separatorsInside({ file }: Study, views: readonly View[]): Finding[] {
  const found: Finding[] = [];
  for (const { firstCell, pastCell } of views) {
    for (const { raw } of file.cells.slice(firstCell + 1, pastCell)) {
      const span = { start: raw.separatorStart, end: raw.separatorStart + 3 };
      found.push({ cell: undefined, diagnostic: diagnose('separator-in-cell', span, {}) });
    }
  }
  return found;
}

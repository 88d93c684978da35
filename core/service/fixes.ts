import type { Study } from '../study/types.ts';
import type { Span } from '../text/span.ts';
import { partsOf } from './cellParts.ts';
import { addAs } from './fixes/addAs.ts';
import { addColon } from './fixes/addColon.ts';
import { addReading } from './fixes/addReading.ts';
import { convertUnit } from './fixes/convertUnit.ts';
import { extractName } from './fixes/extractName.ts';
import { wrapPressure } from './fixes/wrapPressure.ts';
import { standingOf } from './standing.ts';
import type { CodeFix } from './types.ts';

/** What may be changed where a span touches: fixes of diagnostics first, then what is offered where nothing is wrong. */
export function fixes(study: Study, cell: number, span: Span): readonly CodeFix[] {
  const standing = standingOf(study, cell);
  if (standing === undefined) return [];
  return [
    ...fixesOfDiagnostics(study, cell, span),
    ...addColon(standing, span),
    ...addReading(standing, span),
    ...wrapPressure(standing, span),
    ...convertUnit(standing, span),
    ...extractName(standing, span),
    ...addAs(standing, span),
  ];
}

function fixesOfDiagnostics(study: Study, cell: number, span: Span): readonly CodeFix[] {
  return partsOf(study, cell)
    .findings.filter((each) => each.span.start <= span.end && span.start <= each.span.end)
    .flatMap((diagnostic) =>
      diagnostic.fixes.map(
        ({ title, edits }): CodeFix => ({
          title,
          kind: 'fix',
          edits: [{ cell, edits }],
          diagnostics: [diagnostic],
          preferred: diagnostic.fixes.length === 1,
        }),
      ),
    );
}

import { study as studyAgain } from '../../study/study.ts';
import type { Study } from '../../study/types.ts';
import { applyEdits } from '../../text/edits.ts';
import { shift } from '../../text/span.ts';
import type { CodeFix } from '../types.ts';

/** Whether a case has no more errors when a change is made: what would break something else is not offered. */
export function addsNoError(study: Study, { edits }: CodeFix): boolean {
  const inFile = edits.flatMap(({ cell, edits: inCell }) => {
    const start = study.file.stream.starts[cell] ?? 0;
    return inCell.map(({ span, newText }) => ({ span: shift(span, start), newText }));
  });
  const after = studyAgain(applyEdits(study.text, inFile), study);
  return errorsIn(after) <= errorsIn(study);
}

/** Rules look at readings, which such a change leaves alone. */
function errorsIn({ memo }: Study): number {
  const isError = ({ diagnostic }: Study['findings'][number]): boolean => diagnostic.severity === 'error';
  return memo.cellFindings.reduce((sum, each) => sum + each.filter(isError).length, 0);
}

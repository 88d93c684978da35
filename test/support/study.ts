import { checkCase } from '../../core/rules/checkCase.ts';
import { type CaseResult, caseResult } from '../../core/study/results.ts';

/** The results of a case made of a header and these cells. */
export function resultOf(cells: string, header = ''): CaseResult {
  return caseResult(checkCase(`diag: 1\ncase: A case\n${header}---\n${cells}`), 'case.diag');
}

export const codesOf = (result: CaseResult): string[] => result.diagnostics.map((each) => each.code);

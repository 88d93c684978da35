import { checkCase } from '../../core/rules/checkCase.ts';
import { caseResult } from '../../core/study/results.ts';

/**
 * A case with its findings written under it, one a line:
 *
 *     map: 101 inHg
 *          ^^^^^^^^ unit-slip: `map` cannot be 101 inHg …
 *
 * The carets mark the span on the line above (the nearest line that is no annotation); the message may be left out.
 * A finding of several lines is marked on its first, with `…` behind the carets.
 */
export interface Annotated {
  readonly text: string;
  readonly marks: readonly string[];
}

const mark = /^(\s*)(\^+)(…?) ([a-z-]+)(?:: (.*))?$/;

export function annotated(source: string): Annotated {
  const lines: string[] = [];
  const marks: string[] = [];
  for (const line of source.replace(/^\n/, '').split('\n')) {
    const found = mark.exec(line);
    if (found === null) {
      lines.push(line);
      continue;
    }
    const [, indent = '', carets = '', more, code, message] = found;
    const start = indent.length + 1;
    const end = more === '…' ? '…' : start + carets.length;
    marks.push(`${lines.length}:${start}-${end} ${code}${message === undefined ? '' : `: ${message}`}`);
  }
  return { text: lines.join('\n'), marks };
}

/** The findings of a case in the form of the marks: with their message where the mark at their place has one. */
export function findingsOf(text: string, marks: readonly string[] = []): string[] {
  return caseResult(checkCase(text), 'case.diag').diagnostics.map((each) => {
    const end = each.endLine > each.line ? '…' : each.endColumn;
    const short = `${each.line}:${each.column}-${end} ${each.code}`;
    const full = `${short}: ${each.message}`;
    return marks.includes(short) ? short : full;
  });
}

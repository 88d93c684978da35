import { type Code, type Diagnostic, diagnose, type Facts } from '../../diagnostics/diagnostic.ts';
import type { Span } from '../../text/span.ts';

/** What was found while a text was read. The first ones are told one by one, the rest is counted. */
export interface Problems {
  readonly list: Diagnostic[];
  more: number;
}

/** So many are told; a damaged recording would else bury the case. */
const most = 20;

export function noProblems(): Problems {
  return { list: [], more: 0 };
}

export function tell<C extends Code>(problems: Problems, code: C, span: Span, facts: Facts[C]): void {
  if (problems.list.length < most) problems.list.push(diagnose(code, span, facts));
  else problems.more++;
}

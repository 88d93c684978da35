import { study } from '../study/study.ts';
import type { Finding, Study } from '../study/types.ts';
import { allRules } from './allRules.ts';

/** Studies a case and lets every rule look at it. Give the previous result to compute anew only what changed. */
export function checkCase(text: string, previous?: Study): Study {
  const studied = study(text, previous);
  const found = allRules.flatMap((rule) => rule.check(studied));
  if (found.length === 0) return studied;
  return { ...studied, findings: inOrder([...studied.findings, ...found]) };
}

/** By cell, then by place; findings at one place stay in the order they were made. */
function inOrder(findings: readonly Finding[]): readonly Finding[] {
  return [...findings].sort(
    (a, b) => (a.cell ?? -1) - (b.cell ?? -1) || a.diagnostic.span.start - b.diagnostic.span.start,
  );
}

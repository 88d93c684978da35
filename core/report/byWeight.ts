import type { Severity } from '../diagnostics/row.ts';

/**
 * What is wrong stands apart from what is only noted: errors first, then warnings, each in the order of the file.
 * A bad file has few of them among many notes.
 */
export function byWeight<T extends { readonly severity: Severity }>(
  findings: readonly T[],
): { readonly serious: readonly T[]; readonly notes: readonly T[] } {
  const of = (severity: Severity): readonly T[] => findings.filter((each) => each.severity === severity);
  return { serious: [...of('error'), ...of('warning')], notes: of('info') };
}

/** "7 errors", "1 warning"; none are not told. */
export function countedFindings(
  findings: readonly { readonly severity: Severity }[],
  severities: readonly Severity[],
): readonly string[] {
  return severities.flatMap((severity) => {
    const count = findings.filter((each) => each.severity === severity).length;
    const what = severity === 'info' ? 'note' : severity;
    return count === 0 ? [] : [`${count} ${what}${count === 1 ? '' : 's'}`];
  });
}

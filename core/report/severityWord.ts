import type { Severity } from '../diagnostics/row.ts';

/** The sign and the word that a finding starts with. */
export function severityWord(severity: Severity): string {
  switch (severity) {
    case 'error':
      return '✗ Error.';
    case 'warning':
      return '! Warning.';
    case 'info':
      return '· Note.';
  }
}

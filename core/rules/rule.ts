import type { Code } from '../diagnostics/diagnostic.ts';
import type { Finding, Study } from '../study/types.ts';

/**
 * A check that always runs. Its page (what, why, wrong, right) and its words stand in the catalogue of diagnostics
 * under its code; the file holds what it looks at.
 */
export interface Rule {
  readonly code: Code;
  readonly check: (study: Study) => readonly Finding[];
}

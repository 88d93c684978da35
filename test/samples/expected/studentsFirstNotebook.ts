import type { ExpectedCase } from '../expectedCase.ts';
import { inHg, percent } from '../secondRoute.ts';

/** The cells that are not broken work as if the broken ones were not there. */
export const studentsFirstNotebook: ExpectedCase = {
  file: 'students-first-notebook.diag',
  values: {
    baro_seen: inHg(13.0 + 16.7),
    trim: percent(8 + 17),
  },
  halfWidths: { baro_seen: inHg(Math.hypot(0.15, 0.2)) },
  notHolding: { 'expect: trim between -10 % and 10 %': 'fails' },
  suspects: {},
  findings: [
    'colon-in-text',
    'mark-starts-text',
    'text-cut-off',
    'comma-splits-number',
    'comma-splits-expression',
    'tab-indentation',
    'first-line-deeper',
    'mark-starts-text',
  ],
};

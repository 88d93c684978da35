import type { Code } from '../../../core/diagnostics/diagnostic.ts';

/** Rules that no fault of the list is for, and why. Their cases stand in `test/rules/spec`. */
export const unjudged = {
  'unknown-fuel': 'a word that the table of fuels has or has not',
  'vin-form': 'characters and a check digit: arithmetic without a tolerance',
  'vin-differs': 'two numbers of seventeen characters that are the same or not',
  'misspelt-state': 'a word near one that the trade has',
  'suspect-twice': 'a name that stands twice in one cell',
  'obd-code-not-listed': 'codes that two lists have or have not',
  'obd-code-not-stored': 'codes that two lists have or have not',
  'unusual-value':
    'information about what is usual: nearly each fault moves something out of it, and it is right then',
} as const satisfies Partial<Record<Code, string>>;

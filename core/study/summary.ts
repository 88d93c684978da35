import type { Study } from './types.ts';

/** How many of each there are, in all cases together; of expectations only `expect` and `verify` count. */
export interface Summary {
  readonly cases: number;
  readonly holds: number;
  readonly fails: number;
  readonly 'too close to call': number;
  readonly 'not measured': number;
  readonly 'cannot compute': number;
  readonly errors: number;
  readonly warnings: number;
  readonly infos: number;
}

export const noCases: Summary = {
  cases: 0,
  holds: 0,
  fails: 0,
  'too close to call': 0,
  'not measured': 0,
  'cannot compute': 0,
  errors: 0,
  warnings: 0,
  infos: 0,
};

export function withCase(summary: Summary, { expectations, findings }: Study): Summary {
  const count = { ...summary, cases: summary.cases + 1 };
  for (const { part, truth } of expectations) {
    if (part === 'expect' || part === 'verify') count[truth.verdict]++;
  }
  for (const { diagnostic } of findings) count[`${diagnostic.severity}s`]++;
  return count;
}

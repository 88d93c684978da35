import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import type { CellRule } from '../rule.ts';

/** A set by cylinder that lacks one. One cylinder alone is no set. */
export const missingCylinder: CellRule = {
  code: 'missing-cylinder',
  checkCell: ({ header: { cylinders }, readings }) => {
    if (cylinders === undefined) return none;
    let found: Diagnostic[] | undefined;
    for (const { from, key, keySpan, value } of readings) {
      if (value.kind !== 'members' || value.by !== 'cylinder' || value.members.size < 2) continue;
      if (from !== 'readings') continue;
      const missing: string[] = [];
      for (let each = 1; each <= cylinders && each <= most; each++) {
        if (!value.members.has(String(each))) missing.push(String(each));
      }
      if (missing.length === 0) continue;
      found ??= [];
      found.push(diagnose('missing-cylinder', keySpan, { name: key, cylinders, missing }));
    }
    return found ?? none;
  },
};

const none: readonly Diagnostic[] = [];

/** No engine on a road has more; a slip in the header is told elsewhere. */
const most = 24;

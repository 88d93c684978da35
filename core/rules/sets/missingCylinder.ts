import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import type { CellRule } from '../rule.ts';

/** A set by cylinder that lacks one. One cylinder alone is no set. */
export const missingCylinder: CellRule = {
  code: 'missing-cylinder',
  in: ['readings'],
  checkCell: ({ header: { cylinders }, sets }) => {
    const found: Diagnostic[] = [];
    if (cylinders === undefined) return found;
    for (const { from, key, keySpan, value } of sets) {
      if (value.kind !== 'members' || value.by !== 'cylinder' || value.members.size < 2) continue;
      if (from !== 'readings') continue;
      const missing: string[] = [];
      for (let each = 1; each <= cylinders && each <= most; each++) {
        const name = names[each] ?? '';
        if (!value.members.has(name)) missing.push(name);
      }
      if (missing.length === 0) continue;
      found.push(diagnose('missing-cylinder', keySpan, { name: key, cylinders, missing }));
    }
    return found;
  },
};

/** No engine on a road has more; a slip in the header is told elsewhere. */
const most = 24;
const names = Array.from({ length: most + 1 }, (_, each) => String(each));

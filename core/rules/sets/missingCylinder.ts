import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import type { CellRule } from '../rule.ts';

/** A set by cylinder that lacks one. One cylinder alone is no set. */
export const missingCylinder: CellRule = {
  code: 'missing-cylinder',
  checkCell: ({ header, readings }) =>
    readings.flatMap(({ from, key, keySpan, value }): readonly Diagnostic[] => {
      const { cylinders } = header;
      if (cylinders === undefined || from !== 'readings') return [];
      if (value.kind !== 'members' || value.by !== 'cylinder' || value.members.size < 2) return [];
      const missing: string[] = [];
      for (let each = 1; each <= cylinders && each <= most; each++) {
        if (!value.members.has(String(each))) missing.push(String(each));
      }
      if (missing.length === 0) return [];
      return [diagnose('missing-cylinder', keySpan, { name: key, cylinders, missing })];
    }),
};

/** No engine on a road has more; a slip in the header is told elsewhere. */
const most = 24;

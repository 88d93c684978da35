import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import type { CellRule } from '../rule.ts';

/** Two suspects of one cell under one name: each is weighed by what both predict. */
export const suspectTwice: CellRule = {
  code: 'suspect-twice',
  in: ['suspects'],
  checkCell: ({ read: { cell } }): readonly Diagnostic[] => {
    const found: Diagnostic[] = [];
    if (cell?.kind !== 'suspects') return found;
    const before = new Set<string>();
    for (const { name } of cell.consider ?? []) {
      const text = name.text.trim();
      if (before.has(text)) found.push(diagnose('suspect-twice', name.span, { name: text }));
      else before.add(text);
    }
    return found;
  },
};

import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import type { CellRule } from '../rule.ts';

/** Two suspects of one cell under one name: each is weighed by what both predict. */
export const suspectTwice: CellRule = {
  code: 'suspect-twice',
  in: ['suspects'],
  checkCell: ({ read: { cell } }): readonly Diagnostic[] => {
    if (cell?.kind !== 'suspects') return [];
    const before = new Set<string>();
    return (cell.consider ?? []).flatMap(({ name }) => {
      const text = name.text.trim();
      if (!before.has(text)) {
        before.add(text);
        return [];
      }
      return [diagnose('suspect-twice', name.span, { name: text })];
    });
  },
};

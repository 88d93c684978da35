import type { Computed } from '../study/types.ts';

/** What an answer in words usually means, as its function's page says it; nothing for other values. */
export function usualMeaning({ typed, value }: Pick<Computed, 'typed' | 'value'>): string | undefined {
  const root = typed?.root;
  if (value.kind !== 'words' || root?.kind !== 'apply') return undefined;
  return root.row.says?.find(({ words }) => words === value.text)?.meaning;
}

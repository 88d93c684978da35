import { withoutUnit } from './unitWords.ts';

/**
 * A column's name as expressions can use it: its heading without the unit, in letters, digits and `_`.
 * `O2 B1S1 [V]` is `O2_B1S1`. Such names are only for columns that the author has given none.
 */
export function plainName(heading: string): string {
  const bare = withoutUnit(heading).trim();
  const name = (bare === '' ? heading : bare)
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/[^A-Za-z0-9_]+/g, '_')
    .replace(/^_+|_+$/g, '');
  if (name === '') return 'column';
  return /^[0-9]/.test(name) ? `column_${name}` : name;
}

/** The same for all columns, none twice. */
export function plainNames(headings: readonly string[]): readonly string[] {
  const used = new Set<string>();
  return headings.map((heading) => {
    const name = plainName(heading);
    let free = name;
    for (let more = 2; used.has(free); more++) free = `${name}_${more}`;
    used.add(free);
    return free;
  });
}

/** Whether two lists have the very same members. */
export function isSameList<T>(a: readonly unknown[], b: readonly T[]): a is readonly T[] {
  if (a.length !== b.length) return false;
  for (let at = 0; at < a.length; at++) if (a[at] !== b[at]) return false;
  return true;
}

/** The list itself, or the one before it while both have the very same members: what was made of that one still holds. */
export function lasting<T>(list: readonly T[], before: readonly T[] | undefined): readonly T[] {
  return before !== undefined && isSameList(before, list) ? before : list;
}

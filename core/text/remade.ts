/** What was made of the members of a list, one of each. */
export interface Made<A, B> {
  readonly of: readonly A[];
  readonly made: readonly B[];
}

/**
 * What is made of each member of a list. Of a member that stands where it stood before, the very same is taken as it was,
 * without looking at it; when that is true of all, so is the list.
 */
export function remade<A, B>(
  list: readonly A[],
  before: Made<A, B> | undefined,
  make: (member: A, index: number) => B,
): readonly B[] {
  if (before === undefined || before.of.length !== list.length) return list.map(make);
  if (before.of === list) return before.made;
  let made: B[] | undefined;
  for (let index = 0; index < list.length; index++) {
    const member = list[index] as A;
    if (member === before.of[index]) continue;
    const now = make(member, index);
    if (now === before.made[index]) continue;
    made ??= before.made.slice();
    made[index] = now;
  }
  return made ?? before.made;
}

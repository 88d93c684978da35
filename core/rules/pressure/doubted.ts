import type { RuledCase } from '../rule.ts';
import { type Doubt, type Manifold, rowsOf } from './manifold.ts';

/** A manifold pressure with what is wrong with it. */
export type Doubted<K extends Doubt['kind'] = Doubt['kind']> = Manifold & {
  readonly doubt: Extract<Doubt, { kind: K }>;
};

/**
 * Of each cell whose row of manifold pressures is doubted for this reason, the first.
 * A row is doubted for one reason: a wrong unit or a vacuum explains what its other columns look like.
 */
export function firstOfEachCell<K extends Doubt['kind']>(kind: K, ruled: RuledCase): readonly Doubted<K>[] {
  const doubted = ruled.once(doubtedIn);
  return doubted.length === 0 ? [] : doubted.filter((each): each is Doubted<K> => each.doubt.kind === kind);
}

function doubtedIn(ruled: RuledCase): readonly Doubted[] {
  const firsts: Doubted[] = [];
  for (const row of rowsOf(ruled)) {
    if (row === undefined || row.made.isSound) continue;
    const { manifolds } = row.made;
    const doubted = manifolds.filter((each): each is Doubted => each.doubt !== undefined);
    const of = (kind: Doubt['kind']): Doubted | undefined => doubted.find(({ doubt }) => doubt.kind === kind);
    const first = of('above barometer') ?? of('is a vacuum') ?? doubted[0];
    if (first !== undefined) firsts.push(first);
  }
  return firsts;
}

import type { RuledCase } from '../rule.ts';
import { type Doubt, type Doubted, rowsOf } from './manifold.ts';

type Of<K extends Doubt['kind']> = Doubted<Extract<Doubt, { kind: K }>>;

/**
 * Of each cell whose row of manifold pressures is doubted for this reason, the first.
 * A row is doubted for one reason: a wrong unit or a vacuum explains what its other columns look like.
 */
export function firstOfEachCell<K extends Doubt['kind']>(kind: K, ruled: RuledCase): readonly Of<K>[] {
  const doubted = ruled.once(doubtedIn);
  return doubted.length === 0 ? [] : doubted.filter((each): each is Of<K> => each.doubt.kind === kind);
}

function doubtedIn(ruled: RuledCase): readonly Doubted[] {
  const firsts: Doubted[] = [];
  for (const row of rowsOf(ruled)) {
    if (row === undefined || row.made.doubted.length === 0) continue;
    const { doubted } = row.made;
    const of = (kind: Doubt['kind']): Doubted | undefined => doubted.find(({ doubt }) => doubt.kind === kind);
    const first = of('above barometer') ?? of('is a vacuum') ?? doubted[0];
    if (first !== undefined) firsts.push(first);
  }
  return firsts;
}

import type { RuledCase } from '../rule.ts';
import { type Doubt, type Manifold, manifoldsIn } from './manifold.ts';

type Doubted = Manifold & { readonly doubt: Doubt };

/** Of each cell that has a manifold pressure with this doubt, the first. */
export function firstOfEachCell<K extends Doubt['kind']>(
  kind: K,
  ruled: RuledCase,
): readonly (Manifold & { readonly doubt: Extract<Doubt, { kind: K }> })[] {
  const cells = new Set(ruled.moments.map(({ cell }) => cell));
  return [...cells].flatMap((cell) => {
    const doubted = manifoldsIn(cell, ruled).filter((each): each is Doubted => each.doubt !== undefined);
    // A row is doubted for one reason: a wrong unit or a vacuum explains what the other columns look like.
    const of = (each: Doubt['kind']): Doubted | undefined => doubted.find(({ doubt }) => doubt.kind === each);
    const first = of('is a vacuum') ?? of('above barometer') ?? doubted[0];
    if (first === undefined || first.doubt.kind !== kind) return [];
    return [first as Manifold & { readonly doubt: Extract<Doubt, { kind: K }> }];
  });
}

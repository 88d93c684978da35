import type { Item } from './chart.ts';

/** The engine state and the time in the story, where all have the same: "cranking, before". */
export function takenOf(items: readonly Pick<Item, 'state' | 'when'>[]): string {
  const states = new Set(items.map(({ state }) => state));
  const whens = new Set(items.map(({ when }) => when));
  const [state] = states;
  const [when] = whens;
  return [
    ...(states.size === 1 && state !== undefined ? [state] : []),
    ...(whens.size === 1 && when !== undefined ? [when] : []),
  ].join(', ');
}

import type { Holds, Keys } from '../casefile/kinds/key.ts';

/** The keys of the map that a key holds, alone, in a list or under names of the author's; undefined where it holds none. */
export function keysWithin(holds: Holds): Keys | undefined {
  if (typeof holds === 'string' || 'words' in holds) return undefined;
  if ('list' in holds) return keysWithin(holds.list);
  return 'named' in holds ? keysWithin(holds.named) : holds.keys;
}

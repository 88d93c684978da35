import type { Holds, Keys } from './key.ts';
import { kinds } from './kinds.ts';

/** The keys of all kinds, at any depth, by name alone: for guessing what a line was meant to be. */
export interface KeyNames {
  readonly every: ReadonlySet<string>;
  /** Those that hold free words somewhere. */
  readonly sentences: ReadonlySet<string>;
}

let names: KeyNames | undefined;

export function keyNames(): KeyNames {
  if (names === undefined) {
    const every = new Set<string>();
    const sentences = new Set<string>();
    for (const [name, kind] of Object.entries(kinds)) {
      add(name, kind.title);
      addKeys(kind.keys);
    }
    names = { every, sentences };

    function add(name: string, holds: Holds): void {
      every.add(name);
      if (holds === 'sentence' || holds === 'markdown') sentences.add(name);
      if (typeof holds !== 'object' || 'words' in holds) return;
      if ('keys' in holds) addKeys(holds.keys);
      else add(name, 'list' in holds ? holds.list : holds.named);
    }

    function addKeys(keys: Keys): void {
      for (const [name, key] of Object.entries(keys)) add(name, key.holds);
    }
  }
  return names;
}

import type { Holds, Key, Keys } from '../casefile/kinds/key.ts';
import { kindOf } from '../casefile/kinds/kinds.ts';
import { measuredKeys } from './spots.ts';

/** What may stand at a path of keys, by the table of kinds. */
export type Expected =
  /** The kind of the cell itself. */
  | { readonly what: 'kind' }
  /** Entries with keys that are known. */
  | { readonly what: 'keys'; readonly keys: Keys; readonly short: Short | undefined }
  /** Entries whose keys the author chooses. */
  | { readonly what: 'names' }
  /** Signals with their values. */
  | { readonly what: 'signals' }
  /** The value of a signal, or of a member of its map. */
  | { readonly what: 'reading'; readonly signal: string }
  | { readonly what: 'text'; readonly holds: Holds; readonly key: Key | undefined; readonly name: string };

/** What may stand in place of a map: the value of one of its keys alone. */
interface Short {
  readonly name: string;
  readonly holds: Holds;
}

/** Undefined where no key of that name is known. */
export function expectedAt(path: readonly string[]): Expected | undefined {
  const [first, ...rest] = path;
  if (first === undefined) return { what: 'kind' };
  const kind = kindOf(first);
  if (kind === undefined) return undefined;
  if (rest.length === 0) return { what: 'keys', keys: kind.keys, short: undefined };
  let holds: Holds = { keys: kind.keys };
  let key: Key | undefined;
  for (let at = 0; at < rest.length; at++) {
    const step = rest[at] ?? '';
    holds = unlisted(holds);
    if (holds === 'map') return inSignal(rest.slice(at));
    if (holds === 'state') {
      if (step !== 'state') return { what: 'text', holds: 'text', key: undefined, name: step };
      holds = 'state';
    } else if (typeof holds !== 'object') return undefined;
    else if ('named' in holds) holds = holds.named;
    else if ('keys' in holds) {
      const row: Key | undefined = Object.hasOwn(holds.keys, step) ? holds.keys[step] : undefined;
      if (row === undefined) return undefined;
      key = row;
      holds = row.holds;
    } else return undefined;
  }
  return told(unlisted(holds), key, rest[rest.length - 1] ?? '');
}

function inSignal([signal = '', second, third]: readonly string[]): Expected {
  if (second === undefined || second === 'value' || third !== undefined) return { what: 'reading', signal };
  const key = Object.hasOwn(measuredKeys, second) ? measuredKeys[second] : undefined;
  if (key === undefined) return { what: 'reading', signal };
  return { what: 'text', holds: key.holds, key, name: second };
}

function told(holds: Holds, key: Key | undefined, name: string): Expected {
  if (holds === 'map') return { what: 'signals' };
  if (typeof holds === 'object' && 'named' in holds) return { what: 'names' };
  if (typeof holds === 'object' && 'keys' in holds) {
    const { short: name = '', keys } = holds;
    const row = Object.hasOwn(keys, name) ? keys[name] : undefined;
    const short = row === undefined ? undefined : { name, holds: row.holds };
    return { what: 'keys', keys, short };
  }
  return { what: 'text', holds, key, name };
}

function unlisted(holds: Holds): Holds {
  return typeof holds === 'object' && 'list' in holds ? unlisted(holds.list) : holds;
}

import type { Dimension } from '../quantity/types.ts';
import { unitOf } from '../quantity/unit.ts';
import { nearest } from '../text/nearest.ts';
import type { Form, Signal } from './types.ts';
import { allSignals, signalOf } from './vocabulary.ts';

export { allSignals, signalOf };

/**
 * The signals that a name may have meant, at most three: by another word for it ("engine speed" is rpm), then by spelling.
 * Case, spaces, hyphens and underscores do not count.
 */
export function nearestSignals(name: string): string[] {
  const asked = plainly(name);
  const offers: string[] = [];
  const close = spellings().has(asked) ? [asked] : nearest(asked, spellings().keys(), 6);
  for (const spelling of close) {
    for (const signal of spellings().get(spelling) ?? []) {
      if (signal !== name && !offers.includes(signal)) offers.push(signal);
    }
  }
  return offers.slice(0, 3);
}

/** The signals that are called exactly so, by their name or another word; case, spaces, hyphens and underscores do not count. */
export function signalsCalled(name: string): readonly Signal[] {
  return (spellings().get(plainly(name)) ?? []).flatMap((each) => signalOf(each) ?? []);
}

/** The form of a signal whose unit has this dimension, the usual one first; undefined when it has none. */
export function formFor(signal: Signal, dimension: Dimension): Form | undefined {
  return signal.forms.find((form) => unitOf(form.unit)?.dimension === dimension);
}

let spelled: ReadonlyMap<string, readonly string[]> | undefined;

/** Names and other words by their plain spelling; two signals may share another word. */
function spellings(): ReadonlyMap<string, readonly string[]> {
  if (spelled !== undefined) return spelled;
  const found = new Map<string, string[]>();
  const add = (spelling: string, name: string) => {
    const names = found.get(plainly(spelling));
    if (names === undefined) found.set(plainly(spelling), [name]);
    else if (!names.includes(name)) names.push(name);
  };
  for (const { name } of allSignals()) add(name, name);
  for (const { name, alsoCalled = [] } of allSignals()) for (const other of alsoCalled) add(other, name);
  spelled = found;
  return found;
}

/** `Engine_Speed` and `engine speed` are one spelling. */
function plainly(name: string): string {
  return name
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
    .trim();
}

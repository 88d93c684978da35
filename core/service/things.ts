import { signalOf } from '../signals/lookup.ts';
import type { CellFacts } from '../study/cellFacts.ts';
import type { Reading } from '../study/types.ts';

/** What a name of a case stands for. Two places name the same thing when `thingId` gives the same text. */
export type Thing =
  /** A cell, by its `as`. */
  | { readonly kind: 'cell'; readonly cell: number; readonly name: string }
  /** A `let`. */
  | { readonly kind: 'computed'; readonly cell: number; readonly name: string }
  /** A cell's own name for one of its states. */
  | { readonly kind: 'column'; readonly cell: number; readonly name: string }
  /** A value of a cell under its key, at all of the cell's states. `own`: the key is the author's, no signal. */
  | { readonly kind: 'reading'; readonly cell: number; readonly name: string; readonly own: boolean }
  | { readonly kind: 'own signal'; readonly name: string }
  | { readonly kind: 'signal'; readonly name: string }
  | { readonly kind: 'tool'; readonly name: string }
  /** `engine.displacement` */
  | { readonly kind: 'header'; readonly name: string }
  | { readonly kind: 'section'; readonly name: string }
  | { readonly kind: 'function'; readonly name: string }
  /** One of several values that a result has: `evo` of `events` or of `valve_events`. */
  | { readonly kind: 'field'; readonly of: string; readonly name: string; readonly meaning: string }
  | { readonly kind: 'unknown'; readonly name: string };

export function thingId(thing: Thing): string {
  if (thing.kind === 'field') return `field ${thing.of} ${thing.name}`;
  return 'cell' in thing ? `${thing.kind} ${thing.cell} ${thing.name}` : `${thing.kind} ${thing.name}`;
}

/** A reading under one of the case's own signals is that signal; a header value is the header's. */
export function thingOfReading(reading: Reading): Thing {
  const { cell, key, signal, from, fullName } = reading;
  if (from === 'header') return { kind: 'header', name: fullName };
  if (signal?.family === 'own') return { kind: 'own signal', name: key };
  const own = from === 'capture' || (signal === undefined && from !== 'readings' && from !== 'test');
  return { kind: 'reading', cell, name: key, own };
}

export function thingOfCell(facts: CellFacts): Thing {
  return { kind: 'cell', cell: facts.cell, name: facts.as ?? '' };
}

/** What it is, in a technician's words: for a refusal or a list. */
export function sayThing(thing: Thing): string {
  switch (thing.kind) {
    case 'cell':
      return `the name of cell ${thing.cell + 1}`;
    case 'computed':
      return 'a computed name';
    case 'column':
      return 'a state’s name';
    case 'reading':
      if (thing.own) return 'a value’s own name';
      return signalOf(thing.name) === undefined ? 'a word of the case’s format' : 'a signal';
    case 'own signal':
      return 'one of the case’s own signals';
    case 'signal':
      return 'a signal';
    case 'tool':
      return 'a tool';
    case 'header':
    case 'section':
      return 'a word of the header';
    case 'function':
      return 'a function';
    case 'field':
      return 'one of the values that a function gives';
    case 'unknown':
      return 'a name that nothing defines';
  }
}

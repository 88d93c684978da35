import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import type { Holds, Keys } from '../kinds/key.ts';
import { kinds } from '../kinds/kinds.ts';
import { shortened } from '../shortened.ts';
import { type Line, writtenEntryAt } from './writtenEntry.ts';

/** A key that is set in deeper than the entry above it, which already has its value, so that it reads as its text. */
export function strayIndentTrap(
  text: string,
  lines: readonly Line[],
  offset: number,
): Diagnostic | undefined {
  const entry = writtenEntryAt(text, lines, offset);
  const first = entry?.below[0];
  if (entry === undefined || first === undefined) return undefined;
  const key = /^[ \t]*([A-Za-z_][A-Za-z0-9_ ]*):(?=[ \t]|$)/.exec(text.slice(first.start, first.end))?.[1];
  if (key === undefined) return undefined;
  const afterNumber = /^[-+]?[0-9]/.test(text.slice(entry.value.start, entry.value.end));
  if (!everyKeyName().has(key) && !afterNumber) return undefined;
  const surplus = first.column - entry.column;
  const edits = entry.below.map((line) => ({
    span: { start: line.start, end: line.start + surplus },
    newText: '',
  }));
  const span = { start: first.start + first.column, end: first.end };
  return diagnose('bad-indentation', span, { text: shortened(text.slice(first.start, first.end)) }, [
    { title: 'Start it at the same column as the line above', edits },
  ]);
}

let names: ReadonlySet<string> | undefined;

/** The keys of all kinds, at any depth. */
function everyKeyName(): ReadonlySet<string> {
  if (names === undefined) {
    const all = new Set<string>();
    for (const [name, kind] of Object.entries(kinds)) {
      all.add(name);
      addKeys(kind.keys, all);
    }
    names = all;
  }
  return names;
}

function addKeys(keys: Keys, all: Set<string>): void {
  for (const [name, key] of Object.entries(keys)) {
    all.add(name);
    addHeld(key.holds, all);
  }
}

function addHeld(holds: Holds, all: Set<string>): void {
  if (typeof holds !== 'object' || 'words' in holds) return;
  if ('keys' in holds) addKeys(holds.keys, all);
  else addHeld('list' in holds ? holds.list : holds.named, all);
}

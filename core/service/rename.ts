import { keywords } from '../expression/scan.ts';
import { signalOf } from '../signals/lookup.ts';
import { study as studyAgain } from '../study/study.ts';
import type { Study } from '../study/types.ts';
import { applyEdits, type TextEdit } from '../text/edits.ts';
import { placesOf } from './definitions.ts';
import { type Occurrence, occurrenceAt, occurrencesOf } from './occurrences.ts';
import { standingOf } from './standing.ts';
import { sayThing, type Thing, thingId } from './things.ts';
import type { CellEdits, Refusal, Renamable, Renaming } from './types.ts';

/** Whether and what can be renamed at an offset; undefined where no name stands. */
export function renamable(study: Study, cell: number, offset: number): Renamable | Refusal | undefined {
  const at = nameAt(study, cell, offset);
  if (at === undefined) return undefined;
  if (!isOwn(at.thing))
    return { refused: `\`${at.thing.name}\` is ${sayThing(at.thing)}: it keeps its name.` };
  return { span: at.span, name: at.thing.name };
}

/** The edits that rename a thing everywhere; refused where the name would then mean something else. */
export function rename(study: Study, cell: number, offset: number, newName: string): Renaming | Refusal {
  const at = nameAt(study, cell, offset);
  if (at === undefined) return { refused: 'There is no name here.' };
  const { thing } = at;
  if (!isOwn(thing)) return { refused: `\`${thing.name}\` is ${sayThing(thing)}: it keeps its name.` };
  const name = newName.trim();
  const wrong = wrongName(thing, name);
  if (wrong !== undefined) return { refused: wrong };
  if (name === thing.name) return { edits: [] };
  const edits = editsOf(placesOf(study, thing), name);
  const changed = firstChanged(study, thing, name, edits);
  if (changed !== undefined) return { refused: changed };
  return { edits };
}

function nameAt(study: Study, cell: number, offset: number): Occurrence | undefined {
  const standing = standingOf(study, cell);
  return standing === undefined ? undefined : occurrenceAt(standing, offset);
}

function isOwn(thing: Thing): boolean {
  switch (thing.kind) {
    case 'cell':
    case 'computed':
    case 'column':
    case 'own signal':
    case 'tool':
      return true;
    case 'reading':
      return thing.own;
    case 'signal':
    case 'header':
    case 'section':
    case 'function':
    case 'field':
    case 'unknown':
      return false;
  }
}

function wrongName(thing: Thing, name: string): string | undefined {
  if (thing.kind === 'tool') {
    return /^[\p{L}\p{N}_]+(?:[ -][\p{L}\p{N}_]+)*$/u.test(name)
      ? undefined
      : `\`${name}\` cannot be a tool’s name: use letters, digits and single spaces.`;
  }
  if (!/^[\p{L}_][\p{L}\p{M}\p{N}_]*$/u.test(name)) {
    return `\`${name}\` cannot be a name: use letters, digits and \`_\`, and no digit first.`;
  }
  if (keywords.has(name)) return `\`${name}\` is a word of the expression language.`;
  if (signalOf(name) !== undefined) return `\`${name}\` is a signal: it can name nothing else.`;
  if (thing.kind === 'cell' && ['engine', 'site', 'vehicle'].includes(name)) {
    return `\`${name}\` is a section of the header.`;
  }
  return undefined;
}

function editsOf(places: readonly Occurrence[], newText: string): readonly CellEdits[] {
  const byCell = new Map<number, TextEdit[]>();
  for (const { cell, span } of places) {
    const edits = byCell.get(cell) ?? [];
    edits.push({ span, newText });
    byCell.set(cell, edits);
  }
  return [...byCell].map(([cell, edits]) => ({ cell, edits }));
}

/** Studies the renamed case: every name in it must stand for what it stood for. */
function firstChanged(
  study: Study,
  thing: Thing,
  name: string,
  edits: readonly CellEdits[],
): string | undefined {
  const taken = `\`${name}\` would mean something else: it is taken.`;
  const inFile = edits.flatMap((each) => {
    const start = study.file.stream.starts[each.cell] ?? 0;
    return each.edits.map(({ span, newText }) => ({
      span: { start: span.start + start, end: span.end + start },
      newText,
    }));
  });
  const after = studyAgain(applyEdits(study.text, inFile), study);
  const before = occurrencesOf(study);
  const now = occurrencesOf(after);
  if (before.length !== now.length) return taken;
  const id = thingId(thing);
  const newId = thingId({ ...thing, name });
  for (const [at, old] of before.entries()) {
    const oldId = thingId(old.thing);
    const current = now[at];
    const wanted = oldId === id ? newId : oldId;
    if (current === undefined || thingId(current.thing) !== wanted) return taken;
  }
  const repeats = (of: Study): number =>
    of.findings.filter((each) => repeated.has(each.diagnostic.code)).length;
  return repeats(after) > repeats(study) ? taken : undefined;
}

const repeated: ReadonlySet<string> = new Set([
  'duplicate-name',
  'duplicate-key',
  'table-duplicate-row',
  'table-duplicate-column',
]);

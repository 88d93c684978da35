import type { Node } from '../casefile/tree.ts';
import type { Study } from '../study/types.ts';
import { type Occurrence, occurrenceAt, occurrencesIn } from './occurrences.ts';
import { entrySpan, type Spot, spotsOf } from './spots.ts';
import { type Standing, standingOf } from './standing.ts';
import { type Thing, thingId } from './things.ts';
import type { Definitions, Reference, Target } from './types.ts';

/** Where the name at an offset is defined; nothing for what no cell defines (a function, a signal that is not measured). */
export function definitions(study: Study, cell: number, offset: number): Definitions | undefined {
  const standing = standingOf(study, cell);
  const at = standing === undefined ? undefined : occurrenceAt(standing, offset);
  if (at === undefined) return undefined;
  const targets = targetsOf(study, at);
  return targets.length === 0 ? undefined : { span: at.span, targets };
}

/** All places of the name at an offset, the definition's own with them, in the order of the file. */
export function references(study: Study, cell: number, offset: number): readonly Reference[] {
  const standing = standingOf(study, cell);
  const at = standing === undefined ? undefined : occurrenceAt(standing, offset);
  if (at === undefined || at.thing.kind === 'unknown') return [];
  return placesOf(study, at.thing).map(({ cell: where, span, defines }) => ({ cell: where, span, defines }));
}

/** Every occurrence of a thing, in the order of the file. */
export function placesOf(study: Study, thing: Thing): readonly Occurrence[] {
  const id = thingId(thing);
  const found: Occurrence[] = [];
  for (let index = 0; index < study.file.cells.length; index++) {
    const standing = standingOf(study, index);
    if (standing === undefined) continue;
    for (const each of occurrencesIn(standing)) if (thingId(each.thing) === id) found.push(each);
  }
  return found;
}

function targetsOf(study: Study, { thing, named }: Occurrence): readonly Target[] {
  const cell = homeOf(study, thing);
  const standing = cell === undefined ? undefined : standingOf(study, cell);
  if (standing === undefined) return [];
  const reading = named?.kind === 'reading' ? named.reading : undefined;
  if (reading?.from === 'test') return keyOf(standing, reading.key);
  const id = thingId(thing);
  const targets = occurrencesIn(standing)
    .filter((each) => each.defines && thingId(each.thing) === id)
    .map((each) => targetAt(standing, each));
  if (targets.length > 0 || reading === undefined) return targets;
  // A reading that is called by one of the case's own signals, or a column of a table.
  return [{ cell: reading.cell, span: reading.keySpan, nameSpan: reading.keySpan }];
}

/** A test's result, and what was found, are keys of the cell itself. */
function keyOf(standing: Standing, key: string): readonly Target[] {
  const spot = spotsOf(standing).find(
    (each) => each.path.length === 2 && each.role === 'key' && each.node.text === key,
  );
  if (spot === undefined) return [];
  return [{ cell: standing.index, span: wholeOf(spot) ?? spot.node.span, nameSpan: spot.node.span }];
}

/** The cell in which a thing gets its name. */
function homeOf(study: Study, thing: Thing): number | undefined {
  switch (thing.kind) {
    case 'cell':
    case 'computed':
    case 'column':
    case 'reading':
      return thing.cell;
    case 'own signal':
    case 'tool':
    case 'header':
      return study.file.cells[0]?.cell?.kind === 'diag' ? 0 : undefined;
    case 'section':
    case 'signal':
    case 'function':
    case 'field':
    case 'unknown':
      return undefined;
  }
}

function targetAt(standing: Standing, { cell, span, thing }: Occurrence): Target {
  const spot = spotsOf(standing).find(
    ({ node }) => node.span.start <= span.start && span.end <= node.span.end,
  );
  const whole = thing.kind === 'cell' ? standing.tree?.span : wholeOf(spot);
  return { cell, span: whole ?? span, nameSpan: span };
}

function wholeOf(spot: Spot | undefined): Node['span'] | undefined {
  return spot?.value === undefined ? undefined : entrySpan(spot.node, spot.value);
}

import { allSignals } from '../signals/lookup.ts';
import type { CellFacts } from '../study/cellFacts.ts';
import { cellNamed, lookUp } from '../study/names.ts';
import type { Span } from '../text/span.ts';
import { offer } from './offer.ts';
import { fieldsOfCall, fieldsOfName } from './resultFields.ts';
import { computedAt, type Standing } from './standing.ts';
import type { Completion } from './types.ts';
import { valueWords } from './valueWords.ts';

/** What may follow behind `koeo.`, `before.idle.`, `engine.`, `before.map.`; `path` is what stands before the last point. */
export function memberOffers(standing: Standing, path: readonly string[], span: Span): readonly Completion[] {
  const { names } = standing;
  const [first = '', second] = path;
  if (['engine', 'site', 'vehicle'].includes(first) && path.length === 1)
    return headerMembers(standing, first, span);
  const cell = cellNamed(names, first);
  if (cell === undefined) return membersOfValue(standing, path, span);
  if (second === undefined) return membersOfCell(standing, cell, span);
  if (path.length === 2 && cell.states.has(second)) return atState(cell, second, span);
  return membersOfValue(standing, path, span);
}

function headerMembers({ names }: Standing, section: string, span: Span): readonly Completion[] {
  return [...names.header.values()]
    .filter(({ fullName }) => fullName.startsWith(`${section}.`))
    .map(({ fullName, value }) =>
      offer('member', fullName.slice(section.length + 1), valueWords(value), span),
    );
}

function membersOfCell(standing: Standing, cell: CellFacts, span: Span): readonly Completion[] {
  const items: Completion[] = [];
  for (const [name, taken] of cell.states)
    items.push({ ...offer('member', name, taken.name, span), rank: 1 });
  for (const { name } of cell.definitions) {
    const value = computedAt(standing.study, cell.cell, name)?.value;
    items.push({ ...offer('member', name, value === undefined ? '' : valueWords(value), span), rank: 2 });
  }
  const seen = new Set<string>();
  for (const { key, value, column, signal } of cell.readings) {
    if (seen.has(key)) continue;
    seen.add(key);
    const words = column === undefined ? valueWords(value) : 'at every state';
    items.push({
      ...offer('member', key, words, span),
      rank: 3,
      filter: signal === undefined ? undefined : `${key} ${signal.meaning}`,
    });
  }
  if (cell.answersForSignals) items.push(...notMeasured(seen, span));
  return items;
}

function atState(cell: CellFacts, state: string, span: Span): readonly Completion[] {
  const here = cell.readings.filter((each) => each.column === state);
  const seen = new Set(here.map((each) => each.key));
  return [
    ...here.map(({ key, value, signal }) => ({
      ...offer('member', key, valueWords(value), span),
      rank: 1,
      filter: signal === undefined ? undefined : `${key} ${signal.meaning}`,
    })),
    ...(cell.answersForSignals ? notMeasured(seen, span) : []),
  ];
}

/** A readings cell answers for every signal: one that it does not hold is not measured. */
function notMeasured(seen: ReadonlySet<string>, span: Span): readonly Completion[] {
  return allSignals()
    .filter(({ name }) => !seen.has(name))
    .map(({ name, meaning }) => ({ ...offer('signal', name, `${meaning} (not measured)`, span), rank: 60 }));
}

/** What stands behind a call that gives several values: `valve_events(snap.pressure).` */
export function membersOfCall(functionName: string, span: Span): readonly Completion[] {
  return fieldsOfCall(functionName).map(({ name, meaning }, rank) => ({
    ...offer('member', name, meaning, span),
    rank,
  }));
}

/** The states of a value that was taken at several, or the values that a computed name has by name. */
function membersOfValue(standing: Standing, path: readonly string[], span: Span): readonly Completion[] {
  const named = lookUp(
    standing.names,
    standing.index,
    path,
    path.map(() => span),
  );
  if (named.kind === 'definition' && named.used === path.length) {
    return fieldsOfName(standing, named).map(({ name, meaning, value }, rank) => ({
      ...offer('member', name, value === undefined ? meaning : `${meaning}: ${valueWords(value)}`, span),
      rank,
    }));
  }
  if (named.kind !== 'states' || named.used !== path.length) return [];
  return [...named.readings].map(([state, { value }]) => offer('member', state, valueWords(value), span));
}

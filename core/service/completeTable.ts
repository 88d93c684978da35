import { signalOf } from '../signals/lookup.ts';
import { completeUnit, unitsOf } from './completeUnit.ts';
import { offer } from './offer.ts';
import { signalOffers } from './signalOffers.ts';
import type { Standing } from './standing.ts';
import type { Completion } from './types.ts';
import type { Typing } from './typing.ts';

/** In the rows of a table: headings, signals in the first column, units in the column headed so. */
export function completeTable(standing: Standing, typing: Typing): readonly Completion[] {
  const { before, start, block = [] } = typing;
  const rows = block.filter(({ text }) => text.trim() !== '');
  const [heading] = rows;
  const word = /\S*$/.exec(before)?.[0] ?? '';
  const span = { start: start + before.length - word.length, end: start + before.length };
  if (heading === undefined) {
    const states = [...(standing.facts?.states.keys() ?? [])];
    return ['reading', ...states, 'unit'].map((each, rank) => ({
      ...offer('word', each, 'heading', span),
      rank,
    }));
  }
  const gaps = before.trimStart() === word ? 0 : columnsBefore(before, word);
  if (gaps === 0) {
    const siblings = rows.slice(1).map(({ text }) => text.trim().split(/\s+/)[0] ?? '');
    return signalOffers(standing, { before, start, siblings }, '');
  }
  const headings = heading.text.trim().split(/\t|\s{2,}|\s+/);
  if (headings[gaps] !== 'unit') return [];
  const name = before.trim().split(/\s+/)[0] ?? '';
  const signal = standing.names.ownSignals.get(name) ?? signalOf(name);
  const units = completeUnit(
    { before: `1 ${word}`, start: span.start - 2 },
    unitsOf(signal),
    signal !== undefined,
  );
  return units.map((each) => ({ ...each, newText: each.newText.trim() }));
}

function columnsBefore(before: string, word: string): number {
  return before
    .slice(0, before.length - word.length)
    .trim()
    .split(/\s+/).length;
}

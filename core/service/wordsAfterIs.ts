import type { Type } from '../expression/type.ts';
import { functionRow } from '../study/functions.ts';
import { lookUp } from '../study/names.ts';
import type { Span } from '../text/span.ts';
import { closedCall } from './closedCall.ts';
import { typeOfNamed } from './fixes/wrapPressure.ts';
import { offer } from './offer.ts';
import type { Standing } from './standing.ts';
import type { Completion } from './types.ts';

/** A test's outcome, and what a truth is compared with. */
export const outcomes: ReadonlySet<string> = new Set(['yes', 'no', 'unclear', 'true', 'false']);

/** A word that the left side may be, and what it means. */
interface Word {
  readonly word: string;
  readonly meaning: string;
}

const isEnd = /\s+is(?:\s+not)?\s*$/;
const dottedName = /[\p{L}_][\p{L}\p{M}\p{N}_]*(?:\.[\p{L}_][\p{L}\p{M}\p{N}_]*)*$/u;

/** What may stand behind `… is` or `… is not`, with which `head` ends: the words of the left side, or the outcomes. */
export function wordsAfterIs(standing: Standing, head: string, span: Span): readonly Completion[] {
  const left = head.replace(isEnd, '');
  const words = wordsOf(standing, left, span);
  if (words.length > 0) {
    return words.map(({ word, meaning }, at) => ({ ...offer('word', `"${word}"`, meaning, span), rank: at }));
  }
  return [...outcomes].map((word, rank) => ({ ...offer('word', word, 'an outcome', span), rank }));
}

/**
 * The same where a text has been begun, `… is "cl`; nothing in any other text.
 * `end` is the cursor, and what is offered takes the quote behind it along.
 */
export function wordsInText(standing: Standing, before: string, end: number): readonly Completion[] {
  const begun = /"[^"]*$/.exec(before);
  if (begun === null || !isEnd.test(before.slice(0, begun.index))) return [];
  const behind = standing.study.file.cells[standing.index]?.raw.text[end];
  const span = { start: end - begun[0].length, end: behind === '"' ? end + 1 : end };
  return wordsAfterIs(standing, before.slice(0, begun.index), span).filter(
    ({ label }) => !outcomes.has(label),
  );
}

function wordsOf(standing: Standing, left: string, span: Span): readonly Word[] {
  const field = /\)(?:\.([\p{L}_][\p{L}\p{M}\p{N}_]*))?$/u.exec(left);
  if (field !== null) return saidBy(closedCall(left.slice(0, field.index + 1)), field[1]);
  const path = dottedName.exec(left)?.[0].split('.') ?? [];
  const named = lookUp(
    standing.names,
    standing.index,
    path,
    path.map(() => span),
  );
  if (named.kind === 'problem' || (named.kind === 'reading' && named.reading.from === 'test')) return [];
  const signal = named.kind === 'reading' ? named.reading.signal : undefined;
  const meaning = (named.kind === 'not measured' ? named.signal : signal)?.meaning ?? 'one of its words';
  return among(typeOfNamed(standing, named), path.slice(named.used)).map((word) => ({ word, meaning }));
}

/** What a function answers with, or one of the values that it gives by name. */
function saidBy(name: string | undefined, field: string | undefined): readonly Word[] {
  const row = name === undefined ? undefined : functionRow(name);
  if (row?.says === undefined) return [];
  const said =
    row.result.kind === 'fields' ? row.result.fields.find(({ unit }) => unit === 'text')?.name : undefined;
  return said === field ? row.says.map(({ words, meaning }) => ({ word: words, meaning })) : [];
}

function among(type: Type | undefined, fields: readonly string[]): readonly string[] {
  const [first, ...rest] = fields;
  if (first === undefined) return type?.kind === 'words' ? (type.among ?? []) : [];
  if (type?.kind !== 'fields') return [];
  return among(type.fields.find(({ name }) => name === first)?.type, rest);
}

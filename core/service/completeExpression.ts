import { parseExpression } from '../expression/parse.ts';
import { keywords } from '../expression/scan.ts';
import type { Type } from '../expression/type.ts';
import { languageWord } from '../report/languageWords.ts';
import { codeSpan } from '../report/markdown/escape.ts';
import { allSignals } from '../signals/lookup.ts';
import type { Signal } from '../signals/types.ts';
import type { CellFacts } from '../study/cellFacts.ts';
import { allFunctions } from '../study/functions.ts';
import { readsOf } from '../study/graph/reads.ts';
import { lookUp } from '../study/names.ts';
import type { Span } from '../text/span.ts';
import { closedCall } from './closedCall.ts';
import { completeUnit } from './completeUnit.ts';
import { typeOfNamed } from './fixes/wrapPressure.ts';
import { functionOffer } from './functionOffer.ts';
import { memberOffers, membersOfCall } from './memberOffers.ts';
import { blank, offer } from './offer.ts';
import { callAround } from './signature.ts';
import { computedAt, computedOf, type Standing } from './standing.ts';
import type { Completion } from './types.ts';
import { type Typing, wordBefore } from './typing.ts';
import { valueWords } from './valueWords.ts';
import { outcomes, wordsAfterIs, wordsInText } from './wordsAfterIs.ts';

const dottedEnd = /((?:[\p{L}_][\p{L}\p{M}\p{N}_]*\.)+)[\p{L}\p{M}\p{N}_]*$/u;
/** A call that ends in a point at the cursor: `valve_events(snap.pressure).`, a word begun or not. */
const callEnd = /\)\.[\p{L}\p{M}\p{N}_]*$/u;
const labelEnd = /((?:[\p{L}_][\p{L}\p{M}\p{N}_]*)(?:\.[\p{L}_][\p{L}\p{M}\p{N}_]*)*)\[\s*"?([^"\]]*)$/u;

/** What may follow in an expression of which this is the beginning. */
export function completeExpression(standing: Standing, typing: Typing): readonly Completion[] {
  const before = textBefore(typing);
  const span = wordBefore(typing.before, typing.start);
  const label = labelEnd.exec(before);
  if (label !== null) return inBrackets(standing, typing, label[1] ?? '', label[2] ?? '', before);
  if (isInText(before)) return wordsInText(standing, before, typing.start + typing.before.length);
  const path = dottedEnd.exec(before)?.[1]?.split('.').slice(0, -1);
  if (path !== undefined) return memberOffers(standing, path, span);
  const call = callEnd.exec(before)?.index;
  if (call !== undefined) return membersOfCall(closedCall(before.slice(0, call + 1)) ?? '', span);
  const head = before.slice(0, before.length - (span.end - span.start));
  const units = completeUnit(typing, wantedUnits(standing, before), false);
  if (units.length > 0) return [...units, ...(/\s$/.test(head) ? operators(span, 40) : [])];
  if (/[\d.]$/.test(head)) return [];
  return operandIsDue(head) ? operands(standing, typing, span, head, before) : operators(span, 1);
}

/** All of the expression before the cursor, the lines of a block with it. */
function textBefore({ before, block }: Typing): string {
  if (block === undefined) return before.replace(/^["']/, ' ');
  return [...block.map(({ text }) => text), before].join('\n');
}

const isInText = (before: string): boolean => (before.match(/"/g) ?? []).length % 2 === 1;

/** After nothing, an operator, an opening bracket, a comma or a word that wants something behind it. */
function operandIsDue(head: string): boolean {
  const tail = head.trimEnd();
  if (tail === '' || /[-+*/^<>=([,]$/.test(tail) || tail.endsWith('..')) return true;
  const word = /[\p{L}_][\p{L}\p{N}_.]*$/u.exec(tail)?.[0];
  return word !== undefined && keywords.has(word) && !outcomes.has(word);
}

function operands(
  standing: Standing,
  typing: Typing,
  span: Span,
  head: string,
  before: string,
): readonly Completion[] {
  const tail = head.trimEnd();
  if (/\bis(?:\s+not)?$/.test(tail)) return wordsAfterIs(standing, tail, span);
  return [
    ...parameterOffers(before, head, span),
    ...nameOffers(standing, typing.path, span),
    ...allFunctions().map((row) => functionOffer(row, span)),
    ...['not', 'if'].map((word) => ({ ...wordOffer(word, span), rank: 70 })),
  ];
}

/** Names in scope: the cell's own first, then what other cells measured and computed, then what nobody measured. */
function nameOffers(standing: Standing, path: readonly string[], span: Span): readonly Completion[] {
  const { names, index, study } = standing;
  const items: Completion[] = [];
  const own = new Set<string>();
  for (const { name } of names.cells[index]?.definitions ?? []) {
    own.add(name);
    // Nothing is computed from itself.
    if (path[1] === 'let' && path[2] === name) continue;
    const computed = computedAt(study, index, name);
    const detail = computed === undefined ? 'computed here' : valueWords(computed.value);
    items.push({ ...offer('name', name, detail, span), rank: 1 });
  }
  for (const cell of names.cells) items.push(...ofCell(standing, cell, own, span));
  for (const reading of names.header.values()) {
    items.push({ ...offer('name', reading.fullName, valueWords(reading.value), span), rank: 40 });
  }
  for (const signal of names.ownSignals.values()) addMissing(standing, signal, span, items);
  for (const signal of allSignals()) addMissing(standing, signal, span, items);
  return items;
}

function ofCell(standing: Standing, cell: CellFacts, own: ReadonlySet<string>, span: Span): Completion[] {
  const { names, study } = standing;
  const items: Completion[] = [];
  if (cell.as === undefined) {
    for (const reading of cell.readings) {
      const clear = cell.open && names.bare.get(reading.key)?.length === 1 && !own.has(reading.key);
      if (clear && reading.column === undefined) {
        items.push({ ...offer('name', reading.key, valueWords(reading.value), span), rank: 20 });
      }
    }
    return items;
  }
  const of = study.file.cells[cell.cell]?.cell;
  const title = of?.title.text.trim() ?? '';
  items.push({ ...offer('name', cell.as, `${of?.kind ?? ''}: ${title}`, span), rank: 10 });
  for (const each of readingsOf(cell)) items.push({ ...each, span });
  if (cell.cell === standing.index) return items;
  for (const { id, name } of cell.definitions) {
    const value = computedAt(study, cell.cell, name)?.value;
    items.push({ ...offer('name', id, value === undefined ? '' : valueWords(value), span), rank: 20 });
  }
  return items;
}

type Made = Omit<Completion, 'span'>;

const readingsMade = new WeakMap<CellFacts, readonly Made[]>();

/** The readings of a named cell; they are made once, since the cell mostly stays while one types in another. */
function readingsOf(cell: CellFacts): readonly Made[] {
  let made = readingsMade.get(cell);
  if (made === undefined) {
    made = cell.readings.map(({ fullName, value, signal }) => ({
      ...offer('name', fullName, valueWords(value), nowhere),
      rank: 20,
      filter: signal === undefined ? undefined : `${fullName} ${signal.meaning}`,
    }));
    readingsMade.set(cell, made);
  }
  return made;
}

const missingMade = new WeakMap<Signal, Made>();

/** A signal that no cell has: it can be named all the same, and is then not measured. */
function addMissing({ names }: Standing, signal: Signal, span: Span, items: Completion[]): void {
  if (names.bare.has(signal.name)) return;
  let made = missingMade.get(signal);
  if (made === undefined) {
    made = { ...offer('signal', signal.name, `${signal.meaning} (not measured)`, nowhere), rank: 60 };
    missingMade.set(signal, made);
  }
  items.push({ ...made, span });
}

const nowhere: Span = { start: 0, end: 0 };

/** The names of the parameters of the call around, where an argument may begin. */
function parameterOffers(before: string, head: string, span: Span): readonly Completion[] {
  if (!/[(,]\s*$/.test(head)) return [];
  const call = callAround(before, before.length);
  if (call === undefined) return [];
  return call.row.parameters
    .filter(({ name }, at) => at >= call.argument && !call.named.includes(name))
    .map(({ name, meaning }) => ({
      ...offer('parameter', name, meaning, span),
      label: `${name} =`,
      newText: `${name} = `,
      rank: 30,
    }));
}

/** Labels, cylinders and states of the value before the bracket. */
function inBrackets(
  standing: Standing,
  typing: Typing,
  name: string,
  begun: string,
  before: string,
): readonly Completion[] {
  const path = name.split('.');
  const end = typing.start + typing.before.length;
  const quoted = /\[\s*"[^"]*$/.test(before);
  const span = { start: end - begun.length - (quoted ? 1 : 0), end };
  const named = lookUp(
    standing.names,
    standing.index,
    path,
    path.map(() => span),
  );
  if (named.kind === 'states') {
    return [...named.readings.keys()].map((each) => offer('member', `"${each}"`, 'state', span));
  }
  const value =
    named.kind === 'reading'
      ? named.reading.value
      : named.kind === 'definition'
        ? computedOf(standing, named.definition)?.value
        : undefined;
  if (value?.kind !== 'members') return [];
  return [...value.members.keys()].map((each) =>
    offer('member', value.by === 'cylinder' ? each : `"${each}"`, value.by, span),
  );
}

/** Units of the names in the expression: a number beside one of them is mostly of its dimension. */
function wantedUnits(standing: Standing, before: string): readonly string[] {
  const units: string[] = [];
  for (const { parts, spans } of readsOf(parseExpression(before).value).paths) {
    const named = lookUp(standing.names, standing.index, parts, spans);
    const unit = unitIn(typeOfNamed(standing, named));
    if (unit !== undefined) units.unshift(unit);
  }
  return units;
}

function unitIn(type: Type | undefined): string | undefined {
  return type !== undefined && 'quantity' in type ? type.quantity.unit.symbol : undefined;
}

/** What may stand behind a value. */
function operators(span: Span, rank: number): readonly Completion[] {
  return operatorRows.map(([label, newText], at) => ({
    ...wordOffer(label, span),
    newText,
    snippet: newText.includes('$'),
    rank: rank + at,
  }));
}

/** A word of the language with its meaning and an example. */
function wordOffer(word: string, span: Span): Completion {
  const row = languageWord(word);
  const markdown = row === undefined ? undefined : `*Such as* ${codeSpan(row.example)}`;
  return { ...offer('keyword', word, row?.meaning ?? '', span), markdown };
}

const operatorRows: readonly (readonly [label: string, newText: string])[] = [
  ['between', `between ${blank(1, 'low')} and ${blank(2, 'high')}`],
  ['within', `within ${blank(1, 'tolerance')} of ${blank(2, 'value')}`],
  ['is', 'is '],
  ['and', 'and '],
  ['or', 'or '],
  ['in', 'in '],
  ['not', 'not '],
  ['from', `from ${blank(1, '0 s')} to ${blank(2, '1 s')}`],
  ['where', `where (${blank(1, 'condition')})`],
  ['then', 'then '],
  ['else', 'else '],
];

import type { Keys } from '../casefile/kinds/key.ts';
import { kindNames, kinds } from '../casefile/kinds/kinds.ts';
import { absences } from '../quantity/parse.ts';
import { signalOf } from '../signals/lookup.ts';
import { engineStates } from '../signals/states.ts';
import { headerUnits } from '../study/headerTable.ts';
import type { Study } from '../study/types.ts';
import type { Span } from '../text/span.ts';
import { completeExpression } from './completeExpression.ts';
import { completeTable } from './completeTable.ts';
import { completeUnit, unitsOf } from './completeUnit.ts';
import { type Expected, expectedAt } from './expected.ts';
import { keyPage } from './hover.ts';
import { kindSnippets } from './kindSnippets.ts';
import { offer } from './offer.ts';
import { signalOffers } from './signalOffers.ts';
import { type Standing, standingOf } from './standing.ts';
import type { Completion, Completions } from './types.ts';
import { type Typing, typingAt } from './typing.ts';

/** What may be written at an offset, likeliest first; it works on text that is no YAML yet. */
export function completions(study: Study, cell: number, offset: number): Completions {
  const standing = standingOf(study, cell);
  if (standing === undefined) return { items: [], complete: true };
  const typing = typingAt(standing.typed, offset);
  const expected = expectedAt(typing.path);
  const items = expected === undefined ? [] : offers(standing, typing, expected);
  return { items, complete: true };
}

function offers(standing: Standing, typing: Typing, expected: Expected): readonly Completion[] {
  if (isComment(typing.before)) return [];
  switch (expected.what) {
    case 'kind':
      return typing.where === 'value' ? [] : kindOffers(typing, standing.index === 0);
    case 'keys':
      if (typing.where === 'value' && typing.path.length === 1) return [];
      return [
        ...(startsKey(typing) ? keyOffers(expected.keys, typing, expected.short === undefined ? 0 : 80) : []),
        ...(expected.short === undefined || typing.where === 'key' || typing.siblings.length > 0
          ? []
          : textOffers(standing, typing, { what: 'text', key: undefined, ...expected.short })),
      ];
    case 'names':
      return [];
    case 'signals':
      return typing.where === 'value' ? [] : signalOffers(standing, typing, ': ');
    case 'reading':
      return readingOffers(standing, typing, expected.signal);
    case 'text':
      return typing.where === 'key' ? [] : textOffers(standing, typing, expected);
  }
}

/** So far it is a word or nothing, where a key may stand. */
function startsKey({ where, inBraces, before }: Typing): boolean {
  return (where !== 'value' || inBraces) && /^[\p{L} ]*$/u.test(before);
}

function textOffers(
  standing: Standing,
  typing: Typing,
  { holds, key, name }: Expected & { readonly what: 'text' },
): readonly Completion[] {
  const whole: Span = { start: typing.start, end: typing.start + typing.before.length };
  if (typeof holds === 'object') {
    if (!('words' in holds)) return [];
    return holds.words.map((word) => offer('word', word, key?.meaning ?? '', whole));
  }
  switch (holds) {
    case 'expression':
      return completeExpression(standing, typing);
    case 'state':
      return stateOffers(standing, whole);
    case 'table':
      return completeTable(standing, typing);
    case 'quantity': {
      const section = typing.path[1] ?? '';
      const unit = headerUnits[`${section}.${name}`]?.unit ?? (name === 'odometer' ? 'km' : '1');
      return completeUnit(typing, unit === '1' ? [] : [unit], unit !== '1');
    }
    case 'text':
      return namedOffers(standing, typing, name, whole);
    case 'sentence':
    case 'markdown':
    case 'name':
    case 'map':
    case 'anything':
      return [];
  }
}

/** Texts that name something: a tool, a unit, a signal. */
function namedOffers(standing: Standing, typing: Typing, name: string, whole: Span): readonly Completion[] {
  switch (name) {
    case 'tool':
      return toolOffers(standing, whole);
    case 'unit':
      // A unit alone is completed like one behind a number.
      return completeUnit(
        { before: `1 ${typing.before}`, start: typing.start - 2 },
        unitsOfSignal(standing, typing),
        false,
      );
    case 'signal':
      return signalOffers(standing, typing, '');
    case 'column':
      return columnOffers(standing, typing);
    default:
      return [];
  }
}

/** The headings of the capture's columns, in the file's order; in quotes where they are begun, or are no plain text. */
function columnOffers({ facts, text }: Standing, { start, before }: Typing): readonly Completion[] {
  const isQuoted = before.startsWith('"');
  const cursor = start + before.length;
  const span = { start, end: isQuoted && text[cursor] === '"' ? cursor + 1 : cursor };
  return (facts?.headings ?? []).map((heading, rank) => {
    const quoted = JSON.stringify(heading);
    const newText = !isQuoted && isPlainText.test(heading) ? heading : quoted;
    return {
      ...offer('word', heading, 'a column', span),
      newText,
      filter: isQuoted ? quoted : heading,
      rank,
    };
  });
}

/** What stands in a case without quotes, between brackets too. */
const isPlainText = /^[\p{L}\p{N}_][\p{L}\p{N}_ ()/%°.-]*$/u;

/** A channel's unit fits the signal that it shows, when its line says which. */
function unitsOfSignal(standing: Standing, { path }: Typing): readonly string[] {
  const channel = path[path.length - 2] ?? '';
  const reading = standing.facts?.readings.find((each) => each.key === channel);
  return unitsOf(reading?.signal ?? signalOf(channel));
}

function kindOffers({ start, before }: Typing, isFirst: boolean): readonly Completion[] {
  const span = { start, end: start + before.length };
  return kindNames.map((name): Completion => {
    const { meaning } = kinds[name];
    const rank = (name === 'diag') === isFirst ? 1 : name === 'diag' ? 3 : 2;
    return {
      ...offer('cell kind', name, meaning, span),
      newText: kindSnippets[name],
      snippet: true,
      rank,
      markdown: `*Keys:* ${Object.keys(kinds[name].keys).join(', ')}`,
    };
  });
}

function keyOffers(keys: Keys, { start, before, siblings }: Typing, rank: number): readonly Completion[] {
  const span = { start, end: start + before.length };
  return Object.entries(keys)
    .filter(([name]) => !siblings.includes(name))
    .map(([name, key], at) => ({
      ...offer('key', name, key.meaning, span),
      newText: `${name}:${opensMap(key.holds) ? '' : ' '}`,
      markdown: keyPage(name, key),
      rank: rank + (key.required === true ? 0 : 100) + at,
    }));
}

/** Keys whose value stands in the lines below. */
function opensMap(holds: Keys[string]['holds']): boolean {
  if (holds === 'map') return true;
  if (typeof holds !== 'object') return false;
  return 'named' in holds || 'list' in holds || ('keys' in holds && holds.short === undefined);
}

function readingOffers(standing: Standing, typing: Typing, name: string): readonly Completion[] {
  const whole: Span = { start: typing.start, end: typing.start + typing.before.length };
  const signal = standing.names.ownSignals.get(name) ?? signalOf(name);
  if (typing.where === 'key') {
    const { header } = standing.study.memo.header;
    const members =
      signal?.by === 'cylinder' && header.cylinders !== undefined
        ? Array.from({ length: Math.min(header.cylinders, 24) }, (_, at) => `${at + 1}`)
        : [];
    return [
      ...members
        .filter((each) => !typing.siblings.includes(each))
        .map((each, at) => ({ ...offer('member', each, 'cylinder', whole), newText: `${each}: `, rank: at })),
      ...measuredOffers(typing, whole),
    ];
  }
  const missing = absences.map((each) => ({ ...offer('word', each, 'no value, and why', whole), rank: 9 }));
  if (signal !== undefined && signal.holds !== 'quantity') {
    return [...(signal.words ?? []).map((word) => offer('word', word, signal.meaning, whole)), ...missing];
  }
  const units = completeUnit(typing, unitsOf(signal), signal !== undefined);
  return units.length > 0 ? units : /^\s*\d/.test(typing.before) ? [] : missing;
}

function measuredOffers({ siblings }: Typing, span: Span): readonly Completion[] {
  return [
    ['value', 'what was measured'],
    ['tool', 'the instrument'],
    ['at', 'where on the car'],
    ['saw', 'what the needle did'],
  ]
    .filter(([key = '']) => !siblings.includes(key))
    .map(([key = '', meaning = '']) => ({
      ...offer('key', key, meaning, span),
      newText: `${key}: `,
      rank: 50,
    }));
}

/** The trade's states, and the words that this case has for others. */
function stateOffers({ study }: Standing, span: Span): readonly Completion[] {
  const own = new Set<string>();
  for (const { state } of study.readings)
    if (state !== undefined && state.known === undefined) own.add(state.name);
  return [
    ...[...own].map((name) => ({ ...offer('state', name, 'of this case', span), rank: 2 })),
    ...engineStates.map(({ name, meaning, alsoCalled = [] }, at) => ({
      ...offer('state', name, meaning, span),
      rank: 10 + at,
      filter: [name, ...alsoCalled].join(' '),
    })),
  ];
}

function toolOffers({ study }: Standing, span: Span): readonly Completion[] {
  const header = study.file.cells[0]?.cell;
  const tools = header?.kind === 'diag' ? (header.tools ?? []) : [];
  return tools.map(({ key, value }) => offer('tool', key.text, value.description?.text.trim() ?? '', span));
}

/** Behind ` #` stands a remark. */
const isComment = (before: string): boolean => /(?:^|\s)#/.test(before);

import { notTaken } from '../casefile/table.ts';
import { sourceSpan, type TextNode } from '../casefile/tree.ts';
import type { Expression } from '../expression/tree.ts';
import { signalOf } from '../signals/lookup.ts';
import type { Study } from '../study/types.ts';
import type { Span } from '../text/span.ts';
import { everyNode, expressionOf } from './expressionAt.ts';
import { type Occurrence, occurrencesIn } from './occurrences.ts';
import { type Spot, spotsOf } from './spots.ts';
import { type Standing, standingOf } from './standing.ts';
import type { Thing } from './things.ts';
import type { Token, TokenModifier, TokenType } from './types.ts';

/** What the words of a cell are, in order; none overlaps another or a line's end. */
export function tokens(study: Study, cell: number): readonly Token[] {
  const standing = standingOf(study, cell);
  if (standing === undefined) return [];
  const spots = spotsOf(standing);
  const names = new Map(occurrencesIn(standing).map((each) => [each.span.start, each]));
  const found: Token[] = [...comments(standing)];
  for (const spot of spots) {
    if (spot.role === 'expression') found.push(...inExpression(standing, spot.node, names));
    else found.push(...ofSpot(standing, spot, names.get(spot.node.span.start)));
  }
  found.sort((a, b) => a.span.start - b.span.start || b.span.end - a.span.end);
  let end = 0;
  return found.filter(({ span }) => {
    if (span.start < end || span.end <= span.start) return false;
    end = span.end;
    return true;
  });
}

function ofSpot(standing: Standing, spot: Spot, name: Occurrence | undefined): readonly Token[] {
  const { node, role, under } = spot;
  switch (role) {
    case 'kind':
      return whole(standing, node, 'kind');
    case 'key':
      return whole(standing, node, 'key');
    case 'unknown key':
      return whole(standing, node, 'key', ['missing']);
    case 'title':
      return whole(standing, node, 'title');
    case 'as':
    case 'let':
    case 'column':
    case 'tool name':
    case 'channel':
      return whole(standing, node, 'name', ['defines', 'own']);
    case 'own signal':
      return whole(standing, node, 'signal', ['defines', 'own']);
    case 'heading':
      return name === undefined ? whole(standing, node, 'key') : whole(standing, node, 'name', ['own']);
    case 'tool':
      return whole(standing, node, 'name', ['own']);
    case 'member':
      return whole(standing, node, 'parameter');
    case 'signal':
    case 'signal name': {
      const own = standing.names.ownSignals.has(node.text);
      const known = own || signalOf(node.text) !== undefined;
      const free = name?.thing.kind === 'reading' && name.thing.own;
      if (free) return whole(standing, node, 'name', ['defines', 'own']);
      return whole(standing, node, 'signal', known ? (own ? ['own'] : []) : ['missing']);
    }
    case 'reading': {
      const signal = standing.names.ownSignals.get(under?.text ?? '') ?? signalOf(under?.text ?? '');
      return signal !== undefined && signal.holds !== 'quantity'
        ? whole(standing, node, 'word')
        : quantities(node);
    }
    case 'quantity':
      return quantities(node);
    case 'state':
      return whole(standing, node, 'state');
    case 'word':
      return whole(standing, node, 'word');
    case 'unit':
      return whole(standing, node, 'unit');
    case 'expression':
    case 'file':
    case 'sentence':
    case 'markdown':
    case 'text':
      return whole(standing, node, 'text');
  }
}

/** A text, a token a line, without the mark that opens a block. */
function whole(
  { text }: Standing,
  { span, style }: TextNode,
  type: TokenType,
  modifiers: readonly TokenModifier[] = [],
): readonly Token[] {
  const found: Token[] = [];
  const isBlock = style === 'literal' || style === 'folded';
  let start = span.start;
  for (const line of text.slice(span.start, span.end).split(/(\r\n|\r|\n)/)) {
    const words = line.trim();
    const at = start + line.indexOf(words);
    if (words !== '' && !(isBlock && start === span.start)) {
      found.push({ span: { start: at, end: at + words.length }, type, modifiers });
    }
    start += line.length;
  }
  return found;
}

/** Numbers and the units behind them, in a reading, a range or a limit. */
function quantities(node: TextNode): readonly Token[] {
  if (node.text === notTaken) return [{ span: node.span, type: 'word', modifiers: [] }];
  const found: Token[] = [];
  for (const part of node.text.matchAll(/([-+−]?\d[\d.]*|±|\+\/-|\.\.)|([^\s\d±.]\S*)/g)) {
    const span = sourceSpan(node, { start: part.index, end: part.index + part[0].length });
    const isWord =
      part[2] !== undefined && /^(?:at|least|most|not|taken|supported|no|reading)$/.test(part[2]);
    const type: TokenType = isWord
      ? 'word'
      : part[2] !== undefined
        ? 'unit'
        : /\d/.test(part[0])
          ? 'number'
          : 'operator';
    found.push({ span, type, modifiers: [] });
  }
  return found;
}

function inExpression(
  standing: Standing,
  node: TextNode,
  names: ReadonlyMap<number, Occurrence>,
): readonly Token[] {
  const found: Token[] = [];
  const taken: Span[] = [];
  const add = (span: Span, type: TokenType, modifiers: readonly TokenModifier[] = []): void => {
    taken.push(span);
    const place = sourceSpan(node, span);
    if (!/[\r\n]/.test(standing.text.slice(place.start, place.end)))
      found.push({ span: place, type, modifiers });
  };
  const name = (span: Span, fallback: Thing['kind']): void => {
    const thing = names.get(sourceSpan(node, span).start)?.thing;
    const { type, modifiers } = tokenOf(thing?.kind ?? fallback, thing);
    add(span, type, modifiers);
  };
  everyNode(expressionOf(standing, node), (each: Expression) => {
    switch (each.kind) {
      case 'name':
        name(each.span, 'unknown');
        break;
      case 'member':
        name(each.nameSpan, 'unknown');
        break;
      case 'call':
        name(each.nameSpan, 'function');
        for (const { nameSpan } of each.arguments) if (nameSpan !== undefined) add(nameSpan, 'parameter');
        break;
      case 'quantity':
        for (const part of numberAndUnit(node.text, each.span)) add(part.span, part.type);
        break;
      case 'text':
        add(each.span, 'text');
        break;
      case 'truth':
        add(each.span, 'word');
        break;
      default:
    }
  });
  // What is left are the words and marks of the language.
  taken.sort((a, b) => a.start - b.start);
  for (const part of node.text.matchAll(/[\p{L}_]+|[-+*/^<>=]+|\.\./gu)) {
    const span = { start: part.index, end: part.index + part[0].length };
    if (taken.some((each) => each.start < span.end && span.start < each.end)) continue;
    const place = sourceSpan(node, span);
    found.push({ span: place, type: /\p{L}/u.test(part[0]) ? 'keyword' : 'operator', modifiers: [] });
  }
  return found;
}

function numberAndUnit(text: string, span: Span): readonly { span: Span; type: TokenType }[] {
  const words = text.slice(span.start, span.end);
  const at = words.search(/[^\d\s.+\-−±/]/);
  if (at <= 0) return [{ span, type: 'number' }];
  const numberEnd = span.start + words.slice(0, at).trimEnd().length;
  return [
    { span: { start: span.start, end: numberEnd }, type: 'number' },
    { span: { start: span.start + at, end: span.end }, type: 'unit' },
  ];
}

function tokenOf(
  kind: Thing['kind'],
  thing: Thing | undefined,
): { readonly type: TokenType; readonly modifiers: readonly TokenModifier[] } {
  switch (kind) {
    case 'cell':
    case 'computed':
    case 'column':
    case 'tool':
      return { type: 'name', modifiers: ['own'] };
    case 'reading':
      return thing?.kind === 'reading' && thing.own
        ? { type: 'name', modifiers: ['own'] }
        : { type: 'signal', modifiers: [] };
    case 'own signal':
      return { type: 'signal', modifiers: ['own'] };
    case 'signal':
      return { type: 'signal', modifiers: ['missing'] };
    case 'header':
    case 'section':
    case 'field':
      return { type: 'name', modifiers: [] };
    case 'function':
      return { type: 'function', modifiers: [] };
    case 'unknown':
      return { type: 'name', modifiers: ['missing'] };
  }
}

/** Remarks: what stands behind a `#` outside of every text. */
function comments(standing: Standing): readonly Token[] {
  const { text } = standing;
  if (!text.includes('#')) return [];
  // Both go through the text in order.
  const spots = spotsOf(standing);
  let next = 0;
  const found: Token[] = [];
  for (const mark of text.matchAll(/(?<=^|\s)#[^\r\n]*/g)) {
    const start = mark.index;
    while ((spots[next]?.node.span.end ?? Number.POSITIVE_INFINITY) <= start) next++;
    const inText = (spots[next]?.node.span.start ?? Number.POSITIVE_INFINITY) <= start;
    if (!inText) found.push({ span: { start, end: start + mark[0].length }, type: 'comment', modifiers: [] });
  }
  return found;
}

import type { CheckCell } from '../../casefile/cell.ts';
import { sourceSpan, type TextNode } from '../../casefile/tree.ts';
import type { Expression } from '../../expression/tree.ts';
import { signalOf } from '../../signals/lookup.ts';
import type { TextEdit } from '../../text/edits.ts';
import type { Span } from '../../text/span.ts';
import { decodedOffset, expressionOf, isWhole, nodesAround } from '../expressionAt.ts';
import { spotAt } from '../spots.ts';
import type { Standing } from '../standing.ts';
import type { CodeFix } from '../types.ts';
import { indentAt, lineBreakIn, rewrite } from './rewrite.ts';

/** Gives a part of a check's expression a name of its own under `let`. */
export function extractName(standing: Standing, span: Span): readonly CodeFix[] {
  const { cell, index, text } = standing;
  const spot = spotAt(standing, span.start);
  if (spot?.role !== 'expression' || cell?.kind !== 'check') return [];
  const { node } = spot;
  if (!isWhole(standing, node)) return [];
  const part = partAt(standing, node, span);
  if (part === undefined) return [];
  const words = node.text.slice(part.span.start, part.span.end).replace(/\s+/g, ' ').trim();
  // Such words would have to be put in quotes.
  if (/: | #|^["'[\]{}&*!|>%@`?]/.test(words)) return [];
  const isWholeLet = spot.path[1] === 'let' && words === node.text.replace(/\s+/g, ' ').trim();
  if (isWholeLet) return [];
  const name = freeName(standing, nameFor(part));
  const entry = entryFor(standing, cell, text, `${name}: ${words}`);
  if (entry === undefined) return [];
  const edits = [entry, { span: sourceSpan(node, part.span), newText: name }];
  return [rewrite(`Give \`${shortened(words)}\` a name of its own`, index, edits, 'extract')];
}

/** The smallest computation around what is selected. A name or a number alone gains nothing by another name. */
function partAt(standing: Standing, node: TextNode, span: Span): Expression | undefined {
  const start = decodedOffset(node, span.start);
  const end = decodedOffset(node, span.end);
  return nodesAround(expressionOf(standing, node), start)
    .filter((each) => each.span.end >= end)
    .findLast(({ kind }) => kind === 'call' || kind === 'arithmetic' || kind === 'cut' || kind === 'where');
}

function nameFor(part: Expression): string {
  if (part.kind === 'call') return part.name;
  if (part.kind !== 'arithmetic') return 'part';
  switch (part.operator) {
    case '+':
      return 'sum';
    case '-':
      return 'difference';
    case '*':
    case '^':
      return 'product';
    case '/':
      return 'ratio';
  }
}

/** No other name of the cell, of a cell, or of a signal. */
function freeName({ names, index }: Standing, wanted: string): string {
  const own = new Set(names.cells[index]?.definitions.map((each) => each.name));
  const taken = (name: string): boolean =>
    own.has(name) ||
    names.prefixes.has(name) ||
    names.bare.has(name) ||
    names.ownSignals.has(name) ||
    signalOf(name) !== undefined;
  let name = wanted;
  for (let count = 2; taken(name); count++) name = `${wanted}_${count}`;
  return name;
}

/** Before the first `let`; a check without one gets it before its expectations. */
function entryFor(standing: Standing, cell: CheckCell, text: string, entry: string): TextEdit | undefined {
  const ending = standing.typed.slice(text.length);
  const lineBreak = lineBreakIn(text, ending);
  const lets = cell.node.entries.find((each) => each.key.text === 'let');
  if (lets !== undefined) {
    const [first] = lets.value.kind === 'map' && !lets.value.flow ? lets.value.entries : [];
    if (first === undefined) return undefined;
    const indent = indentAt(text, first.key.span.start);
    const at = first.key.span.start;
    return { span: { start: at, end: at }, newText: `${entry}${lineBreak}${indent}` };
  }
  const expect = cell.node.entries.find((each) => each.key.text === 'expect');
  if (expect === undefined || cell.node.flow) return undefined;
  const at = expect.key.span.start;
  return { span: { start: at, end: at }, newText: `let:${lineBreak}  ${entry}${lineBreak}` };
}

const shortened = (words: string): string => (words.length > 40 ? `${words.slice(0, 40)}…` : words);

import { sourceSpan, type TextNode } from '../casefile/tree.ts';
import { noteMarkdown } from '../casefile/writeNote.ts';
import { stateWords } from '../report/cells/readingsCell.ts';
import { signOf } from '../report/verdictLine.ts';
import type { Reading, Study } from '../study/types.ts';
import { cover, type Span } from '../text/span.ts';
import { entrySpan, type Spot, spotsOf } from './spots.ts';
import { computedAt, type Standing, standingOf } from './standing.ts';
import type { CellSymbol, SymbolKind } from './types.ts';
import { valueWords } from './valueWords.ts';

/** The outline of a cell: its title, and what it defines. Nothing for a cell without words. */
export function symbols(study: Study, cell: number): readonly CellSymbol[] {
  const standing = standingOf(study, cell);
  if (standing === undefined) return [];
  const spots = spotsOf(standing);
  const kind = spots.find((each) => each.role === 'kind');
  if (kind === undefined) return [];
  const whole: Span = { start: 0, end: standing.text.length };
  const { name, nameSpan, detail } = titleOf(standing, kind);
  // A note is called by its first line, which mostly is its first heading.
  const children = childrenOf(standing, spots).filter(
    (each, at) => at > 0 || each.kind !== 'note heading' || each.name !== name,
  );
  if (name === '' && children.length === 0) return [];
  return [
    { name: name === '' ? kind.node.text : name, detail, kind: 'cell', span: whole, nameSpan, children },
  ];
}

function titleOf(
  { cell }: Standing,
  kind: Spot,
): { readonly name: string; readonly nameSpan: Span; readonly detail: string } {
  const { text, span } = kind.node;
  const value = kind.value?.kind === 'text' ? kind.value : undefined;
  const named = { name: oneLine(value), nameSpan: value?.span ?? span, detail: text };
  if (cell?.kind === 'diag') {
    return { name: oneLine(cell.case), nameSpan: cell.case?.span ?? span, detail: 'the case' };
  }
  if (cell?.kind === 'note') {
    const first = noteMarkdown(cell)
      .split('\n')
      .find((line) => line.trim() !== '');
    return { ...named, name: (first ?? '').replace(/^#+\s*/, '').trim(), detail: text };
  }
  const as = cell !== undefined && 'as' in cell ? cell.as?.text : undefined;
  const state = cell !== undefined && 'state' in cell ? stateWords(cell.state).join('') : '';
  return {
    ...named,
    detail: [text, ...(as === undefined ? [] : [as]), ...(state === '' ? [] : [state])].join(', '),
  };
}

const oneLine = (node: TextNode | undefined): string => node?.text.replace(/\s+/g, ' ').trim() ?? '';

function childrenOf(standing: Standing, spots: readonly Spot[]): readonly CellSymbol[] {
  const { study, index, facts } = standing;
  const found: CellSymbol[] = [];
  const add = (kind: SymbolKind, name: string, detail: string, span: Span, nameSpan: Span): void => {
    found.push({ kind, name, detail, span, nameSpan, children: [] });
  };
  for (const group of byKey(facts?.readings ?? [])) {
    const [first] = group;
    if (first === undefined) continue;
    const detail = group.map((each) => valueWords(each.value)).join(', ');
    const span = group.reduce((so, each) => cover(so, each.valueSpan), first.keySpan);
    add('reading', first.key, detail, span, first.keySpan);
  }
  for (const spot of spots) {
    const { role, node, value, path } = spot;
    if (role === 'let' && value !== undefined) {
      const computed = computedAt(study, index, node.text);
      const detail = computed === undefined ? '' : valueWords(computed.value);
      add('computed', node.text, detail, entrySpan(node, value), node.span);
    } else if (role === 'tool name' || role === 'own signal') {
      const kind = role === 'tool name' ? 'tool' : 'signal';
      add(kind, node.text, '', value === undefined ? node.span : entrySpan(node, value), node.span);
    } else if (role === 'sentence' && path[1] === 'consider' && path[2] === 'name') {
      const standingWord = study.suspects.find(
        (each) => each.cell === index && each.name === node.text.trim(),
      );
      add('suspect', oneLine(node), standingWord?.standing ?? '', node.span, node.span);
    } else if (role === 'markdown') found.push(...headings(node));
  }
  for (const { cell, span, text, truth, part } of study.expectations) {
    if (cell !== index || (part !== 'expect' && part !== 'verify')) continue;
    add('expectation', text, `${signOf(truth.verdict)} ${truth.verdict}`, span, span);
  }
  return found.sort((a, b) => a.span.start - b.span.start);
}

/** A row of a table is one entry, whatever the number of its states; so is each value of bytes that hold several. A test's result is no reading. */
function byKey(readings: readonly Reading[]): Iterable<readonly Reading[]> {
  const groups = new Map<string, Reading[]>();
  for (const reading of readings) {
    if (reading.from === 'test') continue;
    const place = `${reading.keySpan.start} ${reading.key}`;
    const group = groups.get(place);
    if (group === undefined) groups.set(place, [reading]);
    else group.push(reading);
  }
  return groups.values();
}

/** The headings of a note. */
function headings(node: TextNode): readonly CellSymbol[] {
  const found: CellSymbol[] = [];
  let fenced = false;
  let at = 0;
  for (const line of node.text.split('\n')) {
    if (/^\s{0,3}(```|~~~)/.test(line)) fenced = !fenced;
    const words = fenced ? undefined : /^ {0,3}(#{1,6})\s+(.+?)\s*#*$/.exec(line)?.[2];
    if (words !== undefined) {
      const span = sourceSpan(node, { start: at, end: at + line.length });
      found.push({ kind: 'note heading', name: words, detail: '', span, nameSpan: span, children: [] });
    }
    at += line.length + 1;
  }
  return found;
}

import { type ChartKind, chartKinds, isChartKind } from '../casefile/kinds/chartKinds.ts';
import { describeHolds } from '../casefile/kinds/describe.ts';
import type { Key } from '../casefile/kinds/key.ts';
import { kindOf } from '../casefile/kinds/kinds.ts';
import { sourceSpan, type TextNode } from '../casefile/tree.ts';
import type { Code, Diagnostic } from '../diagnostics/diagnostic.ts';
import { rowOf } from '../diagnostics/pages.ts';
import { structureOf } from '../engine/obd/troubleCode.ts';
import type { Expression } from '../expression/tree.ts';
import type { Kind } from '../quantity/types.ts';
import { languageWord } from '../report/languageWords.ts';
import { blockAsMarkdown } from '../report/markdown/blocks.ts';
import { codeSpan, escapeMarkdown } from '../report/markdown/escape.ts';
import { codePage, signalPage, unitPage } from '../report/pages.ts';
import { suspectLine } from '../report/suspectLine.ts';
import { verdictLine } from '../report/verdictLine.ts';
import { signalOf } from '../signals/lookup.ts';
import type { Reading, Study } from '../study/types.ts';
import { contains, type Span } from '../text/span.ts';
import { answerHover } from './answerHover.ts';
import { partsOf } from './cellParts.ts';
import { decodedOffset, expressionOf, nodesAround } from './expressionAt.ts';
import { computedPage, namePage, stateWords } from './namePage.ts';
import { occurrenceAt } from './occurrences.ts';
import { secondUnit } from './otherUnit.ts';
import { pageMarkdown, paragraphs } from './pageMarkdown.ts';
import { readingPage } from './readingPage.ts';
import { type Spot, spotAt } from './spots.ts';
import { type Standing, standingOf } from './standing.ts';
import { kindAt } from './typedAt.ts';
import type { Hover, UnitPreference } from './types.ts';
import { typeOf, writtenIn } from './writtenIn.ts';

/** What stands at an offset, and what is wrong there. */
export function hover(
  study: Study,
  cell: number,
  offset: number,
  units: UnitPreference = 'as written',
): Hover | undefined {
  const standing = standingOf(study, cell);
  if (standing === undefined) return undefined;
  const about = hoverOf(standing, offset, units);
  const wrong = diagnosticsAt(study, cell, offset);
  const markdown = paragraphs([about?.markdown, ...wrong.map(whyReported)]);
  const span = about?.span ?? wrong[0]?.span;
  return markdown === '' || span === undefined ? undefined : { span, markdown };
}

function hoverOf(standing: Standing, offset: number, units: UnitPreference): Hover | undefined {
  const spot = spotAt(standing, offset);
  if (spot === undefined) return undefined;
  if (spot.role === 'expression') return inExpression(standing, spot, offset, units);
  if (spot.role === 'text' && spot.path[1] === 'obd') return answerHover(standing, offset, units);
  const markdown = ofSpot(standing, spot, units);
  return markdown === '' ? undefined : { span: spot.node.span, markdown };
}

function ofSpot(standing: Standing, spot: Spot, units: UnitPreference): string {
  const { node, role, key } = spot;
  switch (role) {
    case 'kind': {
      const kind = kindOf(node.text);
      if (kind === undefined) return '';
      const keys = Object.keys(kind.keys).map(codeSpan).join(', ');
      return paragraphs([`**${codeSpan(node.text)}** ${escapeMarkdown(kind.meaning)}`, `*Keys:* ${keys}`]);
    }
    case 'key':
      return key === undefined
        ? ''
        : paragraphs([keyPage(node.text, key), headerValue(standing, spot, units)]);
    case 'word':
    case 'quantity': {
      if (key === undefined || spot.under === undefined) return '';
      return role === 'word' && isChartKind(node.text)
        ? chartWords(node.text)
        : keyPage(spot.under.text, key);
    }
    case 'signal': {
      const readings = readingsOf(standing, spot);
      const signal = standing.names.ownSignals.get(node.text) ?? signalOf(node.text);
      const page = signal === undefined ? '' : pageMarkdown(signalPage(signal));
      const only = readings.length === 1 ? readings[0] : undefined;
      return only === undefined || page !== '' ? page : readingPage(only, standing.text, units);
    }
    case 'reading':
    case 'member': {
      const [reading] = readingsOf(standing, spot);
      const member = memberOf(spot);
      return reading === undefined ? '' : readingPage(reading, standing.text, units, member);
    }
    case 'let':
      return computedPage(standing, standing.index, node.text, units);
    case 'state':
      return stateWords(node.text);
    case 'unit': {
      const page = unitPage(node.text.split(/\s/)[0] ?? '');
      return page === undefined ? '' : pageMarkdown(page);
    }
    case 'as':
    case 'column':
    case 'heading':
    case 'tool name':
    case 'tool':
    case 'own signal':
    case 'channel':
    case 'signal name': {
      const at = occurrenceAt(standing, node.span.start);
      return at === undefined ? '' : namePage(standing, at, units);
    }
    case 'sentence': {
      const { suspects } = partsOf(standing.study, standing.index);
      const suspect = suspects.find((each) => spot.path[2] === 'name' && each.name === node.text.trim());
      return suspect === undefined ? '' : blockAsMarkdown(suspectLine(suspect), 2);
    }
    case 'title':
    case 'unknown key':
    case 'expression':
    case 'file':
    case 'markdown':
      return '';
    case 'text': {
      const structure = spot.path[1] === 'codes' ? structureOf(node.text.trim()) : undefined;
      return structure === undefined ? '' : pageMarkdown(codePage(structure));
    }
  }
}

/** A kind of chart; its row is Markdown already. */
function chartWords(kind: ChartKind): string {
  const { shows, takes } = chartKinds[kind];
  return paragraphs([`**${codeSpan(kind)}** ${shows}`, `*Takes* ${takes}`]);
}

/** A key: what it is for, what it takes, and an example. */
export function keyPage(name: string, key: Key): string {
  return paragraphs([
    `**${codeSpan(name)}** ${escapeMarkdown(key.meaning)}`,
    `*Takes* ${describeHolds(key.holds)}${key.required === true ? '; it must be there' : ''}`,
    key.example === '' || key.example.includes('\n') ? '' : `*Such as* ${codeSpan(key.example)}`,
  ]);
}

/** A header's value is a reading of its own. */
function headerValue(standing: Standing, { node }: Spot, units: UnitPreference): string {
  const at = occurrenceAt(standing, node.span.start);
  return at?.thing.kind === 'header' ? namePage(standing, at, units) : '';
}

/** The readings that a key or a value of `values`, `marks` or a table stands for. */
export function readingsOf(
  { facts }: Standing,
  { role, node, under, column, path }: Spot,
): readonly Reading[] {
  const key = role === 'signal' ? node.text : (under?.text ?? path[path.length - 1] ?? '');
  const all = (facts?.readings ?? []).filter((each) => each.key === key);
  if (role === 'signal') return all.filter(({ keySpan }) => keySpan.start === node.span.start);
  const inColumn = all.filter((each) => each.column === column || each.valueSpan.start === node.span.start);
  return inColumn.length > 1
    ? inColumn.filter(({ valueSpan }) => contains(valueSpan, node.span.start))
    : inColumn;
}

/** The cylinder or label that a value of a map belongs to. */
function memberOf({ role, node, path, under }: Spot): string | undefined {
  if (role === 'member') return node.text;
  const last = path[path.length - 1];
  return last === under?.text ? undefined : last;
}

function inExpression(
  standing: Standing,
  spot: Spot,
  offset: number,
  units: UnitPreference,
): Hover | undefined {
  const { node } = spot;
  const name = occurrenceAt(standing, offset);
  if (name !== undefined && contains(node.span, name.span.start)) {
    const markdown = namePage(standing, name, units);
    if (markdown !== '') return { span: name.span, markdown };
  }
  const expression = expressionOf(standing, node);
  const around = nodesAround(expression, decodedOffset(node, offset));
  const literal = around[around.length - 1];
  if (literal?.kind === 'quantity') {
    return literalHover(node, literal, kindAt(standing, expression, literal), units);
  }
  const markdown = paragraphs([wordPage(standing.text, offset), outcomeOf(standing, spot, units)]);
  return markdown === '' ? undefined : { span: node.span, markdown };
}

/** The word of the language that stands at an offset. */
function wordPage(text: string, offset: number): string {
  const before = /\p{L}*$/u.exec(text.slice(0, offset))?.[0] ?? '';
  const after = /^\p{L}*/u.exec(text.slice(offset))?.[0] ?? '';
  const row = languageWord(before + after);
  if (row === undefined) return '';
  return paragraphs([
    `**${row.words.join(' … ')}** ${escapeMarkdown(row.meaning)}`,
    `*Such as* ${codeSpan(row.example)}`,
  ]);
}

/** What the expression as a whole comes to: a verdict, or a computed name. */
function outcomeOf(standing: Standing, { node, path }: Spot, units: UnitPreference): string {
  const { study, index } = standing;
  if (path[1] === 'let') return computedPage(standing, index, path[2] ?? '', units);
  const expectation = partsOf(study, index).expectations.find(({ span }) => span.start === node.span.start);
  return expectation === undefined ? '' : blockAsMarkdown(verdictLine(expectation), 2);
}

/** A number as written, in the other unit. */
function literalHover(
  node: TextNode,
  { quantity, span }: Expression & { readonly kind: 'quantity' },
  kind: Kind | undefined,
  units: UnitPreference,
): Hover {
  const type = typeOf(quantity, kind);
  const written = node.text.slice(span.start, span.end);
  // Without a known kind nobody can say whether 5 °C is a point or a difference.
  const unit = kind === undefined ? undefined : secondUnit(type, units);
  const other = unit === undefined ? undefined : writtenIn(unit, quantity, kind, written);
  const page = unitPage(quantity.unit.symbol);
  const place: Span = sourceSpan(node, span);
  const words = `**${escapeMarkdown(written)}**${other === undefined ? '' : ` = ${escapeMarkdown(other)}`}`;
  return { span: place, markdown: paragraphs([words, page === undefined ? '' : escapeMarkdown(page.title)]) };
}

/** What was found at an offset of a cell. */
function diagnosticsAt(study: Study, cell: number, offset: number): readonly Diagnostic[] {
  return partsOf(study, cell).findings.filter((each) => contains(each.span, offset));
}

/** A finding's page in short: its heading and why it is reported. The message is shown by the editor itself. */
function whyReported({ code }: Diagnostic): string {
  const { title, why } = rowOf(code as Code);
  return `${codeSpan(code)} ${escapeMarkdown(title)}. ${escapeMarkdown(why)}`;
}

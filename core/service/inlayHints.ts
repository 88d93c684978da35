import type { TextNode } from '../casefile/tree.ts';
import { decimalsWritten } from '../report/figure.ts';
import { measuredWords, verdictLine } from '../report/verdictLine.ts';
import type { Expectation, Study } from '../study/types.ts';
import { contains, type Span } from '../text/span.ts';
import { answerHints } from './answerHints.ts';
import { partsOf } from './cellParts.ts';
import { readingsOf } from './hover.ts';
import { type Spot, spotsOf } from './spots.ts';
import { computedAt, type Standing, standingOf } from './standing.ts';
import type { InlayHint, UnitPreference } from './types.ts';
import { otherWords, ownWords } from './valueWords.ts';

/** What stands beside the text: a reading in the other unit, a computed value, a verdict. Tables are left as they are set. */
export function inlayHints(
  study: Study,
  cell: number,
  within?: Span,
  units: UnitPreference = 'as written',
): readonly InlayHint[] {
  const standing = standingOf(study, cell);
  if (standing === undefined) return [];
  const expectations = partsOf(study, cell).expectations;
  const isWithin = (offset: number): boolean => within === undefined || contains(within, offset);
  return spotsOf(standing).flatMap((spot) => {
    if (spot.role === 'text' && spot.path[1] === 'obd')
      return answerHints(standing, spot.node.span).filter(({ offset }) => isWithin(offset));
    return isWithin(spot.node.span.end) ? (hintOf(standing, spot, expectations, units) ?? []) : [];
  });
}

function hintOf(
  standing: Standing,
  spot: Spot,
  expectations: readonly Expectation[],
  units: UnitPreference,
): InlayHint | undefined {
  const { role, node, path } = spot;
  if (role === 'reading') return path[1] === 'table' ? undefined : otherUnitHint(standing, spot, units);
  if (role !== 'expression') return undefined;
  if (path[1] === 'let') return valueHint(standing, node, path[2] ?? '');
  const expectation = expectations.find(({ span }) => span.start === node.span.start);
  return expectation === undefined ? undefined : verdictHint(node, expectation);
}

function otherUnitHint(standing: Standing, spot: Spot, units: UnitPreference): InlayHint | undefined {
  const [reading] = readingsOf(standing, spot);
  if (reading?.value.kind !== 'one' || reading.valueSpan.start !== spot.node.span.start) return undefined;
  const { amount, type } = reading.value;
  const text = otherWords(amount, type, units, decimalsWritten(spot.node.text));
  if (text === undefined) return undefined;
  return {
    offset: end(spot.node),
    text,
    kind: 'other unit',
    tooltip: `${reading.fullName} in the other unit`,
  };
}

function valueHint(standing: Standing, node: TextNode, name: string): InlayHint | undefined {
  const computed = computedAt(standing.study, standing.index, name);
  if (computed === undefined || computed.text === '') return undefined;
  const { value, from } = computed;
  const words = value.kind === 'absent' ? value.status : ownWords(value);
  const why = value.kind === 'absent' ? value.why : from.length === 0 ? '' : `from ${from.join(', ')}`;
  return { offset: end(node), text: `= ${shortened(words)}`, kind: 'value', tooltip: why };
}

function verdictHint(node: TextNode, expectation: Expectation): InlayHint {
  const { sign, word, why } = verdictLine(expectation);
  const measured = measuredWords(expectation.truth);
  const tooltip = [measured, why ?? ''].filter((each) => each !== '').join('; ');
  return { offset: end(node), text: `${sign} ${word}`, kind: 'verdict', tooltip };
}

/** The end of a block's text is that of its last line. */
const end = (node: TextNode): number => node.span.end;

const longest = 60;

const shortened = (words: string): string => (words.length > longest ? `${words.slice(0, longest)}…` : words);

import { parseExpression } from '../expression/parse.ts';
import type { Truth, Verdict } from '../expression/value.ts';
import type { Expectation } from '../study/types.ts';
import type { Sign, VerdictLine } from './blocks.ts';
import { distanceFigure, figureOf, inWords } from './figure.ts';

const signs: Readonly<Record<Verdict, Sign>> = {
  holds: '✓',
  fails: '✗',
  'too close to call': '≈',
  'not measured': '–',
  'cannot compute': '?',
};

/** The sign that stands beside the word; never without it. */
export function signOf(verdict: Verdict): Sign {
  return signs[verdict];
}

/** An expectation as a sentence: what was measured, how far from the limit, and whether it holds. */
export function verdictLine(expectation: Expectation): VerdictLine {
  const { truth, text } = expectation;
  return {
    kind: 'verdict',
    text,
    sign: signOf(truth.verdict),
    measured: measuredWords(truth, text),
    word: truth.verdict,
    remark: remark(expectation),
    why: truth.why,
    ifFails: truth.verdict === 'fails' ? expectation.ifFails : undefined,
    from: expectation.from,
  };
}

function remark({ part, showsFault, truth }: Expectation): string | undefined {
  if (part === 'verify' && truth.verdict !== 'holds') return 'so the repair is not proven';
  if (showsFault && truth.verdict === 'fails') return 'this is the fault showing, as the author means it to';
  return undefined;
}

/** "cylinder 3: 19.8 ± 0.2 inHg, 0.5 below the limit (20.3 inHg)". Empty when nothing was compared. */
export function measuredWords(truth: Truth, text: string): string {
  const { left, margin, marginType, marginUncertainty, limit, member } = truth;
  const who = member === undefined ? '' : `${/^\d+$/.test(member) ? `cylinder ${member}` : member}: `;
  if (left === undefined) return who === '' ? '' : who.slice(0, -2);
  const unit = left.type.unit.symbol;
  const value = inWords(figureOf(left.amount, left.type), unit);
  if (margin === undefined || marginType === undefined) return `${who}${value}`;
  const marginUnit = marginType.unit.symbol;
  const distance = distanceFigure(Math.abs(margin), marginType, marginUncertainty);
  const side = sideOf(text, margin);
  const bracket = limit === undefined ? '' : ` (${limit})`;
  const isZero = distance.number === undefined || Number(distance.number) === 0;
  if (isZero) return `${who}${value}, at the limit${bracket}`;
  return `${who}${value}, ${inWords(distance, marginUnit === unit ? '' : marginUnit)} ${side} the limit${bracket}`;
}

/** A comparison has an above and a below; every other limit has an inside and an outside. */
function sideOf(text: string, margin: number): string {
  const tree = parseExpression(text).value;
  if (tree.kind !== 'comparison') return margin > 0 ? 'inside' : 'outside';
  const below = tree.relation === '<' || tree.relation === '<=';
  return below === margin > 0 ? 'below' : 'above';
}

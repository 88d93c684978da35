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

/** So much of an expression is shown; more is no expression that a person wrote. */
const longestText = 300;

/** An expectation as a sentence: what was measured, how far from the limit, and whether it holds. */
export function verdictLine(expectation: Expectation): VerdictLine {
  const { truth, text } = expectation;
  return {
    kind: 'verdict',
    text: text.length > longestText ? `${text.slice(0, longestText)}…` : text,
    sign: signOf(truth.verdict),
    measured: measuredWords(truth),
    word: truth.verdict,
    remark: remark(expectation),
    why: truth.why,
    ifFails: truth.verdict === 'fails' ? expectation.ifFails : undefined,
    // What the expression names itself is not said again.
    from: expectation.from.filter((name) => !text.includes(name)),
  };
}

function remark({ part, showsFault, truth }: Expectation): string | undefined {
  if (part === 'verify' && truth.verdict !== 'holds') return 'so the repair is not proven';
  if (showsFault && truth.verdict === 'fails') return 'and shows the fault as the author means it to';
  return undefined;
}

/** "cylinder 3: 19.8 ± 0.2 inHg, 0.5 below the limit of 20.3 inHg". Empty when nothing was compared. */
export function measuredWords(truth: Truth): string {
  const { left, member } = truth;
  const who = member === undefined ? '' : /^\d+$/.test(member) ? `cylinder ${member}` : member;
  if (left === undefined) return who;
  const unit = left.type.unit.symbol;
  const value = inWords(figureOf(left.amount, left.type), unit);
  return `${who === '' ? '' : `${who}: `}${value}${distanceWords(truth, unit)}`;
}

/** ", 0.5 below the limit of 20.3 inHg"; the unit is not said twice. */
function distanceWords({ margin, marginType, marginUncertainty, limit }: Truth, unit: string): string {
  if (margin === undefined || marginType === undefined || limit === undefined) return '';
  const distance = distanceFigure(margin, marginType, marginUncertainty);
  const atLimit = Number(distance.number) === 0;
  const apart = inWords(distance, marginType.unit.symbol === unit ? '' : marginType.unit.symbol);
  const [, relation, than] = /^(below|at most|above|at least) (.*)$/s.exec(limit) ?? [];
  if (relation !== undefined && than !== undefined) {
    const wantsBelow = relation === 'below' || relation === 'at most';
    const side = wantsBelow === margin > 0 ? 'below' : 'above';
    return atLimit ? `, at the limit of ${than}` : `, ${apart} ${side} the limit of ${than}`;
  }
  if (atLimit) return `, at the limit (${limit})`;
  const [, not, range] = /^(outside |more than )?(.*)$/s.exec(limit) ?? [];
  const side = (not === undefined) === margin > 0 ? 'inside' : 'outside';
  return `, ${apart} ${side} ${range ?? limit}`;
}

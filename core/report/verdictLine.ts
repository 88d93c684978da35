import type { Truth, Verdict } from '../expression/value.ts';
import type { QuantityType, Unit } from '../quantity/types.ts';
import { unitOf } from '../quantity/unit.ts';
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
    why: reasonOf(truth),
    ifFails: truth.verdict === 'fails' ? expectation.ifFails : undefined,
    // What the expression names itself is not said again.
    from: expectation.from.filter((name) => !text.includes(name)),
  };
}

/** Why there is no answer, to stand within a sentence, whose own full stop comes behind it. */
export function reasonOf({ why }: Truth): string | undefined {
  return why?.trim().replace(/\.$/, '');
}

function remark({ part, showsFault, truth }: Expectation): string | undefined {
  if (part === 'verify' && truth.verdict !== 'holds') return 'so the repair is not proven';
  if (showsFault && truth.verdict === 'fails') return 'and shows the fault as the author means it to';
  return undefined;
}

/** "cylinder 3: 19.8 ± 0.2 inHg, 0.5 inHg below the limit of 20.3 inHg". Empty when nothing was compared. */
export function measuredWords(truth: Truth): string {
  const { left, member } = truth;
  const who = member === undefined ? '' : /^\d+$/.test(member) ? `cylinder ${member}` : member;
  if (left === undefined) return who;
  const value = inWords(figureOf(left.amount, left.type), left.type.unit.symbol);
  return `${who === '' ? '' : `${who}: `}${value}${distanceWords(truth)}`;
}

/** ", 0.5 inHg below the limit of 20.3 inHg": the distance as the limit is read, in the limit's own unit. */
function distanceWords({ margin, marginType, marginUncertainty, limit }: Truth): string {
  if (margin === undefined || marginType === undefined || limit === undefined) return '';
  const unit = unitOfLimit(limit, marginType);
  const other = unit.symbol !== marginType.unit.symbol;
  const distance = distanceFigure(margin, { ...marginType, unit }, marginUncertainty, other);
  const atLimit = Number(distance.number) === 0;
  const apart = inWords(distance, unit.symbol);
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

/** The first unit that stands behind a number of the limit and measures the same: of "2 % of 29.6 inHg" that is inHg. */
function unitOfLimit(limit: string, { dimension, unit }: QuantityType): Unit {
  for (const [, symbol = ''] of limit.matchAll(behindNumber)) {
    const found = unitOf(symbol);
    if (found !== undefined && found.dimension === dimension) return found;
  }
  return unit;
}

const behindNumber = /\d (?!±|\.\.|of )(\S+)/g;

import { halfWidth, linear, measured, multiply, scale, subtract } from '../quantity/amount.ts';
import { differenceOf } from '../quantity/kinds.ts';
import type { Amount, QuantityType } from '../quantity/types.ts';
import { absentOf, cannotCompute, notMeasured, undecided, worse } from './absent.ts';
import { memberOf, sayMember } from './combine.ts';
import { quantityOf, sayLimit } from './sayLimit.ts';
import { indexAt, sampleAt } from './series.ts';
import type { Relation } from './tree.ts';
import type { Comparing } from './typed.ts';
import type { Absent, Members, Range, Series, Truth, Value, Verdict } from './value.ts';

/** How far a statement is inside its limit, in SI units, and what that makes it. */
export interface Decision {
  readonly verdict: Verdict;
  readonly margin: number;
  readonly uncertainty: number;
}

/** A statement about numbers: from its operands to a decision. */
export type Test = (operands: readonly Amount[]) => Decision;

/** Margins up to this share of the largest operand are the computer's last digits, and count as 0. */
const negligible = 1e-12;

/** The verdict of a margin: it must be beyond its uncertainty; without one a strict relation needs more than 0. */
function decision(margin: number, uncertainty: number, largest: number, strict: boolean): Decision {
  const least = negligible * largest;
  const m = Math.abs(margin) <= least ? 0 : margin;
  const u = uncertainty <= least ? 0 : uncertainty;
  let verdict: Verdict;
  if (Number.isNaN(m)) verdict = 'cannot compute';
  else if (u === 0) verdict = (strict ? m > 0 : m >= 0) ? 'holds' : 'fails';
  else verdict = m - u > least ? 'holds' : -m - u > least ? 'fails' : 'too close to call';
  return { verdict, margin: m, uncertainty: u };
}

export function relationTest(relation: Relation): Test {
  const strict = relation === '<' || relation === '>';
  const rises = relation === '<' || relation === '<=';
  return (operands) => {
    // By index: taking an array apart goes through its iterator, which costs more than the comparison.
    const a = operands[0] ?? nothing;
    const b = operands[1] ?? nothing;
    const margin = rises ? subtract(b, a) : subtract(a, b);
    return decision(margin.si, halfWidth(margin), Math.max(Math.abs(a.si), Math.abs(b.si)), strict);
  };
}

/** Both limits belong to the range, and both must be met. */
export const betweenTest: Test = ([x = nothing, low = nothing, high = nothing]) =>
  tighter(limitDecision(x, low, 1), limitDecision(x, high, -1));

/**
 * Of two limits the one that decides: that with the verdict which counts first, as between the halves of `and`;
 * of equal ones that with the smaller margin. An uncertain limit farther off can leave open what a near, exact one does not.
 */
export function tighter(below: Decision, above: Decision): Decision {
  const before = rank(above.verdict) - rank(below.verdict);
  return before < 0 || (before === 0 && above.margin < below.margin) ? above : below;
}

/** x inside a low (1) or a high (-1) limit. */
export function limitDecision(x: Amount, limit: Amount, sign: 1 | -1): Decision {
  const margin = sign === 1 ? subtract(x, limit) : subtract(limit, x);
  return decision(margin.si, halfWidth(margin), Math.max(Math.abs(x.si), Math.abs(limit.si)), false);
}

/** t − |a − b|, with t a share of b when it is relative. At a = b the slope has no sign: u(a − b) + u(t). */
export function withinTest(relative: boolean): Test {
  return ([a = nothing, tolerance = nothing, b = nothing]) => {
    const t = relative ? multiply(tolerance, b.si < 0 ? scale(b, -1) : b) : tolerance;
    const apart = subtract(a, b);
    const margin = linear(t.si - Math.abs(apart.si), [
      [1, t],
      [apart.si < 0 ? 1 : -1, apart],
    ]);
    const largest = Math.max(Math.abs(a.si), Math.abs(b.si), Math.abs(t.si));
    const same = Math.abs(apart.si) <= negligible * largest;
    const u = same ? halfWidth(apart) + halfWidth(t) : halfWidth(margin);
    return decision(margin.si, u, largest, false);
  };
}

export function negated(test: Test): Test {
  return (operands) => deny(test(operands));
}

function deny({ verdict, margin, uncertainty }: Decision): Decision {
  return { verdict: oppositeOf(verdict), margin: -margin + 0, uncertainty };
}

function oppositeOf(verdict: Verdict): Verdict {
  return verdict === 'holds' ? 'fails' : verdict === 'fails' ? 'holds' : verdict;
}

const nothing: Amount = { si: Number.NaN, spread: [] };

/** A comparison with its operands' values. */
export interface Statement {
  readonly operands: readonly Value[];
  readonly test: Test;
  readonly node: Comparing;
  /** The limits of `x in spec`, which are no operands: either may be open. */
  readonly range: Range | undefined;
}

/**
 * The verdict on single values, on members and on samples: it holds if all hold;
 * otherwise the first member or sample with the verdict that counts is named.
 */
export function decide(statement: Statement): Truth {
  const { operands } = statement;
  let shape: Members | Series | undefined;
  let plain = true;
  for (const operand of operands) {
    if (operand.kind === 'members' || operand.kind === 'series') shape ??= operand;
    if (operand.kind !== 'one') plain = false;
  }
  if (plain) {
    const amounts = operands.map(amountOfOne);
    return truth(statement, amounts, statement.test(amounts), undefined);
  }
  const absent = absentOf(operands);
  if (absent !== undefined) return undecided(absent);
  if (shape === undefined) return undecided(cannotCompute('it is no number'));
  return shape.kind === 'members' ? byMember(statement, shape) : bySample(statement, shape);
}

function amountOfOne(value: Value): Amount {
  return value.kind === 'one' ? value.amount : nothing;
}

/** The order in which verdicts count where all must hold. */
export const verdictRank: readonly Verdict[] = [
  'fails',
  'cannot compute',
  'not measured',
  'too close to call',
  'holds',
];

function byMember(statement: Statement, shape: Members): Truth {
  const names = new Set<string>();
  for (const operand of statement.operands) {
    if (operand.kind === 'members') for (const name of operand.members.keys()) names.add(name);
  }
  let deciding: Truth | undefined;
  for (const name of names) {
    const amounts: Amount[] = [];
    let absent: Absent | undefined;
    for (const operand of statement.operands) {
      const amount = operand.kind === 'members' ? memberOf(operand, name) : amountOf(operand);
      if ('si' in amount) amounts.push(amount);
      else absent = worse(absent, amount);
    }
    const found =
      absent === undefined
        ? truth(statement, amounts, statement.test(amounts), name)
        : { ...undecided(absent), member: name, why: `${sayMember(shape.by, name)}: ${absent.why}` };
    if (deciding === undefined || rank(found.verdict) < rank(deciding.verdict)) deciding = found;
  }
  return deciding ?? undecided(notMeasured('it has no members'));
}

function rank(verdict: Verdict): number {
  return verdictRank.indexOf(verdict);
}

function bySample(statement: Statement, shape: Series): Truth {
  let deciding: Decision | undefined;
  let amountsThere: readonly Amount[] = [];
  let when = 0;
  for (let i = 0; i < shape.time.length; i++) {
    const time = shape.time[i] ?? Number.NaN;
    const amounts = amountsAt(statement.operands, time, i);
    if (amounts === undefined) continue;
    const found = statement.test(amounts);
    if (deciding !== undefined && rank(found.verdict) >= rank(deciding.verdict)) continue;
    deciding = found;
    amountsThere = amounts;
    when = time;
    if (found.verdict === 'fails') break;
  }
  if (deciding === undefined) return undecided(cannotCompute('there are no samples there'));
  return truth(statement, amountsThere, deciding, `${Number(when.toPrecision(6))} s`);
}

/** The operands at one moment; undefined where one of them has no sample. */
export function amountsAt(operands: readonly Value[], time: number, guess: number): Amount[] | undefined {
  const amounts: Amount[] = [];
  for (const operand of operands) {
    if (operand.kind === 'series') {
      const index = indexAt(operand, time, guess);
      const amount = index < 0 ? nothing : sampleAt(operand, index);
      if (Number.isNaN(amount.si)) return undefined;
      amounts.push(amount);
    } else {
      const amount = amountOf(operand);
      if (!('si' in amount)) return undefined;
      amounts.push(amount);
    }
  }
  return amounts;
}

function amountOf(value: Value): Amount | Absent {
  return value.kind === 'one' ? value.amount : cannotCompute('it is not one number');
}

function truth(
  statement: Statement,
  amounts: readonly Amount[],
  decision: Decision,
  member: string | undefined,
): Truth {
  return new Decided(wordingOf(statement, amounts, false), decision, member);
}

/** A verdict whose limit is worded when someone reads it: most verdicts are only counted. */
class Decided implements Truth {
  readonly kind = 'truth';
  readonly verdict: Verdict;
  readonly left: Truth['left'];
  readonly margin: number;
  readonly marginUncertainty: number;
  readonly marginType: QuantityType;
  readonly member: string | undefined;
  readonly why: string | undefined;
  readonly #wording: Wording;

  constructor(wording: Wording, { verdict, margin, uncertainty }: Decision, member: string | undefined) {
    this.verdict = verdict;
    const type = leftType(wording.node);
    this.left = { type, amount: wording.amounts[0] ?? nothing };
    this.margin = margin;
    this.marginUncertainty = uncertainty;
    // A margin is a difference of what is compared, in the left side's unit.
    this.marginType = differenceOf(type);
    this.member = member;
    this.why = verdict === 'cannot compute' ? 'the result is no number' : undefined;
    this.#wording = wording;
  }

  get limit(): string {
    const { node, range, amounts, denied } = this.#wording;
    return sayLimit(node, range, amounts, denied);
  }

  /** The same operands, the limit's other side. */
  get denial(): Truth {
    const decision = deny({
      verdict: this.verdict,
      margin: this.margin,
      uncertainty: this.marginUncertainty,
    });
    return new Decided({ ...this.#wording, denied: !this.#wording.denied }, decision, this.member);
  }
}

/**
 * What a verdict's limit is worded from.
 * Not the whole statement: its operands may be members by the hundred, and a case has thousands of verdicts.
 */
interface Wording {
  readonly node: Comparing;
  readonly range: Range | undefined;
  readonly amounts: readonly Amount[];
  /** It stands under `not`. */
  readonly denied: boolean;
}

function wordingOf({ node, range }: Statement, amounts: readonly Amount[], denied: boolean): Wording {
  const few = amounts.every(hasFewSources) ? amounts : amounts.map(ofFewSources);
  return { node, range, amounts: few, denied };
}

const hasFewSources = ({ spread }: Amount): boolean => spread.length <= 8;

/** What is only shown keeps its half-width, and of many sources none. */
function ofFewSources(amount: Amount): Amount {
  const { si, spread } = amount;
  return hasFewSources(amount) ? amount : measured(si, spread[0]?.source ?? '', halfWidth(amount));
}

/**
 * The same statement denied, with the margin and the words of its limit turned round.
 * What is too close, not measured or not computable stays so.
 */
export function opposite(truth: Truth): Truth {
  return truth instanceof Decided ? truth.denial : { ...truth, verdict: oppositeOf(truth.verdict) };
}

function leftType(node: Comparing): QuantityType {
  return quantityOf(node.kind === 'compare' || node.kind === 'within' ? node.left : node.of);
}

import { power } from '../quantity/amount.ts';
import { fromSi } from '../quantity/convert.ts';
import type { QuantityType } from '../quantity/types.ts';
import { plainUnit } from '../quantity/unit.ts';
import { absentOf, cannotCompute, undecided } from './absent.ts';
import { combine, each, finite, memberOf, negative, sayMember } from './combine.ts';
import { convertPressure } from './convertPressure.ts';
import {
  betweenTest,
  decide,
  limitDecision,
  negated,
  oppositeOf,
  order,
  relationTest,
  type Statement,
  type Test,
  withinTest,
} from './decide.ts';
import { lift } from './lift.ts';
import { cutSeries, pickSamples } from './pickSamples.ts';
import { sayBetween, sayRelation, sayWithin } from './sayLimit.ts';
import type { Environment } from './scope.ts';
import type { Relation } from './tree.ts';
import type {
  Apply,
  Between,
  Both,
  Choice,
  Compare,
  Entry,
  InRange,
  SameWord,
  Supply,
  Typed,
  TypedExpression,
  Within,
} from './typed.ts';
import type { Truth, Value } from './value.ts';

/**
 * Computes a typed expression. What is not there, or has no answer, comes out as an absent value with its reason,
 * a statement about it as a verdict of its own. Nothing throws.
 */
export function evaluate(typed: TypedExpression, environment: Environment): Value {
  return evaluateNode(typed.root, environment);
}

export function evaluateNode(node: Typed, environment: Environment): Value {
  switch (node.kind) {
    case 'broken':
      return cannotCompute('the expression has an error');
    case 'constant':
      return node.value;
    case 'read':
      return environment.value(node.id);
    case 'taken':
      return retyped(evaluateNode(node.of, environment), node.type);
    case 'entry':
      return entry(node, environment);
    case 'apply':
      return apply(node, environment);
    case 'convert':
      return convert(node, environment);
    case 'negative': {
      const of = evaluateNode(node.of, environment);
      return 'quantity' in node.type ? negative(of, node.type.quantity) : of;
    }
    case 'sum': {
      const left = evaluateNode(node.left, environment);
      const right = evaluateNode(node.right, environment);
      return combine(node.operator, left, right, node.quantity);
    }
    case 'power': {
      const { exponent } = node;
      return each(
        evaluateNode(node.of, environment),
        node.quantity,
        (of) => (of.si < 0 && !Number.isInteger(exponent) ? noRoot : finite(power(of, exponent))),
        (si) => exponent * si ** (exponent - 1),
      );
    }
    case 'cut':
      return cutSeries(node, environment);
    case 'pick':
      return pickSamples(node, environment);
    case 'compare':
    case 'between':
    case 'within':
    case 'in range':
      return decide(operandsOf(node, environment));
    case 'same word':
      return sameWord(node, environment);
    case 'opposite': {
      const of = truthOf(evaluateNode(node.of, environment));
      return {
        ...of,
        verdict: oppositeOf(of.verdict),
        margin: of.margin === undefined ? undefined : -of.margin + 0,
      };
    }
    case 'both':
      return both(node, environment);
    case 'choice':
      return choice(node, environment);
  }
}

const noRoot = cannotCompute('a negative number has no such power');

function retyped(value: Value, type: Typed['type']): Value {
  if (!('quantity' in type)) return value;
  const { quantity } = type;
  switch (value.kind) {
    case 'one':
      return { ...value, type: quantity };
    case 'members':
      return { ...value, type: quantity };
    case 'series':
      return { ...value, type: quantity };
    case 'range':
      return { ...value, type: quantity };
    default:
      return value;
  }
}

function entry(node: Entry, environment: Environment): Value {
  const of = evaluateNode(node.of, environment);
  const index = evaluateNode(node.index, environment);
  const absent = absentOf([of, index]);
  if (absent !== undefined) return absent;
  if (of.kind !== 'members') return cannotCompute('it has no members');
  let name: string;
  if (index.kind === 'words') name = index.text;
  else if (index.kind === 'one') name = String(fromSi(index.amount.si, index.type.unit, index.type.kind));
  else return cannotCompute('it is no name of a member');
  if (!of.members.has(name)) return cannotCompute(`there is no ${sayMember(of.by, name)}`);
  const member = memberOf(of, name);
  return 'si' in member ? { kind: 'one', type: of.type, amount: member } : member;
}

function supplied(supply: Supply, environment: Environment): Value | undefined {
  switch (supply.from) {
    case 'call':
      return evaluateNode(supply.value, environment);
    case 'header':
      return environment.header(supply.name) ?? cannotCompute(`the header has no \`${supply.name}\``);
    case 'row':
      return supply.value;
    case 'nowhere':
      return undefined;
  }
}

function apply(node: Apply, environment: Environment): Value {
  const { row, type } = node;
  const args = node.supplies.map((supply) => supplied(supply, environment));
  const absent = absentOf(args);
  if (absent !== undefined) return absent;
  switch (row.form) {
    case 'scalar':
      return 'quantity' in type ? lift(row, args, type.quantity) : cannotCompute('it is no number');
    case 'whole':
      return retyped(row.evaluate(args), type);
    case 'conversion':
    case 'later':
      return cannotCompute(`\`${row.name}\` is not computed yet`);
  }
}

function convert(node: Extract<Typed, { kind: 'convert' }>, environment: Environment): Value {
  const from = node.of.type;
  if (!('quantity' in from) || !('quantity' in node.type)) return cannotCompute('it is no pressure');
  const value = evaluateNode(node.of, environment);
  return convertPressure(value, from.quantity.kind, node.type.quantity, environment.barometer);
}

/** The operands of a comparison and how they are judged. */
export function operandsOf(node: Compare | Between | Within | InRange, environment: Environment): Statement {
  switch (node.kind) {
    case 'compare': {
      const { relation } = node;
      const type = quantityOf(node.right);
      return {
        operands: [evaluateNode(node.left, environment), evaluateNode(node.right, environment)],
        test: relationTests[relation],
        type: quantityOf(node.left),
        limit: ([, limit]) => sayRelation(relation, limit, type),
      };
    }
    case 'between': {
      const low = quantityOf(node.low);
      const high = quantityOf(node.high);
      return {
        operands: [
          evaluateNode(node.of, environment),
          evaluateNode(node.low, environment),
          evaluateNode(node.high, environment),
        ],
        test: node.negated ? negated(betweenTest) : betweenTest,
        type: quantityOf(node.of),
        limit: ([, from, to]) => sayBetween(from, to, low, high, node.negated),
      };
    }
    case 'within': {
      const tolerance = quantityOf(node.tolerance);
      const right = quantityOf(node.right);
      const test = withinTest(node.relative);
      return {
        operands: [
          evaluateNode(node.left, environment),
          evaluateNode(node.tolerance, environment),
          evaluateNode(node.right, environment),
        ],
        test: node.negated ? negated(test) : test,
        type: quantityOf(node.left),
        limit: ([, share, of]) => sayWithin(share, of, tolerance, right, node.negated),
      };
    }
    case 'in range':
      return rangeStatement(node, environment);
  }
}

const relationTests: Record<Relation, Test> = {
  '<': relationTest('<'),
  '<=': relationTest('<='),
  '>': relationTest('>'),
  '>=': relationTest('>='),
};

function quantityOf({ type }: Typed): QuantityType {
  return 'quantity' in type ? type.quantity : plainNumber;
}

const plainNumber: QuantityType = { dimension: plainUnit.dimension, kind: 'none', unit: plainUnit };

function rangeStatement(node: InRange, environment: Environment): Statement {
  const of = evaluateNode(node.of, environment);
  const range = evaluateNode(node.range, environment);
  const type = quantityOf(node.of);
  const limits = quantityOf(node.range);
  if (range.kind !== 'range') {
    const none = range.kind === 'absent' ? range : cannotCompute('it is no range');
    return { operands: [of, none], test: betweenTest, type, limit: () => '' };
  }
  const { low, high } = range;
  const test: Test = ([x = { si: Number.NaN, spread: [] }]) => {
    const below = low === undefined ? undefined : limitDecision(x, low, 1);
    const above = high === undefined ? undefined : limitDecision(x, high, -1);
    if (below === undefined) return above ?? { verdict: 'holds', margin: 0, uncertainty: 0 };
    return above !== undefined && above.margin < below.margin ? above : below;
  };
  return {
    operands: [of],
    test: node.negated ? negated(test) : test,
    type,
    limit: () => sayBetween(low, high, limits, limits, node.negated),
  };
}

const noNumbers = {
  left: undefined,
  margin: undefined,
  marginUncertainty: undefined,
  marginType: undefined,
  limit: undefined,
  member: undefined,
  why: undefined,
} as const;

function sameWord(node: SameWord, environment: Environment): Truth {
  const left = evaluateNode(node.left, environment);
  const right = evaluateNode(node.right, environment);
  const absent = absentOf([left, right]);
  if (absent !== undefined) return undecided(absent);
  let same: boolean;
  let limit: string | undefined;
  if (left.kind === 'words' && right.kind === 'words') {
    same = left.text === right.text;
    limit = node.negated ? `not ${right.text}` : right.text;
  } else if (left.kind === 'truth' && right.kind === 'truth') {
    for (const side of [left, right]) {
      if (side.verdict !== 'holds' && side.verdict !== 'fails')
        return { kind: 'truth', ...noNumbers, verdict: side.verdict, why: side.why };
    }
    same = left.verdict === right.verdict;
  } else return undecided(cannotCompute('a word and a statement cannot be compared'));
  return { kind: 'truth', ...noNumbers, verdict: same !== node.negated ? 'holds' : 'fails', limit };
}

/** Every value of a statement's type as a verdict. */
export function truthOf(value: Value): Truth {
  if (value.kind === 'truth') return value;
  return undecided(value.kind === 'absent' ? value : cannotCompute('it is no statement'));
}

/** `and`: fails, cannot compute, not measured, too close, holds; `or` the reverse. */
function both(node: Both, environment: Environment): Truth {
  const left = truthOf(evaluateNode(node.left, environment));
  const right = truthOf(evaluateNode(node.right, environment));
  const before = order.indexOf(left.verdict) - order.indexOf(right.verdict);
  const { verdict, why } = (node.operator === 'and' ? before <= 0 : before >= 0) ? left : right;
  return { kind: 'truth', ...noNumbers, verdict, why };
}

function choice(node: Choice, environment: Environment): Value {
  const { verdict, why } = truthOf(evaluateNode(node.condition, environment));
  switch (verdict) {
    case 'holds':
      return retyped(evaluateNode(node.yes, environment), node.type);
    case 'fails':
      return retyped(evaluateNode(node.no, environment), node.type);
    case 'too close to call':
      return cannotCompute('its condition is too close to call');
    case 'not measured':
    case 'cannot compute':
      return { kind: 'absent', status: verdict, why: why ?? 'its condition has no verdict' };
  }
}

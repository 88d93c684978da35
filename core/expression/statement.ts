import type { Amount } from '../quantity/types.ts';
import { cannotCompute } from './absent.ts';
import {
  betweenTest,
  type Decision,
  limitDecision,
  negated,
  relationTest,
  type Statement,
  type Test,
  tighter,
  withinTest,
} from './decide.ts';
import { evaluateNode } from './evaluate.ts';
import type { Environment } from './scope.ts';
import type { Relation } from './tree.ts';
import type { Comparing, InRange } from './typed.ts';

/** The operands of a comparison and how they are judged. */
export function statementOf(node: Comparing, environment: Environment): Statement {
  switch (node.kind) {
    case 'compare': {
      const operands = [evaluateNode(node.left, environment), evaluateNode(node.right, environment)];
      return { operands, test: relationTests[node.relation], node, range: undefined };
    }
    case 'between': {
      const operands = [
        evaluateNode(node.of, environment),
        evaluateNode(node.low, environment),
        evaluateNode(node.high, environment),
      ];
      return { operands, test: node.negated ? outside : betweenTest, node, range: undefined };
    }
    case 'within': {
      const operands = [
        evaluateNode(node.left, environment),
        evaluateNode(node.tolerance, environment),
        evaluateNode(node.right, environment),
      ];
      const test = node.relative ? withinShare : withinDistance;
      return { operands, test: node.negated ? negated(test) : test, node, range: undefined };
    }
    case 'in range':
      return inRange(node, environment);
  }
}

const relationTests: Record<Relation, Test> = {
  '<': relationTest('<'),
  '<=': relationTest('<='),
  '>': relationTest('>'),
  '>=': relationTest('>='),
};
const outside = negated(betweenTest);
const withinShare = withinTest(true);
const withinDistance = withinTest(false);

function inRange(node: InRange, environment: Environment): Statement {
  const of = evaluateNode(node.of, environment);
  const range = evaluateNode(node.range, environment);
  if (range.kind !== 'range') {
    const none = range.kind === 'absent' ? range : cannotCompute('it is no range');
    return { operands: [of, none], test: betweenTest, node, range: undefined };
  }
  const { low, high } = range;
  const test: Test = ([x = nothing]) => {
    const below = low === undefined ? undefined : limitDecision(x, low, 1);
    const above = high === undefined ? undefined : limitDecision(x, high, -1);
    if (below === undefined) return above ?? open;
    return above === undefined ? below : tighter(below, above);
  };
  return { operands: [of], test: node.negated ? negated(test) : test, node, range };
}

const nothing: Amount = { si: Number.NaN, spread: [] };
/** Nothing limits it. */
const open: Decision = { verdict: 'holds', margin: 0, uncertainty: 0 };

import type { Diagnostic, Found } from '../diagnostics/diagnostic.ts';
import { plain } from '../quantity/dimension.ts';
import {
  addTypes,
  divideTypes,
  kindDiagnostic,
  multiplyTypes,
  type Operand,
  powerType,
  subtractTypes,
  type TypeAnswer,
} from '../quantity/kinds.ts';
import type { Quantity } from '../quantity/types.ts';
import type { Span } from '../text/span.ts';
import { noNumbers } from './absent.ts';
import { checkCall } from './checkCall.ts';
import {
  broken,
  byRule,
  type Checking,
  found,
  isBroken,
  literal,
  operandOf,
  paired,
  report,
  shortText,
  takenAs,
  truthType,
  words,
} from './checking.ts';
import { checkIndex, checkName } from './checkName.ts';
import { checkCut, checkWhere } from './checkSamples.ts';
import {
  checkBetween,
  checkChoice,
  checkIn,
  checkIs,
  checkLogic,
  checkNot,
  checkRelation,
  checkWithin,
} from './checkStatement.ts';
import { raise } from './raise.ts';
import { sayType } from './sayType.ts';
import type { Scope } from './scope.ts';
import type { Arithmetic, Expression, Sign } from './tree.ts';
import type { Typed, TypedExpression } from './typed.ts';

export type { TypedExpression } from './typed.ts';

const none: readonly Diagnostic[] = [];

/**
 * Settles the type of every part before anything is computed: dimensions, kinds, arguments, shapes.
 * What is wrong is reported at its place, once: what hangs on it has an unknown type and is not complained about.
 */
export function checkExpression(expression: Expression, scope: Scope): Found<TypedExpression> {
  const checking: Checking = { scope, diagnostics: none };
  const root = check(checking, expression);
  return { value: { tree: expression, type: root.type, root }, diagnostics: checking.diagnostics };
}

export function check(checking: Checking, tree: Expression): Typed {
  switch (tree.kind) {
    case 'hole':
      return broken(tree.span);
    case 'quantity':
      return literal(checking, tree.quantity, tree.span);
    case 'text':
      return words(tree.text, tree.span);
    case 'truth':
      return truth(tree.word, tree.span);
    case 'name':
    case 'member':
      return checkName(checking, tree);
    case 'index':
      return checkIndex(checking, tree);
    case 'call':
      return checkCall(checking, tree);
    case 'sign':
      return checkSign(checking, tree);
    case 'arithmetic':
      return tree.operator === '^' ? checkPower(checking, tree) : checkSum(checking, tree, tree.operator);
    case 'cut':
      return checkCut(checking, tree);
    case 'where':
      return checkWhere(checking, tree);
    case 'comparison':
      return checkRelation(checking, tree);
    case 'is':
      return checkIs(checking, tree);
    case 'between':
      return checkBetween(checking, tree);
    case 'within':
      return checkWithin(checking, tree);
    case 'in':
      return checkIn(checking, tree);
    case 'not':
      return checkNot(checking, tree);
    case 'logic':
      return checkLogic(checking, tree);
    case 'conditional':
      return checkChoice(checking, tree);
  }
}

/** `true` and `false` are statements, `yes`, `no` and `unclear` are outcomes: words. */
function truth(word: 'true' | 'false' | 'yes' | 'no' | 'unclear', span: Span): Typed {
  if (word !== 'true' && word !== 'false') return words(word, span);
  const verdict = word === 'true' ? 'holds' : 'fails';
  const value = { kind: 'truth', ...noNumbers, verdict } as const;
  return { kind: 'constant', type: truthType, span, value };
}

function checkSign(checking: Checking, tree: Sign): Typed {
  if (tree.of.kind === 'quantity') {
    // A sign before a literal belongs to the number, even with a space between.
    const quantity: Quantity =
      tree.sign === '+' ? tree.of.quantity : { ...tree.of.quantity, value: -tree.of.quantity.value };
    return literal(checking, quantity, tree.span);
  }
  const of = check(checking, tree.of);
  if (isBroken(of)) return broken(tree.span);
  const operand = numeric(checking, of, tree.of, tree.sign);
  if (operand === undefined) return broken(tree.span);
  if (tree.sign === '+') return of;
  if (operand.kind === 'point') {
    const { problem } = multiplyTypes({ ...operand, text: shortText(tree.of) }, operand);
    if (problem !== undefined) found(checking, kindDiagnostic(problem, tree.of.span));
    return broken(tree.span);
  }
  return { kind: 'negative', of, type: of.type, span: tree.span };
}

function ruleOf(operator: '+' | '-' | '*' | '/'): (left: Operand, right: Operand) => TypeAnswer {
  switch (operator) {
    case '+':
      return addTypes;
    case '-':
      return subtractTypes;
    case '*':
      return multiplyTypes;
    case '/':
      return divideTypes;
  }
}

function checkSum(checking: Checking, tree: Arithmetic, operator: '+' | '-' | '*' | '/'): Typed {
  const left = check(checking, tree.left);
  const right = check(checking, tree.right);
  if (isBroken(left) || isBroken(right)) return broken(tree.span);
  const a = numeric(checking, left, tree.left, operator);
  const b = numeric(checking, right, tree.right, operator);
  if (a === undefined || b === undefined) return broken(tree.span);
  const answer = byRule(checking, ruleOf(operator), a, b, tree.left, tree.right);
  if (answer === undefined) return broken(tree.span);
  const type = paired(checking, left.type, right.type, answer.type, tree.span);
  if (type === undefined) return broken(tree.span);
  return {
    kind: 'sum',
    operator,
    quantity: answer.type,
    left: takenAs(checking, left, answer.leftAs),
    right: takenAs(checking, right, answer.rightAs),
    type,
    span: tree.span,
  };
}

/** The operand as a number, or by members or samples; anything else is reported. */
export function numeric(checking: Checking, typed: Typed, tree: Expression, of: string): Operand | undefined {
  const { kind } = typed.type;
  if (kind === 'one' || kind === 'members' || kind === 'series') return operandOf(typed);
  const takes = kind === 'words' ? 'numbers (words are compared with `is`)' : 'numbers';
  report(checking, 'wrong-operand', tree.span, { of, takes, got: sayType(typed.type) });
  return undefined;
}

function checkPower(checking: Checking, tree: Arithmetic): Typed {
  const of = check(checking, tree.left);
  const right = check(checking, tree.right);
  if (isBroken(of) || isBroken(right)) return broken(tree.span);
  const operand = numeric(checking, of, tree.left, '^');
  if (operand === undefined) return broken(tree.span);
  const exponent = constantNumber(right);
  if (exponent === undefined && operand.dimension === plain && isPlain(right)) {
    const answer = powerType(operand, 1);
    const type =
      answer.problem === undefined
        ? paired(checking, of.type, right.type, answer.type, tree.span)
        : undefined;
    if (type === undefined) return broken(tree.span);
    const supplies = [of, right].map((value) => ({ from: 'call', value }) as const);
    return { kind: 'apply', row: raise, supplies, type, span: tree.span };
  }
  if (exponent === undefined) {
    const facts = {
      text: shortText(tree.right),
      takes: 'with a unit below it, an exponent is written as a number, as in `x ^ 2`',
    };
    report(checking, 'wrong-exponent', tree.right.span, facts);
    return broken(tree.span);
  }
  const answer = powerType(operand, exponent);
  if (answer.problem !== undefined) {
    const { problem } = powerType({ ...operand, text: shortText(tree.left) }, exponent);
    found(checking, kindDiagnostic(problem ?? answer.problem, tree.left.span));
    return broken(tree.span);
  }
  const type = paired(checking, of.type, of.type, answer.type, tree.span);
  if (type === undefined) return broken(tree.span);
  return { kind: 'power', of, exponent, quantity: answer.type, type, span: tree.span };
}

function isPlain({ type }: Typed): boolean {
  return 'quantity' in type && type.quantity.dimension === plain;
}

/** A plain number known without any reading, and exactly: `2`, `-1`, `(1 / 2)`. */
function constantNumber(typed: Typed): number | undefined {
  if (typed.type.kind !== 'one' || typed.type.quantity.dimension !== plain) return undefined;
  switch (typed.kind) {
    case 'literal':
      return typed.written.plusMinus === 0 ? typed.written.value * typed.written.unit.factor : undefined;
    case 'negative': {
      const of = constantNumber(typed.of);
      return of === undefined ? undefined : -of;
    }
    case 'power': {
      const of = constantNumber(typed.of);
      return of === undefined ? undefined : of ** typed.exponent;
    }
    case 'sum': {
      const left = constantNumber(typed.left);
      const right = constantNumber(typed.right);
      if (left === undefined || right === undefined) return undefined;
      if (typed.operator === '+') return left + right;
      if (typed.operator === '-') return left - right;
      return typed.operator === '*' ? left * right : left / right;
    }
    default:
      return undefined;
  }
}

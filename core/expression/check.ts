import type { Diagnostic, Found } from '../diagnostics/diagnostic.ts';
import { plain, time } from '../quantity/dimension.ts';
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
  wordsType,
} from './checking.ts';
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
import type { Arithmetic, Cut, Expression, Index, Member, NameReference, Sign, Where } from './tree.ts';
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

function words(text: string, span: Span): Typed {
  return {
    kind: 'constant',
    type: wordsType,
    span,
    value: { kind: 'words', text },
  };
}

/** `true` and `false` are statements, `yes`, `no` and `unclear` are outcomes: words. */
function truth(word: 'true' | 'false' | 'yes' | 'no' | 'unclear', span: Span): Typed {
  if (word !== 'true' && word !== 'false') return words(word, span);
  const value = {
    kind: 'truth',
    verdict: word === 'true' ? 'holds' : 'fails',
    left: undefined,
    margin: undefined,
    marginUncertainty: undefined,
    marginType: undefined,
    limit: undefined,
    member: undefined,
    why: undefined,
  } as const;
  return { kind: 'constant', type: truthType, span, value };
}

/** A dotted name: the scope says how much of it names a value, the rest are members of that value. */
function checkName(checking: Checking, tree: NameReference | Member): Typed {
  if (tree.kind === 'name') return resolved(checking, tree, [tree.name], [tree.span]);
  const path: string[] = [];
  const spans: Span[] = [];
  let base: Expression = tree;
  while (base.kind === 'member') {
    if (base.name === '') return broken(tree.span);
    path.push(base.name);
    spans.push(base.nameSpan);
    base = base.of;
  }
  if (base.kind !== 'name')
    return members(checking, check(checking, base), base, path.reverse(), spans.reverse());
  path.push(base.name);
  spans.push(base.span);
  return resolved(checking, tree, path.reverse(), spans.reverse());
}

function resolved(
  checking: Checking,
  tree: NameReference | Member,
  path: readonly string[],
  spans: readonly Span[],
): Typed {
  const resolution = checking.scope.resolve(path, spans);
  if (resolution.kind === 'problem') {
    found(checking, resolution.diagnostic);
    return broken(tree.span);
  }
  const { id, type, used, role } = resolution;
  let operand: Operand | undefined;
  if (role !== undefined && (type.kind === 'one' || type.kind === 'members' || type.kind === 'series')) {
    const { dimension, kind, unit } = type.quantity;
    operand = { dimension, kind, unit, isBarometer: role === 'barometer', isManifold: role === 'manifold' };
  }
  if (used >= path.length) return { kind: 'read', id, type, operand, span: tree.span };
  const span = { start: tree.span.start, end: spans[used - 1]?.end ?? tree.span.end };
  const read: Typed = { kind: 'read', id, type, operand, span };
  return members(checking, read, tree, path.slice(used), spans.slice(used));
}

/** What stands behind a value: `x.idle` of a value by state, or by label. */
function members(
  checking: Checking,
  of: Typed,
  tree: Expression,
  names: readonly string[],
  spans: readonly Span[],
): Typed {
  let value = of;
  for (const [at, name] of names.entries()) {
    if (isBroken(value)) return broken(tree.span);
    const span = spans[at] ?? tree.span;
    const { type } = value;
    if (type.kind !== 'members' || type.by === 'cylinder') {
      const text = shortText(tree.kind === 'member' ? tree.of : tree);
      report(checking, 'unknown-member', span, { of: text, member: name, nearest: [], has: [] });
      return broken(tree.span);
    }
    value = {
      kind: 'entry',
      of: value,
      index: words(name, span),
      type: { kind: 'one', quantity: type.quantity },
      span: { start: of.span.start, end: span.end },
    };
  }
  return value;
}

function checkIndex(checking: Checking, tree: Index): Typed {
  const of = check(checking, tree.of);
  const index = check(checking, tree.index);
  if (isBroken(of) || isBroken(index)) return broken(tree.span);
  if (of.type.kind !== 'members') {
    const facts = {
      of: '[…]',
      takes: 'values by cylinder, label or state',
      got: `${sayType(of.type)} (\`${shortText(tree.of)}\`)`,
    };
    report(checking, 'wrong-operand', tree.of.span, facts);
    return broken(tree.span);
  }
  const isNumber = index.type.kind === 'one' && index.type.quantity.dimension === plain;
  if (index.type.kind !== 'words' && !(isNumber && of.type.by === 'cylinder')) {
    const takes = of.type.by === 'cylinder' ? 'a cylinder’s number' : `a ${of.type.by} in quotes`;
    report(checking, 'wrong-operand', tree.index.span, { of: '[…]', takes, got: sayType(index.type) });
    return broken(tree.span);
  }
  return { kind: 'entry', of, index, type: { kind: 'one', quantity: of.type.quantity }, span: tree.span };
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

/** A plain number known without any reading: `2`, `-1`, `(1 / 2)`. */
function constantNumber(typed: Typed): number | undefined {
  if (typed.type.kind !== 'one' || typed.type.quantity.dimension !== plain) return undefined;
  switch (typed.kind) {
    case 'literal':
      return typed.written.value * typed.written.unit.factor;
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

function checkCut(checking: Checking, tree: Cut): Typed {
  const of = check(checking, tree.of);
  const start = check(checking, tree.start);
  const end = check(checking, tree.end);
  if (isBroken(of) || isBroken(start) || isBroken(end)) return broken(tree.span);
  if (of.type.kind !== 'series') return notSamples(checking, of, tree.of, 'from … to …', tree.span);
  for (const [typed, each] of [
    [start, tree.start],
    [end, tree.end],
  ] as const) {
    if (typed.type.kind === 'one' && typed.type.quantity.dimension === time) continue;
    report(checking, 'wrong-operand', each.span, {
      of: 'from … to …',
      takes: 'times, such as `2 s`',
      got: sayType(typed.type),
    });
    return broken(tree.span);
  }
  return { kind: 'cut', of, start, end, type: of.type, span: tree.span };
}

function notSamples(checking: Checking, of: Typed, tree: Expression, what: string, span: Span): Typed {
  report(checking, 'wrong-operand', tree.span, {
    of: what,
    takes: 'samples of a capture',
    got: sayType(of.type),
  });
  return broken(span);
}

function checkWhere(checking: Checking, tree: Where): Typed {
  const of = check(checking, tree.of);
  const condition = check(checking, tree.condition);
  if (isBroken(of) || isBroken(condition)) return broken(tree.span);
  if (of.type.kind !== 'series') return notSamples(checking, of, tree.of, 'where', tree.span);
  if (condition.type.kind !== 'truth') {
    const facts = {
      of: 'where',
      takes: 'a statement, such as `rpm > 2000 rpm`',
      got: sayType(condition.type),
    };
    report(checking, 'wrong-operand', tree.condition.span, facts);
    return broken(tree.span);
  }
  for (const capture of capturesOf(condition, [])) {
    if (capture === of.type.capture) continue;
    report(checking, 'unlike-captures', tree.span, { left: of.type.capture, right: capture });
    return broken(tree.span);
  }
  return { kind: 'pick', of, condition, type: of.type, span: tree.span };
}

/** The captures whose samples decide a statement one by one. */
function capturesOf(typed: Typed, captures: string[]): string[] {
  switch (typed.kind) {
    case 'compare':
      samplesOf([typed.left, typed.right], captures);
      break;
    case 'between':
      samplesOf([typed.of, typed.low, typed.high], captures);
      break;
    case 'within':
      samplesOf([typed.left, typed.tolerance, typed.right], captures);
      break;
    case 'in range':
      samplesOf([typed.of], captures);
      break;
    case 'both':
      capturesOf(typed.left, captures);
      capturesOf(typed.right, captures);
      break;
    case 'opposite':
      capturesOf(typed.of, captures);
      break;
    default:
      break;
  }
  return captures;
}

function samplesOf(parts: readonly Typed[], captures: string[]): void {
  for (const { type } of parts) if (type.kind === 'series') captures.push(type.capture);
}

import { type Code, type Diagnostic, diagnose, type Facts, type Fix } from '../diagnostics/diagnostic.ts';
import { type KindProblem, kindDiagnostic, type Operand, type TypeAnswer } from '../quantity/kinds.ts';
import type { Kind, Quantity, QuantityType } from '../quantity/types.ts';
import { plainUnit } from '../quantity/unit.ts';
import type { Span } from '../text/span.ts';
import type { Scope } from './scope.ts';
import type { Expression, NameReference } from './tree.ts';
import type { Type } from './type.ts';
import type { Broken, Constant, Literal, Typed } from './typed.ts';
import { writeExpression } from './write.ts';

/** One pass over one expression. */
export interface Checking {
  readonly scope: Scope;
  diagnostics: readonly Diagnostic[];
}

export function report<C extends Code>(
  checking: Checking,
  code: C,
  span: Span,
  facts: Facts[C],
  fixes: readonly Fix[] = [],
): void {
  found(checking, diagnose(code, span, facts, fixes));
}

export function found(checking: Checking, diagnostic: Diagnostic): void {
  checking.diagnostics = [...checking.diagnostics, diagnostic];
}

/** A word that names nothing where a text is due: most likely it lacks its quotes. */
export function quoteWord(checking: Checking, { name, span }: NameReference): void {
  const newText = `"${name}"`;
  const fix = { title: `Write \`${newText}\``, edits: [{ span, newText }] };
  report(checking, 'quote-word', span, { word: name }, [fix]);
}

const unknown: Type = { kind: 'unknown' };
export const truthType: Type = { kind: 'truth' };
const wordsType: Type = { kind: 'words' };

export function broken(span: Span): Broken {
  return { kind: 'broken', type: unknown, span };
}

export function isBroken(typed: Typed): boolean {
  return typed.type.kind === 'unknown';
}

/** A literal, taken as a kind: its own where the place does not decide. */
export function literal(
  checking: Checking,
  written: Quantity,
  span: Span,
  kind: Kind = written.kind,
): Literal {
  const { unit } = written;
  const { dimension } = unit;
  const bare = !written.kindGiven;
  const operand: Operand =
    unit === plainUnit
      ? { dimension, kind, unit, bare, number: written.value }
      : { dimension, kind, unit, bare };
  const type: Type = { kind: 'one', quantity: { dimension, kind, unit } };
  return { kind: 'literal', type, span, written, operand, place: checking.scope.place };
}

/** A text or an outcome as written. */
export function words(text: string, span: Span): Constant {
  return {
    kind: 'constant',
    type: wordsType,
    span,
    value: { kind: 'words', text },
  };
}

/** What the rules of kinds need to know about an operand; undefined for what is no number. */
export function operandOf(typed: Typed): Operand | undefined {
  if (typed.kind === 'literal') return typed.operand;
  if (typed.kind === 'read' && typed.operand !== undefined) return typed.operand;
  const { type } = typed;
  return type.kind === 'one' || type.kind === 'members' || type.kind === 'series' || type.kind === 'range'
    ? type.quantity
    : undefined;
}

/** The operand taken as the kind that its place asks for; as it is when the place asks for nothing. */
export function takenAs(checking: Checking, typed: Typed, kind: Kind | undefined): Typed {
  if (kind === undefined) return typed;
  if (typed.kind === 'literal') {
    return typed.operand.kind === kind ? typed : literal(checking, typed.written, typed.span, kind);
  }
  const { type } = typed;
  if (type.kind !== 'one' && type.kind !== 'members' && type.kind !== 'series' && type.kind !== 'range')
    return typed;
  if (type.quantity.kind === kind) return typed;
  return {
    kind: 'taken',
    of: typed,
    type: { ...type, quantity: { ...type.quantity, kind } },
    span: typed.span,
  };
}

type Rule = (left: Operand, right: Operand) => TypeAnswer;

/** Two operands by a rule of kinds; undefined when it is broken, which is reported over both. */
export function byRule(
  checking: Checking,
  rule: Rule,
  left: Operand,
  right: Operand,
  leftTree: Expression,
  rightTree: Expression,
): Exclude<TypeAnswer, { readonly problem: KindProblem }> | undefined {
  const answer = rule(left, right);
  if (answer.problem === undefined && answer.warning === undefined) return answer;
  // Asked again with the texts, which only a message needs.
  const told = rule({ ...left, text: shortText(leftTree) }, { ...right, text: shortText(rightTree) });
  const problem = told.problem ?? told.warning;
  if (problem !== undefined) found(checking, kindDiagnostic(problem, leftTree.span, rightTree.span));
  return answer.problem === undefined ? answer : undefined;
}

/** An expression for a message, cut where it is long. */
export function shortText(tree: Expression): string {
  const text = writeExpression(tree);
  return text.length > 48 ? `${text.slice(0, 47)}…` : text;
}

/** The shape of what two values give together, with a quantity; undefined when they do not pair, which is reported. */
export function paired(
  checking: Checking,
  a: Type,
  b: Type,
  quantity: QuantityType,
  span: Span,
): Type | undefined {
  const shape = shapeOf(a, b);
  if (shape === undefined) return { kind: 'one', quantity };
  if (shape === 'captures' && a.kind === 'series' && b.kind === 'series') {
    report(checking, 'unlike-captures', span, { left: a.capture, right: b.capture });
    return undefined;
  }
  if (typeof shape === 'string') {
    report(checking, 'unlike-shapes', span, { left: sayShape(a), right: sayShape(b) });
    return undefined;
  }
  return { ...shape, quantity };
}

type Shape = Extract<Type, { kind: 'members' | 'series' }>;

function shapeOf(a: Type, b: Type): Shape | 'shapes' | 'captures' | undefined {
  const left = a.kind === 'members' || a.kind === 'series' ? a : undefined;
  const right = b.kind === 'members' || b.kind === 'series' ? b : undefined;
  if (left === undefined || right === undefined) return left ?? right;
  if (left.kind === 'series') {
    if (right.kind !== 'series') return 'shapes';
    return left.capture === right.capture ? left : 'captures';
  }
  return right.kind === 'members' && left.by === right.by ? left : 'shapes';
}

function sayShape(type: Type): string {
  return type.kind === 'members' ? `Values by ${type.by}` : 'samples of a capture';
}

import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { plain } from '../quantity/dimension.ts';
import { compareTypes, kindDiagnostic, type Operand, withinTypes } from '../quantity/kinds.ts';
import { plainUnit } from '../quantity/unit.ts';
import { nearest } from '../text/nearest.ts';
import { check, numeric } from './check.ts';
import {
  broken,
  byRule,
  type Checking,
  found,
  isBroken,
  operandOf,
  paired,
  quoteWord,
  report,
  shortText,
  takenAs,
  truthType,
} from './checking.ts';
import { sayType } from './sayType.ts';
import type { Between, Comparison, Conditional, Expression, In, Is, Logic, Not, Within } from './tree.ts';
import type { Type } from './type.ts';
import type { Typed } from './typed.ts';
import { writeExpression } from './write.ts';

export function checkRelation(checking: Checking, tree: Comparison): Typed {
  const left = check(checking, tree.left);
  const right = check(checking, tree.right);
  const pair = comparable(checking, left, tree.left, right, tree.right, tree.relation);
  if (pair === undefined) return broken(tree.span);
  return {
    kind: 'compare',
    relation: tree.relation,
    left: pair[0],
    right: pair[1],
    type: truthType,
    span: tree.span,
  };
}

/** Both sides, each taken as the kind that the other asks for; undefined when they cannot be compared. */
function comparable(
  checking: Checking,
  left: Typed,
  leftTree: Expression,
  right: Typed,
  rightTree: Expression,
  of: string,
): readonly [Typed, Typed] | undefined {
  if (isBroken(left) || isBroken(right)) return undefined;
  const a = numeric(checking, left, leftTree, of);
  const b = numeric(checking, right, rightTree, of);
  if (a === undefined || b === undefined) return undefined;
  const answer = byRule(checking, compareTypes, a, b, leftTree, rightTree);
  if (answer === undefined) return undefined;
  if (
    paired(checking, left.type, right.type, answer.type, {
      start: leftTree.span.start,
      end: rightTree.span.end,
    }) === undefined
  ) {
    return undefined;
  }
  return [takenAs(checking, left, answer.leftAs), takenAs(checking, right, answer.rightAs)];
}

export function checkBetween(checking: Checking, tree: Between): Typed {
  const of = check(checking, tree.of);
  const low = check(checking, tree.low);
  const high = check(checking, tree.high);
  return limits(checking, tree, of, low, tree.low, high, tree.high, 'between … and …');
}

function limits(
  checking: Checking,
  tree: Between | In,
  of: Typed,
  low: Typed,
  lowTree: Expression,
  high: Typed,
  highTree: Expression,
  form: string,
): Typed {
  // The limits first: a literal between two literals keeps its own kind, one beside a reading takes that.
  const below = comparable(checking, of, tree.of, low, lowTree, form);
  const above =
    below === undefined ? undefined : comparable(checking, below[0], tree.of, high, highTree, form);
  if (below === undefined || above === undefined) return broken(tree.span);
  return {
    kind: 'between',
    negated: tree.negated,
    of: above[0],
    low: below[1],
    high: above[1],
    type: truthType,
    span: tree.span,
  };
}

export function checkIn(checking: Checking, tree: In): Typed {
  const of = check(checking, tree.of);
  const low = check(checking, tree.low);
  if (tree.high !== undefined) {
    return limits(checking, tree, of, low, tree.low, check(checking, tree.high), tree.high, 'in … .. …');
  }
  if (isBroken(of) || isBroken(low)) return broken(tree.span);
  const a = numeric(checking, of, tree.of, 'in');
  if (a === undefined) return broken(tree.span);
  if (low.type.kind !== 'range') {
    const takes = 'a range: one of a `reference`, or two ends as in `in 17 .. 22 inHg`';
    report(checking, 'wrong-operand', tree.low.span, { of: 'in', takes, got: sayType(low.type) });
    return broken(tree.span);
  }
  const answer = byRule(checking, compareTypes, a, low.type.quantity, tree.of, tree.low);
  if (answer === undefined) return broken(tree.span);
  return {
    kind: 'in range',
    negated: tree.negated,
    of: takenAs(checking, of, answer.leftAs),
    range: takenAs(checking, low, answer.rightAs),
    type: truthType,
    span: tree.span,
  };
}

export function checkWithin(checking: Checking, tree: Within): Typed {
  const left = check(checking, tree.left);
  const tolerance = check(checking, tree.tolerance);
  const right = check(checking, tree.right);
  if (isBroken(left) || isBroken(tolerance) || isBroken(right)) return broken(tree.span);
  const form = 'within … of …';
  const a = numeric(checking, left, tree.left, form);
  const t = numeric(checking, tolerance, tree.tolerance, form);
  const b = numeric(checking, right, tree.right, form);
  if (a === undefined || t === undefined || b === undefined) return broken(tree.span);
  const answer = withinTypes(a, t, b);
  if (answer.problem !== undefined) {
    const named = (operand: Operand, of: Expression): Operand => ({ ...operand, text: shortText(of) });
    const told = withinTypes(named(a, tree.left), named(t, tree.tolerance), named(b, tree.right));
    const about = compareTypes(a, b).problem === undefined ? tree.tolerance : tree.left;
    found(checking, kindDiagnostic(told.problem ?? answer.problem, about.span, tree.right.span));
    return broken(tree.span);
  }
  const sides = paired(checking, left.type, right.type, answer.type, tree.span);
  if (sides === undefined || paired(checking, sides, tolerance.type, answer.type, tree.span) === undefined) {
    return broken(tree.span);
  }
  return {
    kind: 'within',
    negated: tree.negated,
    relative: answer.relative,
    left: takenAs(checking, left, answer.leftAs),
    tolerance: answer.relative ? tolerance : takenAs(checking, tolerance, asDifference(t)),
    right: takenAs(checking, right, answer.rightAs),
    type: truthType,
    span: tree.span,
  };
}

/** A tolerance is a difference; what has no kinds stays as it is. */
function asDifference(tolerance: Operand): 'difference' | undefined {
  return tolerance.kind === 'open' || tolerance.kind === 'point' ? 'difference' : undefined;
}

export function checkIs(checking: Checking, tree: Is): Typed {
  const left = wordOf(checking, tree.left);
  const right = wordOf(checking, tree.right, left);
  if (isBroken(left) || isBroken(right)) return broken(tree.span);
  for (const [typed, each] of [
    [left, tree.left],
    [right, tree.right],
  ] as const) {
    if (typed.type.kind === 'words' || typed.type.kind === 'truth') continue;
    const newText = `"${shortText(each)}"`;
    const isCylinder = each.kind === 'quantity' && each.quantity.unit.dimension === plain;
    const takes = isCylinder
      ? `words, truths and outcomes (a cylinder is a word: \`${newText}\`)`
      : 'words, truths and outcomes; for numbers write `within … of` or `between`';
    const fixes = isCylinder
      ? [{ title: `Write \`${newText}\``, edits: [{ span: each.span, newText }] }]
      : [];
    report(checking, 'wrong-operand', each.span, { of: 'is', takes, got: sayType(typed.type) }, fixes);
    return broken(tree.span);
  }
  if (tree.right.kind === 'text' && isResult(tree.left)) {
    const written = `"${tree.right.text}"`;
    const outcome = outcomeOf(tree.right.text, left);
    if (outcome !== undefined && outcome !== tree.right.text) {
      const fix = { title: `Write \`${outcome}\``, edits: [{ span: tree.right.span, newText: outcome }] };
      report(checking, 'foreign-mark', tree.right.span, { written, use: [outcome] }, [fix]);
      return broken(tree.span);
    }
  }
  if (left.type.kind !== right.type.kind) {
    const outcome = tree.right.kind === 'truth' ? outcomeOf(tree.right.word, left) : undefined;
    const takes = `the same on both sides, here ${sayType(left.type)}${outcome === undefined ? '' : ` such as \`${outcome}\``}`;
    const fixes =
      outcome === undefined
        ? []
        : [{ title: `Write \`${outcome}\``, edits: [{ span: tree.right.span, newText: outcome }] }];
    report(checking, 'wrong-operand', tree.right.span, { of: 'is', takes, got: sayType(right.type) }, fixes);
    return broken(tree.span);
  }
  neverSaid(checking, left, tree.right);
  neverSaid(checking, right, tree.left);
  return { kind: 'same word', negated: tree.negated, left, right, type: truthType, span: tree.span };
}

/** A text beside what can only be one of some words, and is none of them: most likely misspelt. */
function neverSaid(checking: Checking, { type }: Typed, beside: Expression): void {
  if (type.kind !== 'words' || type.among === undefined || beside.kind !== 'text') return;
  const { among } = type;
  if (among.includes(beside.text)) return;
  const close = nearest(beside.text, among);
  const fixes = close.map((word) => ({
    title: `Write "${word}"`,
    edits: [{ span: beside.span, newText: `"${word}"` }],
  }));
  report(checking, 'never-said', beside.span, { word: beside.text, among, nearest: close }, fixes);
}

/** A side of `is`: a bare word that names nothing is most likely a text without its quotes. */
function wordOf(checking: Checking, tree: Expression, other?: Typed): Typed {
  if (tree.kind !== 'name') return check(checking, tree);
  const before = checking.diagnostics;
  const typed = check(checking, tree);
  const added = checking.diagnostics[before.length];
  if (added?.code !== 'unknown-name') return typed;
  checking.diagnostics = before;
  const outcome = outcomeOf(tree.name, other);
  if (outcome !== undefined) {
    const fix = { title: `Write \`${outcome}\``, edits: [{ span: tree.span, newText: outcome }] };
    report(checking, 'foreign-mark', tree.span, { written: tree.name, use: [outcome] }, [fix]);
    return typed;
  }
  quoteWord(checking, tree);
  return typed;
}

/** `Yes`, `NO`, and beside a word `True`: the outcome that is meant. */
function outcomeOf(word: string, other: Typed | undefined): string | undefined {
  const lower = word.toLowerCase();
  const besideWord = other?.type.kind === 'words';
  switch (lower) {
    case 'yes':
    case 'no':
    case 'unclear':
      return lower;
    case 'true':
      return besideWord ? 'yes' : lower;
    case 'false':
      return besideWord ? 'no' : lower;
    default:
      return undefined;
  }
}

export function checkNot(checking: Checking, tree: Not): Typed {
  const of = statement(checking, tree.of, 'not');
  return of === undefined ? broken(tree.span) : { kind: 'opposite', of, type: truthType, span: tree.span };
}

export function checkLogic(checking: Checking, tree: Logic): Typed {
  if (tree.chained === 'to be told') return checkChain(checking, tree);
  const left = statement(checking, tree.left, tree.operator);
  const before = checking.diagnostics;
  const right = statement(checking, tree.right, tree.operator);
  if (tree.chained === 'told') checking.diagnostics = onceEach(before, checking.diagnostics);
  if (left === undefined || right === undefined) return broken(tree.span);
  return { kind: 'both', operator: tree.operator, left, right, tree, type: truthType, span: tree.span };
}

/** The middle of a chain is looked at on both sides, and what is wrong with it is told on the first. */
function onceEach(before: readonly Diagnostic[], now: readonly Diagnostic[]): readonly Diagnostic[] {
  const isTold = ({ code, span }: Diagnostic): boolean =>
    before.some((each) => each.code === code && each.span.start === span.start && each.span.end === span.end);
  return [...before, ...now.slice(before.length).filter((each) => !isTold(each))];
}

/** `500 < rpm < 900` is told once, with the units that its numbers lack. */
function checkChain(checking: Checking, tree: Logic): Typed {
  if (tree.left.kind !== 'comparison' || tree.right.kind !== 'comparison') return broken(tree.span);
  const [first, middle, last] = [tree.left.left, tree.left.right, tree.right.right];
  const { type } = check(checking, middle);
  // What could not be read has been told, and an offer would need it.
  if (first.kind === 'hole' || last.kind === 'hole') return broken(tree.span);
  const written = [first, last].find((each) => each.kind === 'quantity' && each.quantity.unit !== plainUnit);
  const unit =
    written?.kind === 'quantity'
      ? written.quantity.unit
      : 'quantity' in type
        ? type.quantity.unit
        : plainUnit;
  const sayEnd = (of: Expression): string =>
    of.kind === 'quantity' && of.quantity.unit === plainUnit && unit !== plainUnit
      ? `${writeExpression(of)} ${unit.symbol}`
      : writeExpression(of);
  const [low, high] = tree.left.relation.startsWith('<') ? [first, last] : [last, first];
  const offer = `${writeExpression(middle)} between ${sayEnd(low)} and ${sayEnd(high)}`;
  const fix = { title: `Write \`${offer}\``, edits: [{ span: tree.span, newText: offer }] };
  report(checking, 'chained-comparison', tree.span, { offer }, [fix]);
  return broken(tree.span);
}

function statement(checking: Checking, tree: Expression, of: string): Typed | undefined {
  const typed = check(checking, tree);
  if (isBroken(typed)) return undefined;
  if (typed.type.kind === 'truth') return typed;
  const offer = isResult(tree) ? `${shortText(tree)} is yes` : undefined;
  const takes = `statements that hold or fail${offer === undefined ? '' : ` such as \`${offer}\``}`;
  const at = { start: tree.span.end, end: tree.span.end };
  const fixes =
    offer === undefined ? [] : [{ title: `Write \`${offer}\``, edits: [{ span: at, newText: ' is yes' }] }];
  report(checking, 'wrong-operand', tree.span, { of, takes, got: sayType(typed.type) }, fixes);
  return undefined;
}

/** The outcome of a test, as its name says. */
function isResult(tree: Expression): boolean {
  return tree.kind === 'member' && tree.name === 'result';
}

/** Curves are read each on its own; results with several values must have the same ones. */
function sameNames(yes: Type, no: Type): boolean {
  if (yes.kind === 'fields') return no.kind === 'fields' && sayType(yes) === sayType(no);
  return yes.kind !== 'curve';
}

/** Both branches must give one type, since which one is taken is only known later. */
export function checkChoice(checking: Checking, tree: Conditional): Typed {
  const condition = statement(checking, tree.condition, 'if');
  const yes = check(checking, tree.yes);
  const no = check(checking, tree.no);
  if (condition === undefined || isBroken(yes) || isBroken(no)) return broken(tree.span);
  const a = operandOf(yes);
  const b = operandOf(no);
  if (a === undefined || b === undefined || yes.type.kind !== no.type.kind) {
    if (yes.type.kind === no.type.kind && sameNames(yes.type, no.type)) {
      return { kind: 'choice', condition, yes, no, type: yes.type, span: tree.span };
    }
    const facts = {
      of: 'if … then … else …',
      takes: `the same after both words, here ${sayType(yes.type)}`,
      got: sayType(no.type),
    };
    report(checking, 'wrong-operand', tree.no.span, facts);
    return broken(tree.span);
  }
  const answer = byRule(checking, compareTypes, a, b, tree.yes, tree.no);
  if (answer === undefined) return broken(tree.span);
  const first = takenAs(checking, yes, answer.leftAs);
  const type: Type = 'quantity' in first.type ? { ...first.type, quantity: answer.type } : first.type;
  return {
    kind: 'choice',
    condition,
    yes: first,
    no: takenAs(checking, no, answer.rightAs),
    type,
    span: tree.span,
  };
}

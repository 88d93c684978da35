import { time } from '../quantity/dimension.ts';
import type { Span } from '../text/span.ts';
import { check } from './check.ts';
import { broken, type Checking, isBroken, report } from './checking.ts';
import { sayType } from './sayType.ts';
import type { Cut, Expression, Where } from './tree.ts';
import type { Typed } from './typed.ts';

export function checkCut(checking: Checking, tree: Cut): Typed {
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

export function checkWhere(checking: Checking, tree: Where): Typed {
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

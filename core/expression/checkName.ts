import { plain } from '../quantity/dimension.ts';
import type { Operand } from '../quantity/kinds.ts';
import { nearest } from '../text/nearest.ts';
import type { Span } from '../text/span.ts';
import { check } from './check.ts';
import { broken, type Checking, found, isBroken, report, shortText, words } from './checking.ts';
import { sayType } from './sayType.ts';
import type { Expression, Index, Member, NameReference } from './tree.ts';
import type { Field } from './type.ts';
import type { Typed } from './typed.ts';

/** A dotted name: the scope says how much of it names a value, the rest are members of that value. */
export function checkName(checking: Checking, tree: NameReference | Member): Typed {
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
  const { id, type, used, role, number } = resolution;
  let operand: Operand | undefined;
  if (number !== undefined && type.kind === 'one') {
    operand = { ...type.quantity, number, text: path.slice(0, used).join('.') };
  } else if (
    role !== undefined &&
    (type.kind === 'one' || type.kind === 'members' || type.kind === 'series')
  ) {
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
    const whole = { start: of.span.start, end: span.end };
    if (type.kind === 'fields') {
      const field = type.fields.find((each) => each.name === name);
      if (field === undefined) {
        noField(checking, tree, type.fields, name, span);
        return broken(tree.span);
      }
      value = { kind: 'field', of: value, name, type: field.type, span: whole };
      continue;
    }
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
      span: whole,
    };
  }
  return value;
}

/** A name that a result does not have: those that it has, and the nearest of them. */
function noField(
  checking: Checking,
  tree: Expression,
  fields: readonly Field[],
  member: string,
  span: Span,
): void {
  const has = fields.map(({ name }) => name);
  const near = nearest(member, has);
  const fixes = near.map((name) => ({ title: `Write \`${name}\``, edits: [{ span, newText: name }] }));
  const of = shortText(tree.kind === 'member' ? tree.of : tree);
  report(checking, 'unknown-member', span, { of, member, nearest: near, has, known: true }, fixes);
}

export function checkIndex(checking: Checking, tree: Index): Typed {
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

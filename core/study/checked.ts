import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { checkExpression, type TypedExpression } from '../expression/check.ts';
import type { Resolution, Scope } from '../expression/scope.ts';
import type { Expression } from '../expression/tree.ts';
import type { Type } from '../expression/type.ts';
import type { QuantityType } from '../quantity/types.ts';
import type { Span } from '../text/span.ts';

/** An expression's types, with everything that was asked to settle them: while the answers stay, so do the types. */
export interface Checked {
  readonly typed: TypedExpression;
  readonly diagnostics: readonly Diagnostic[];
  readonly place: string | undefined;
  readonly names: readonly {
    readonly path: readonly string[];
    readonly spans: readonly Span[];
    readonly is: Resolution;
  }[];
  readonly header: readonly { readonly name: string; readonly type: Type | undefined }[];
}

/** Checks an expression, unless that was done before and every name still stands for something of the same type. */
export function checked(expression: Expression, scope: Scope, before: Checked | undefined): Checked {
  if (before !== undefined && before.typed.tree === expression && stillHolds(before, scope)) return before;
  const names: Checked['names'][number][] = [];
  const header: Checked['header'][number][] = [];
  const noting: Scope = {
    ...scope,
    resolve: (path, spans) => {
      const is = scope.resolve(path, spans);
      names.push({ path, spans, is });
      return is;
    },
    headerType: (name) => {
      const type = scope.headerType(name);
      header.push({ name, type });
      return type;
    },
  };
  const { value: typed, diagnostics } = checkExpression(expression, noting);
  return { typed, diagnostics, place: scope.place, names, header };
}

function stillHolds({ place, names, header }: Checked, scope: Scope): boolean {
  return (
    place === scope.place &&
    names.every(({ path, spans, is }) => sameResolution(is, scope.resolve(path, spans))) &&
    header.every(({ name, type }) => sameType(type, scope.headerType(name)))
  );
}

/** What is a problem is told anew: its words may name what else the case has. */
function sameResolution(a: Resolution, b: Resolution): boolean {
  return (
    a.kind === 'value' &&
    b.kind === 'value' &&
    a.id === b.id &&
    a.used === b.used &&
    a.role === b.role &&
    Object.is(a.number, b.number) &&
    sameType(a.type, b.type)
  );
}

/** Of the rarer types only the very same one counts. */
function sameType(a: Type | undefined, b: Type | undefined): boolean {
  if (a === b) return true;
  if (a?.kind === 'one') return b?.kind === 'one' && sameQuantity(a.quantity, b.quantity);
  if (a?.kind === 'members')
    return b?.kind === 'members' && a.by === b.by && sameQuantity(a.quantity, b.quantity);
  return (a?.kind === 'truth' || a?.kind === 'unknown') && a.kind === b?.kind;
}

function sameQuantity(a: QuantityType, b: QuantityType): boolean {
  return a === b || (a.dimension === b.dimension && a.kind === b.kind && a.unit === b.unit);
}

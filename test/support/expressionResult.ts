import type { Diagnostic } from '../../core/diagnostics/diagnostic.ts';
import { message } from '../../core/diagnostics/words.ts';
import { checkExpression } from '../../core/expression/check.ts';
import { evaluate } from '../../core/expression/evaluate.ts';
import type { FunctionRow } from '../../core/expression/functionRow.ts';
import { parseExpression } from '../../core/expression/parse.ts';
import type { Type } from '../../core/expression/type.ts';
import type { Truth, Value } from '../../core/expression/value.ts';
import { halfWidth } from '../../core/quantity/amount.ts';
import { formatQuantity } from '../../core/quantity/format.ts';
import { environmentOf, type Held, type Names, scopeOf } from './expressionScope.ts';

export interface Setting {
  readonly names?: Names;
  readonly header?: Names;
  readonly barometer?: Held;
  readonly functions?: readonly FunctionRow[];
}

export interface Result {
  readonly type: Type;
  readonly value: Value;
  readonly diagnostics: readonly Diagnostic[];
}

/** An expression read, typed and evaluated. */
export function result(text: string, { names = {}, header, barometer, functions }: Setting): Result {
  const parsed = parseExpression(text);
  const checked = checkExpression(parsed.value, scopeOf(names, header, functions));
  const value = evaluate(checked.value, environmentOf(names, header, barometer));
  return { type: checked.value.type, value, diagnostics: [...parsed.diagnostics, ...checked.diagnostics] };
}

/** A value as a report would print it: "19.8 ± 0.2 inHg", "1: 5 psi, 2: not measured". */
export function printed(value: Value): string {
  switch (value.kind) {
    case 'one':
      return formatQuantity(value.amount.si, value.type, halfWidth(value.amount));
    case 'members':
      return [...value.members]
        .map(([name, each]) => {
          const text = 'si' in each ? formatQuantity(each.si, value.type, halfWidth(each)) : each.status;
          return `${name}: ${text}`;
        })
        .join(', ');
    case 'fields':
      return [...value.fields].map(([name, each]) => `${name}: ${printed(each)}`).join(', ');
    case 'series':
      return [...value.samples].map((each) => formatQuantity(each, value.type)).join(', ');
    case 'words':
      return value.text;
    case 'truth':
      return value.verdict;
    case 'absent':
      return `${value.status}: ${value.why}`;
    case 'curve':
    case 'range':
      return value.kind;
  }
}

export function truth(of: Result): Truth {
  if (of.value.kind !== 'truth') throw new Error(`no verdict: ${printed(of.value)}`);
  return of.value;
}

/** The findings under the text: carets, code and message. */
export function frames(text: string, diagnostics: readonly Diagnostic[]): string[] {
  return diagnostics.map((each) => {
    const { start, end } = each.span;
    const carets = ' '.repeat(start) + '^'.repeat(Math.max(1, end - start));
    return `${text}\n${carets} ${each.code}: ${message(each)}`;
  });
}

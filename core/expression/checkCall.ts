import type { Fix } from '../diagnostics/diagnostic.ts';
import { compareTypes, fitType, kindDiagnostic, type Operand } from '../quantity/kinds.ts';
import type { QuantityType } from '../quantity/types.ts';
import { plainUnit } from '../quantity/unit.ts';
import { nearest } from '../text/nearest.ts';
import { check } from './check.ts';
import {
  broken,
  byRule,
  type Checking,
  isBroken,
  operandOf,
  quoteWord,
  report,
  shortText,
  takenAs,
} from './checking.ts';
import type { FunctionRow, Parameter } from './functionRow.ts';
import { resultType } from './resultType.ts';
import { sayTakes, sayType, wantedType } from './sayType.ts';
import { substitute } from './substitute.ts';
import { reportSwapped } from './swappedArguments.ts';
import type { Argument, Call, Expression } from './tree.ts';
import type { Type } from './type.ts';
import { parameterAt, type Supply, type Typed } from './typed.ts';

/** An argument at its parameter. */
interface Placed {
  readonly parameter: Parameter;
  readonly tree: Expression;
  typed: Typed;
}

export function checkCall(checking: Checking, tree: Call): Typed {
  const row = checking.scope.functionRow(tree.name);
  if (row === undefined) {
    for (const each of tree.arguments) check(checking, each.value);
    const near = nearest(tree.name, checking.scope.functionNames());
    const fixes = near.map((name) => ({
      title: `Write \`${name}\``,
      edits: [{ span: tree.nameSpan, newText: name }],
    }));
    report(checking, 'unknown-function', tree.nameSpan, { name: tree.name, nearest: near }, fixes);
    return broken(tree.span);
  }
  const placed = place(checking, row, tree);
  if (placed === undefined || placed.some((each) => each !== undefined && isBroken(each.typed)))
    return broken(tree.span);
  const fits =
    placed.every((each) => each === undefined || accepts(checking, row, each)) && agree(checking, placed);
  if (fits) reportSwapped(checking, row, tree, signature(row));
  const supplies = fits ? supply(checking, row, tree, placed) : undefined;
  if (supplies === undefined) return broken(tree.span);
  const answer = resultType(checking, row, placed, tree);
  if (answer !== undefined && 'wrong' in answer) {
    const misfit = placed[answer.wrong];
    if (misfit !== undefined) wrong(checking, row, misfit, undefined, undefined, answer.takes);
  }
  const type = answer === undefined || 'wrong' in answer ? undefined : answer;
  if (type === undefined) return broken(tree.span);
  const only = placed[0];
  if (row.form === 'conversion') {
    if (only === undefined || !counted(checking, row, only)) return broken(tree.span);
    return { kind: 'convert', of: only.typed, to: row.to, type, span: tree.span };
  }
  return { kind: 'apply', row, supplies, type, span: tree.span };
}

/** True for a pressure that is counted from a known zero; otherwise it is reported. */
function counted(checking: Checking, row: FunctionRow, placed: Placed): boolean {
  const kind = operandOf(placed.typed)?.kind;
  if (kind === 'absolute' || kind === 'gauge' || kind === 'vacuum') return true;
  const takes =
    'a pressure that says what it is counted from (`45 psi gauge`, `16 inHg vacuum`, `100 kPa absolute`)';
  return wrong(checking, row, placed, undefined, undefined, takes);
}

/** Each argument at its parameter, by place or by name, in the row's order; undefined when they do not go in. */
function place(checking: Checking, row: FunctionRow, tree: Call): (Placed | undefined)[] | undefined {
  const placed: (Placed | undefined)[] = row.parameters.map(() => undefined);
  let good = true;
  let named = false;
  for (const [at, argument] of tree.arguments.entries()) {
    const known = checking.diagnostics;
    const typed = check(checking, argument.value);
    if (argument.name !== undefined) named = true;
    else if (named && good) {
      report(checking, 'argument-order', argument.value.span, { name: row.name });
      good = false;
    }
    const slot =
      argument.name === undefined ? at : row.parameters.findIndex(({ name }) => name === argument.name);
    const parameter = slot < 0 ? undefined : parameterAt(row, slot);
    if (parameter === undefined) {
      if (good && !isDecimalComma(checking, tree, at)) unplaced(checking, row, argument);
      good = false;
      continue;
    }
    if (placed[slot] !== undefined) {
      if (good)
        report(checking, 'argument-twice', argument.nameSpan ?? argument.value.span, {
          name: row.name,
          parameter: parameter.name,
        });
      good = false;
      continue;
    }
    if (parameter.takes.what === 'text' && argument.value.kind === 'name') {
      const added = checking.diagnostics[known.length];
      if (added?.code === 'unknown-name') {
        checking.diagnostics = known;
        quoteWord(checking, argument.value);
      }
    }
    placed[slot] = { parameter, tree: argument.value, typed };
  }
  return good ? placed : undefined;
}

/** `absolute(14,1 psi)`: one argument too many, and its comma stands in a number. */
function isDecimalComma(checking: Checking, tree: Call, at: number): boolean {
  const whole = tree.arguments[at - 1]?.value;
  const rest = tree.arguments[at]?.value;
  if (whole?.kind !== 'quantity' || rest?.kind !== 'quantity') return false;
  const comma = { start: whole.span.end, end: rest.span.start };
  if (comma.end !== comma.start + 1 || whole.quantity.unit !== plainUnit || rest.quantity.value < 0)
    return false;
  const before = shortText(whole);
  // The zeros of `14,05` are no part of the number 5.
  const after = shortText(rest).padStart(rest.span.end - rest.span.start, '0');
  const offer = `${before}.${after}`;
  const fix = { title: `Write ${offer}`, edits: [{ span: comma, newText: '.' }] };
  const span = { start: whole.span.start, end: rest.span.end };
  report(checking, 'decimal-comma', span, { text: `${before},${after}`, offers: [offer] }, [fix]);
  return true;
}

function unplaced(checking: Checking, row: FunctionRow, { name, nameSpan, value }: Argument): void {
  if (name === undefined || nameSpan === undefined) {
    const facts = { name: row.name, most: row.parameters.length, signature: signature(row) };
    report(checking, 'too-many-arguments', value.span, facts);
    return;
  }
  const has = row.parameters.map((each) => each.name);
  const near = nearest(name, has);
  const fixes = near.map((each) => ({
    title: `Write \`${each}\``,
    edits: [{ span: nameSpan, newText: each }],
  }));
  report(
    checking,
    'unknown-parameter',
    nameSpan,
    { name: row.name, parameter: name, nearest: near, has },
    fixes,
  );
}

/** How a function is written: `switch_rate(x, level, hysteresis)`; what may be left out stands in brackets. */
function signature(row: FunctionRow): string {
  const parts = row.parameters.map((each) => {
    const name = each.repeats === true ? `${each.name} …` : each.name;
    return canBeLeftOut(each) ? `[${name}]` : name;
  });
  return `${row.name}(${parts.join(', ')})`;
}

function canBeLeftOut({ header, otherwise, optional }: Parameter): boolean {
  return header !== undefined || otherwise !== undefined || optional === true;
}

/** True when the argument is what its parameter takes; it is then taken as the kind asked for. */
function accepts(checking: Checking, row: FunctionRow, placed: Placed): boolean {
  const { takes } = placed.parameter;
  const { type } = placed.typed;
  switch (takes.what) {
    case 'text':
      return type.kind === 'words' || wrong(checking, row, placed);
    case 'truth':
      return type.kind === 'truth' || wrong(checking, row, placed);
    case 'curve':
      return type.kind === 'curve' || wrong(checking, row, placed);
    case 'series':
      return type.kind === 'series' ? fitQuantity(checking, row, placed) : wrong(checking, row, placed);
    case 'any':
    case 'many':
    case 'quantity':
      return type.kind === 'one' || type.kind === 'members' || type.kind === 'series'
        ? fitQuantity(checking, row, placed)
        : wrong(checking, row, placed);
  }
}

function fitQuantity(checking: Checking, row: FunctionRow, placed: Placed): boolean {
  const wanted = wantedType(placed.parameter.takes);
  const operand = operandOf(placed.typed);
  if (wanted === undefined || operand === undefined) return true;
  const answer = fitType(operand, wanted);
  if (answer.problem !== undefined) return wrong(checking, row, placed, operand, wanted);
  placed.typed = takenAs(checking, placed.typed, answer.leftAs);
  return true;
}

/** Names the parameter, what it takes and what it got; offers the conversion where one helps. */
function wrong(
  checking: Checking,
  row: FunctionRow,
  placed: Placed,
  operand?: Operand,
  wanted?: QuantityType,
  takes: string = sayTakes(placed.parameter.takes),
): false {
  const { parameter, tree, typed } = placed;
  const text = shortText(tree);
  let offers: readonly string[] = [];
  let fixes: readonly Fix[] = [];
  if (operand !== undefined && wanted !== undefined) {
    const { problem } = fitType({ ...operand, text }, wanted);
    if (problem !== undefined) {
      offers = problem.offers.flatMap(({ side, before, after, instead }) =>
        side === 'left' ? (instead ?? before + text + after) : [],
      );
      fixes = kindDiagnostic(problem, tree.span).fixes;
    }
  }
  const got = `\`${text}\` (${sayType(typed.type)})`;
  const facts = { name: row.name, parameter: parameter.name, meaning: parameter.meaning, takes, got, offers };
  report(checking, 'wrong-argument', tree.span, facts, fixes);
  return false;
}

/** All values of `min(a, b, c)` must be of one dimension and kind; literals take the kind of the others. */
function agree(checking: Checking, placed: readonly (Placed | undefined)[]): boolean {
  const many = placed.filter((each): each is Placed => each?.parameter.takes.what === 'many');
  if (many.length < 2) return true;
  const first = many.find(({ typed }) => operandOf(typed)?.bare !== true) ?? many[0];
  if (first === undefined) return true;
  for (const each of many) {
    const a = operandOf(first.typed);
    const b = operandOf(each.typed);
    if (each === first || a === undefined || b === undefined) continue;
    const answer = byRule(checking, compareTypes, a, b, first.tree, each.tree);
    if (answer === undefined) return false;
    first.typed = takenAs(checking, first.typed, answer.leftAs);
    each.typed = takenAs(checking, each.typed, answer.rightAs);
  }
  return true;
}

/** Where each parameter's value comes from; undefined when one that is needed is missing. */
function supply(
  checking: Checking,
  row: FunctionRow,
  tree: Call,
  placed: readonly (Placed | undefined)[],
): readonly Supply[] | undefined {
  const supplies: Supply[] = [];
  for (let at = 0; at < placed.length; at++) {
    const given = placed[at];
    const parameter = parameterAt(row, at);
    if (given !== undefined) supplies.push({ from: 'call', value: given.typed });
    else if (parameter !== undefined) {
      const found = leftOut(checking, row, tree, parameter);
      if (found === undefined) return undefined;
      supplies.push(found);
    }
  }
  return supplies;
}

function leftOut(checking: Checking, row: FunctionRow, tree: Call, parameter: Parameter): Supply | undefined {
  const { name, header, barometer, otherwise, otherwiseBy, optional } = parameter;
  const type = header === undefined ? undefined : checking.scope.headerType(header);
  if (header !== undefined && type !== undefined) {
    if (headerFits(type, parameter)) return { from: 'header', name: header };
    const facts = {
      name: row.name,
      parameter: name,
      meaning: parameter.meaning,
      takes: sayTakes(parameter.takes),
      got: `\`${header}\` (${sayType(type)})`,
      offers: [],
    };
    if (type.kind !== 'unknown') report(checking, 'wrong-argument', tree.nameSpan, facts);
    return undefined;
  }
  if (otherwise !== undefined && barometer === true)
    return {
      from: 'barometer',
      otherwise: substitute(parameter, otherwise),
      by:
        otherwiseBy !== undefined && checking.scope.headerType(otherwiseBy.header)?.kind === 'one'
          ? otherwiseBy
          : undefined,
    };
  if (otherwise !== undefined) return { from: 'row', value: substitute(parameter, otherwise) };
  if (optional === true) return { from: 'nowhere' };
  if (header !== undefined) {
    // A warning: the types are settled all the same, and the value says what it lacks.
    report(checking, 'missing-header-value', tree.nameSpan, { name: row.name, parameter: name, header });
    return { from: 'header', name: header };
  }
  const facts = {
    name: row.name,
    parameter: name,
    takes: sayTakes(parameter.takes),
    signature: signature(row),
  };
  report(checking, 'missing-argument', tree.nameSpan, facts);
  return undefined;
}

function headerFits(type: Type, { takes }: Parameter): boolean {
  if (takes.what === 'text') return type.kind === 'words';
  const wanted = wantedType(takes);
  if (type.kind !== 'one') return false;
  return wanted === undefined || fitType(type.quantity, wanted).problem === undefined;
}

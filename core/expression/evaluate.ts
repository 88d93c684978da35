import { exact, halfWidth, measured, power, slopeOfPower } from '../quantity/amount.ts';
import { fromSi, halfWidthSi, toSi } from '../quantity/convert.ts';
import { formatQuantity } from '../quantity/format.ts';
import type { Amount, QuantityType } from '../quantity/types.ts';
import { absentOf, cannotCompute, noBarometer, noNumbers, truthOf, undecided } from './absent.ts';
import { type Caution, cautionsOf } from './cautions.ts';
import { shortText } from './checking.ts';
import { combine, finite, mapAmounts, memberOf, negative, sayMember } from './combine.ts';
import { convertPressure } from './convertPressure.ts';
import { decide, opposite, verdictRank } from './decide.ts';
import type { FunctionRow, Parameter } from './functionRow.ts';
import { lift } from './lift.ts';
import { cutSeries, pickSamples } from './pickSamples.ts';
import type { Environment } from './scope.ts';
import { statementOf } from './statement.ts';
import type { Expression } from './tree.ts';
import type { Field, Type } from './type.ts';
import type {
  Apply,
  Both,
  Choice,
  Convert,
  Entry,
  FieldOf,
  Literal,
  SameWord,
  Supply,
  Typed,
  TypedExpression,
} from './typed.ts';
import type { Absent, Fields, One, Truth, Value } from './value.ts';

/**
 * Computes a typed expression. What is not there, or has no answer, comes out as an absent value with its reason,
 * a statement about it as a verdict of its own. Nothing throws.
 */
export function evaluate(typed: TypedExpression, environment: Environment): Value {
  return evaluateNode(typed.root, environment);
}

export function evaluateNode(node: Typed, environment: Environment): Value {
  switch (node.kind) {
    case 'broken':
      return cannotCompute('the expression has an error');
    case 'constant':
      return node.value;
    case 'literal':
      return literalValue(node);
    case 'read':
      return environment.value(node.id);
    case 'taken':
      return retyped(evaluateNode(node.of, environment), node.type);
    case 'entry':
      return entry(node, environment);
    case 'field':
      return field(node, environment);
    case 'apply':
      return apply(node, environment);
    case 'convert':
      return convert(node, environment);
    case 'negative': {
      const of = evaluateNode(node.of, environment);
      return 'quantity' in node.type ? negative(of, node.type.quantity) : of;
    }
    case 'sum': {
      const left = evaluateNode(node.left, environment);
      const right = evaluateNode(node.right, environment);
      return combine(node.operator, left, right, node.quantity);
    }
    case 'power': {
      const { exponent } = node;
      return mapAmounts(
        evaluateNode(node.of, environment),
        node.quantity,
        (of) => (of.si < 0 && !Number.isInteger(exponent) ? noRoot : finite(power(of, exponent))),
        (si) => slopeOfPower(si, exponent),
      );
    }
    case 'cut':
      return cutSeries(node, environment);
    case 'pick':
      return pickSamples(node, environment);
    case 'compare':
    case 'between':
    case 'within':
    case 'in range':
      return decide(statementOf(node, environment));
    case 'same word':
      return sameWord(node, environment);
    case 'opposite':
      if (node.of.kind === 'same word')
        return sameWord({ ...node.of, negated: !node.of.negated }, environment);
      return opposite(truthOf(evaluateNode(node.of, environment)));
    case 'both':
      return both(node, environment);
    case 'choice':
      return choice(node, environment);
  }
}

function literalValue({ written, operand, type, place, span }: Literal): Value {
  const si = toSi(written.value, written.unit, operand.kind);
  const quantity = 'quantity' in type ? type.quantity : operand;
  if (written.plusMinus === 0) return { kind: 'one', type: quantity, amount: exact(si) };
  const amount = measured(si, `${place ?? ''}@${span.start}`, halfWidthSi(written));
  return { kind: 'one', type: quantity, amount };
}

const noRoot = cannotCompute('a negative number has no such power');

function retyped(value: Value, type: Type): Value {
  if (value.kind === 'fields' && type.kind === 'fields') return retypedFields(value, type.fields);
  if (!('quantity' in type)) return value;
  const { quantity } = type;
  switch (value.kind) {
    case 'one':
      return { ...value, type: quantity };
    case 'members':
      return { ...value, type: quantity };
    case 'series':
      return { ...value, type: quantity };
    case 'range':
      return { ...value, type: quantity };
    default:
      return value;
  }
}

/** Each value in the unit and kind that its field declares; what a function left out cannot be computed. */
function retypedFields({ fields }: Fields, declared: readonly Field[]): Fields {
  const typed = new Map<string, Exclude<Value, Fields>>();
  for (const { name, type } of declared) {
    const value = retyped(fields.get(name) ?? noField, type);
    typed.set(name, value.kind === 'fields' ? noField : value);
  }
  return { kind: 'fields', fields: typed };
}

const noField = cannotCompute('it has no such value');

function field({ of, name }: FieldOf, environment: Environment): Value {
  const value = evaluateNode(of, environment);
  if (value.kind === 'absent') return value;
  return (value.kind === 'fields' ? value.fields.get(name) : undefined) ?? noField;
}

function entry(node: Entry, environment: Environment): Value {
  const of = evaluateNode(node.of, environment);
  const index = evaluateNode(node.index, environment);
  const absent = absentOf([of, index]);
  if (absent !== undefined) return absent;
  if (of.kind !== 'members') return cannotCompute('it has no members');
  let name: string;
  if (index.kind === 'words') name = index.text;
  else if (index.kind === 'one') name = String(fromSi(index.amount.si, index.type.unit, index.type.kind));
  else return cannotCompute('it is no name of a member');
  if (!of.members.has(name)) return cannotCompute(`there is no ${sayMember(of.by, name)}`);
  const member = memberOf(of, name);
  return 'si' in member ? { kind: 'one', type: of.type, amount: member } : member;
}

function supplied(supply: Supply, call: Apply, environment: Environment): Value | undefined {
  switch (supply.from) {
    case 'call':
      return evaluateNode(supply.value, environment);
    case 'header':
      return environment.header(supply.name, call) ?? cannotCompute(`the header has no \`${supply.name}\``);
    case 'row':
      return supply.value;
    case 'barometer':
    case 'nowhere':
      return undefined;
  }
}

/** The row's substitute, or the better one that a number of the header makes. */
function substituteBy(
  by: Parameter['otherwiseBy'] | undefined,
  otherwise: One,
  node: Apply,
  environment: Environment,
): Value {
  const found = by === undefined ? undefined : environment.header(by.header, node);
  const si = found?.kind === 'one' ? by?.of(found.amount.si) : undefined;
  return si === undefined ? otherwise : { ...otherwise, amount: { ...otherwise.amount, si } };
}

/** The barometer of what the call is about, of each state its own; where the case has none at all, the row's substitute. */
function barometerFor(
  node: Apply,
  at: number,
  { otherwise, by }: Extract<Supply, { readonly from: 'barometer' }>,
  args: readonly (Value | undefined)[],
  environment: Environment,
  stoodIn: (caution: Caution) => void,
): Value {
  const byState = args.find((each) => each?.kind === 'members' && each.by === 'state');
  let isTold = false;
  let standIn: Value | undefined;
  const ofState = (state: string | undefined): Value => {
    const found = environment.barometer(node, state);
    if (found !== noBarometer || otherwise.kind !== 'one') return found;
    standIn ??= substituteBy(by, otherwise, node, environment);
    if (isTold || standIn.kind !== 'one') return standIn;
    isTold = true;
    const place = standIn === otherwise ? '' : ` of the standard atmosphere at \`${by?.header}\``;
    const taken = `${formatQuantity(Number(standIn.amount.si.toPrecision(6)), standIn.type)}${place}`;
    const parameter = node.row.parameters[at]?.name ?? '';
    stoodIn({ kind: 'standard barometer', parameter, taken });
    return standIn;
  };
  if (byState?.kind !== 'members') return ofState(undefined);
  const members = new Map<string, Amount | Absent>();
  let type: QuantityType | undefined;
  for (const state of byState.members.keys()) {
    const found = ofState(state);
    if (found.kind === 'one') type ??= found.type;
    members.set(state, found.kind === 'one' ? found.amount : (absentOf([found]) ?? noBarometer));
  }
  return type === undefined ? noBarometer : { kind: 'members', by: 'state', type, members };
}

function apply(node: Apply, environment: Environment): Value {
  const { row, type } = node;
  const args = node.supplies.map((supply) => supplied(supply, node, environment));
  const substitutes: Caution[] = [];
  const stoodIn = (caution: Caution): number => substitutes.push(caution);
  for (const [at, supply] of node.supplies.entries())
    if (supply.from === 'barometer') args[at] = barometerFor(node, at, supply, args, environment, stoodIn);
  const absent = absentOf(args);
  if (absent !== undefined) return absent;
  const value = applied(row, args, type);
  // Where a call comes to nothing, nothing was taken for it.
  if (value.kind !== 'absent') for (const each of substitutes) environment.caution(node, each);
  for (const each of cautionsOf(row, args, value)) environment.caution(node, each);
  return value;
}

function applied(row: FunctionRow, args: readonly (Value | undefined)[], type: Type): Value {
  switch (row.form) {
    case 'scalar':
      return 'quantity' in type
        ? withinNumbers(lift(row, args, type.quantity))
        : cannotCompute('it is no number');
    case 'whole':
      return withinNumbers(retyped(row.evaluate(args), type));
    case 'conversion':
      return cannotCompute(`\`${row.name}\` is computed where its argument stands`);
  }
}

/** A function's number as sums take it; of several, each. */
function withinNumbers(value: Value): Value {
  if (value.kind === 'one') {
    const amount = finite(value.amount);
    return 'si' in amount ? value : amount;
  }
  if (value.kind !== 'members') return value;
  const isSound = [...value.members.values()].every((each) => !('si' in each) || 'si' in finite(each));
  if (isSound) return value;
  const members = new Map<string, Amount | Absent>();
  for (const [name, each] of value.members) members.set(name, 'si' in each ? finite(each) : each);
  return { ...value, members };
}

function convert(node: Convert, environment: Environment): Value {
  const from = node.of.type;
  if (!('quantity' in from) || !('quantity' in node.type)) return cannotCompute('it is no pressure');
  const value = evaluateNode(node.of, environment);
  const barometer = (state: string | undefined) => environment.barometer(node, state);
  return convertPressure(value, from.quantity.kind, node.type.quantity, barometer);
}

function sameWord(node: SameWord, environment: Environment): Truth {
  const left = evaluateNode(node.left, environment);
  const right = evaluateNode(node.right, environment);
  const open = wordAmong(node, left, right) ?? wordAmong(node, right, left);
  if (open !== undefined) return open;
  const absent = absentOf([left, right]);
  if (absent !== undefined) return undecided(absent);
  let same: boolean;
  let limit: string | undefined;
  if (left.kind === 'words' && right.kind === 'words') {
    if (leavesOpen(left.text, right.text)) {
      return { kind: 'truth', ...noNumbers, verdict: 'too close to call', why: 'the test came out unclear' };
    }
    same = left.text === right.text;
    limit = node.negated ? `not ${right.text}` : right.text;
  } else if (left.kind === 'truth' && right.kind === 'truth') {
    for (const side of [left, right]) {
      if (side.verdict !== 'holds' && side.verdict !== 'fails')
        return { kind: 'truth', ...noNumbers, verdict: side.verdict, why: side.why };
    }
    same = left.verdict === right.verdict;
  } else return undecided(cannotCompute('a word and a statement cannot be compared'));
  const holds = same !== node.negated;
  const why = !holds && left.kind === 'words' ? `it is ${left.text}` : undefined;
  return { kind: 'truth', ...noNumbers, verdict: holds ? 'holds' : 'fails', limit, why };
}

/** Beside what may be several words: one of them is too close to call, and any other it is not. */
function wordAmong({ negated }: SameWord, several: Value, word: Value): Truth | undefined {
  if (several.kind !== 'absent' || several.mayBe === undefined || word.kind !== 'words') return undefined;
  const { mayBe } = several;
  const why = `with the readings’ uncertainty it may be ${mayBe.map((each) => `"${each}"`).join(' or ')}`;
  const verdict = mayBe.includes(word.text) ? 'too close to call' : negated ? 'holds' : 'fails';
  const limit = negated ? `not ${word.text}` : word.text;
  return { kind: 'truth', ...noNumbers, verdict, limit, why };
}

/** A test that came out unclear says neither yes nor no. */
function leavesOpen(left: string, right: string): boolean {
  const decided = (word: string): boolean => word === 'yes' || word === 'no';
  return left === 'unclear' && decided(right);
}

/** `and`: fails, cannot compute, not measured, too close, holds; `or` the reverse. */
function both(node: Both, environment: Environment): Truth {
  const left = truthOf(evaluateNode(node.left, environment));
  const right = truthOf(evaluateNode(node.right, environment));
  const before = verdictRank.indexOf(left.verdict) - verdictRank.indexOf(right.verdict);
  const { verdict, why } = (node.operator === 'and' ? before <= 0 : before >= 0) ? left : right;
  if (verdict === 'not measured' || verdict === 'cannot compute')
    return { kind: 'truth', ...noNumbers, verdict, why };
  const deciding: string[] = [];
  if (left.verdict === verdict) deciding.push(sayHalf(node.left, node.tree.left, left));
  if (right.verdict === verdict) deciding.push(sayHalf(node.right, node.tree.right, right));
  return { kind: 'truth', ...noNumbers, verdict, why: deciding.join('; ') };
}

/** "`battery > 15 V` fails: 14.1 V"; halves of halves speak for themselves. */
function sayHalf(node: Typed, tree: Expression, { verdict, left, member, why }: Truth): string {
  if (node.kind === 'both' && why !== undefined) return why;
  const says = `\`${shortText(tree)}\` ${verdict === 'too close to call' ? `is ${verdict}` : verdict}`;
  if (left === undefined) return why === undefined ? says : `${says}: ${why}`;
  const who = member === undefined ? '' : /^\d+$/.test(member) ? `cylinder ${member}: ` : `${member}: `;
  return `${says}: ${who}${formatQuantity(left.amount.si, left.type, halfWidth(left.amount))}`;
}

function choice(node: Choice, environment: Environment): Value {
  const { verdict, why } = truthOf(evaluateNode(node.condition, environment));
  switch (verdict) {
    case 'holds':
      return retyped(evaluateNode(node.yes, environment), node.type);
    case 'fails':
      return retyped(evaluateNode(node.no, environment), node.type);
    case 'too close to call':
      return cannotCompute('its condition is too close to call');
    case 'not measured':
    case 'cannot compute':
      return { kind: 'absent', status: verdict, why: why ?? 'its condition has no verdict' };
  }
}

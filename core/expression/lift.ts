import { exact, halfWidth, linear } from '../quantity/amount.ts';
import type { Amount, QuantityType } from '../quantity/types.ts';
import { absentOf, cannotCompute, worse } from './absent.ts';
import { memberOf } from './combine.ts';
import { amountsAt } from './decide.ts';
import type { NoAnswer, Plain, ScalarFunction } from './functionRow.ts';
import { isTooMany, isTooManySampled, tooManySources } from './tooManySources.ts';
import type { Absent, Curve, Members, Series, Value } from './value.ts';

/**
 * A formula of single numbers applied to values: once, member by member, or sample by sample.
 * The uncertainty is carried by the formula's numeric slope at each argument, combined over the sources
 * (JCGM 100:2008, 5.1.3 note 2 and 5.2.2), so an argument given twice counts as one source.
 */
export function lift(row: ScalarFunction, args: readonly (Value | undefined)[], type: QuantityType): Value {
  const absent = absentOf(args);
  if (absent !== undefined) return absent;
  if (isTooMany(args)) return tooManySources;
  const shape = args.find((each) => each?.kind === 'members' || each?.kind === 'series');
  if (shape?.kind === 'members') return byMember(row, args, shape, type);
  if (shape?.kind === 'series') return bySample(row, args, shape, type);
  const amount = apply(row, args.map(given));
  return 'si' in amount ? { kind: 'one', type, amount } : amount;
}

/** An argument at one place: an amount, or what has no uncertainty. */
type Given = Amount | string | Curve | undefined;

function given(value: Value | undefined): Given {
  switch (value?.kind) {
    case 'one':
      return value.amount;
    case 'words':
      return value.text;
    case 'curve':
      return value;
    default:
      return undefined;
  }
}

function apply(row: ScalarFunction, args: readonly Given[]): Amount | Absent {
  const plain: Plain[] = args.map((each) => (isAmount(each) ? each.si : each));
  const si = row.compute(plain);
  if (typeof si !== 'number') return cannotCompute(sayReason(row, si));
  if (!Number.isFinite(si)) return cannotCompute(`\`${row.name}\` has no answer for these values`);
  const terms: [number, Amount][] = [];
  for (const [at, arg] of args.entries()) {
    if (!isAmount(arg) || arg.spread.length === 0) continue;
    const slope = slopeAt(row, plain, at, arg, si);
    if (slope === undefined)
      return cannotCompute(`the uncertainty of \`${row.name}\` cannot be told for these values`);
    terms.push([slope, arg]);
  }
  return terms.length === 0 ? exact(si) : linear(si, terms);
}

function sayReason(row: ScalarFunction, answer: NoAnswer): string {
  return `\`${row.name}\`: ${answer.noAnswer}`;
}

function isAmount(of: Given): of is Amount {
  return typeof of === 'object' && 'si' in of;
}

/** The cube root of a double's precision: the step at which a central difference is most exact. */
const step = 6e-6;

/**
 * ∂result/∂argument by a central difference; from one side where the formula ends.
 * The step goes by the argument or by its uncertainty, whichever is the larger: next to 0, where 0.3 − 0.2 − 0.1 ends up,
 * a step by the argument alone would not move the result at all.
 */
function slopeAt(
  row: ScalarFunction,
  plain: readonly Plain[],
  at: number,
  arg: Amount,
  y: number,
): number | undefined {
  const x = arg.si;
  const h = step * Math.max(Math.abs(x), halfWidth(arg));
  const up = moved(row, plain, at, x + h);
  const down = moved(row, plain, at, x - h);
  if (up !== undefined && down !== undefined) return (up - down) / (x + h - (x - h));
  if (up !== undefined) return (up - y) / h;
  return down === undefined ? undefined : (y - down) / h;
}

function moved(row: ScalarFunction, plain: readonly Plain[], at: number, to: number): number | undefined {
  const answer = row.compute(plain.with(at, to));
  return typeof answer === 'number' && Number.isFinite(answer) ? answer : undefined;
}

function byMember(
  row: ScalarFunction,
  args: readonly (Value | undefined)[],
  shape: Members,
  type: QuantityType,
): Value {
  const names = new Set<string>();
  for (const arg of args) if (arg?.kind === 'members') for (const name of arg.members.keys()) names.add(name);
  const members = new Map<string, Amount | Absent>();
  for (const name of names) {
    let absent: Absent | undefined;
    const each = args.map((arg): Given => {
      if (arg?.kind !== 'members') return given(arg);
      const member = memberOf(arg, name);
      if ('si' in member) return member;
      absent = worse(absent, member);
      return undefined;
    });
    members.set(name, absent ?? apply(row, each));
  }
  return { kind: 'members', by: shape.by, type, members };
}

function bySample(
  row: ScalarFunction,
  args: readonly (Value | undefined)[],
  shape: Series,
  type: QuantityType,
): Value {
  const count = shape.time.length;
  if (isTooManySampled(args, count)) return tooManySources;
  const samples = new Float64Array(count).fill(Number.NaN);
  const spread = new Map<string, Float64Array>();
  let reason: Absent | undefined;
  const numbers = args.filter((arg): arg is Value => arg?.kind === 'one' || arg?.kind === 'series');
  for (let i = 0; i < count; i++) {
    const amounts = amountsAt(numbers, shape.time[i] ?? Number.NaN, i);
    if (amounts === undefined) continue;
    let next = 0;
    const got = apply(
      row,
      args.map((arg) => (arg?.kind === 'one' || arg?.kind === 'series' ? amounts[next++] : given(arg))),
    );
    if (!('si' in got)) {
      reason ??= got;
      continue;
    }
    samples[i] = got.si;
    for (const { source, by } of got.spread) {
      let all = spread.get(source);
      if (all === undefined) {
        all = new Float64Array(count);
        spread.set(source, all);
      }
      all[i] = by;
    }
  }
  if (reason !== undefined && samples.every(Number.isNaN)) return reason;
  const sorted = [...spread].sort(([a], [b]) => (a < b ? -1 : 1)).map(([source, by]) => ({ source, by }));
  return { kind: 'series', type, capture: shape.capture, time: shape.time, samples, spread: sorted };
}

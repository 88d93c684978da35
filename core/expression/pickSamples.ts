import { absentOf, cannotCompute } from './absent.ts';
import { amountsAt } from './decide.ts';
import { evaluateNode } from './evaluate.ts';
import type { Environment } from './scope.ts';
import { atLeast, atMost, firstAtOrAfter, samplesAt, slice } from './series.ts';
import { statementOf } from './statement.ts';
import type { CutSeries, PickSamples, Typed } from './typed.ts';
import type { Absent, Value } from './value.ts';

/** `x from 2 s to 10 s`: both ends belong to it. */
export function cutSeries(cut: CutSeries, environment: Environment): Value {
  const of = evaluateNode(cut.of, environment);
  const start = evaluateNode(cut.start, environment);
  const end = evaluateNode(cut.end, environment);
  const absent = absentOf([of, start, end]);
  if (absent !== undefined) return absent;
  if (of.kind !== 'series' || start.kind !== 'one' || end.kind !== 'one')
    return cannotCompute('it has no samples');
  const first = firstAtOrAfter(of.time, atLeast(start.amount.si));
  let last = firstAtOrAfter(of.time, end.amount.si);
  while (last < of.time.length && (of.time[last] ?? 0) <= atMost(end.amount.si)) last++;
  return slice(of, first, Math.max(first, last));
}

/** `x where (…)`: the samples at which the statement holds, by nominal values. */
export function pickSamples(pick: PickSamples, environment: Environment): Value {
  const of = evaluateNode(pick.of, environment);
  if (of.kind === 'absent') return of;
  if (of.kind !== 'series') return cannotCompute('it has no samples');
  const condition = atEachMoment(pick.condition, environment);
  if (typeof condition !== 'function') return condition;
  const kept: number[] = [];
  for (let i = 0; i < of.time.length; i++) if (condition(of.time[i] ?? Number.NaN, i) === true) kept.push(i);
  return samplesAt(of, Int32Array.from(kept));
}

/** Whether a statement holds at a moment; undefined where a sample is missing or no verdict exists. */
type AtMoment = (time: number, guess: number) => boolean | undefined;

function atEachMoment(condition: Typed, environment: Environment): AtMoment | Absent {
  switch (condition.kind) {
    case 'both': {
      const left = atEachMoment(condition.left, environment);
      const right = atEachMoment(condition.right, environment);
      if (typeof left !== 'function') return left;
      if (typeof right !== 'function') return right;
      const decided = condition.operator === 'or';
      return (time, guess) => {
        const a = left(time, guess);
        const b = right(time, guess);
        if (a === decided || b === decided) return decided;
        return a === undefined || b === undefined ? undefined : !decided;
      };
    }
    case 'opposite': {
      const of = atEachMoment(condition.of, environment);
      if (typeof of !== 'function') return of;
      return (time, guess) => {
        const holds = of(time, guess);
        return holds === undefined ? undefined : !holds;
      };
    }
    case 'compare':
    case 'between':
    case 'within':
    case 'in range': {
      const statement = statementOf(condition, environment);
      const absent = absentOf(statement.operands);
      if (absent !== undefined) return absent;
      if (!statement.operands.some((each) => each.kind === 'series')) break;
      return (time, guess) => {
        const amounts = amountsAt(statement.operands, time, guess);
        if (amounts === undefined) return undefined;
        const { verdict } = statement.test(amounts.map(({ si }) => ({ si, spread: [] })));
        return verdict === 'holds' ? true : verdict === 'fails' ? false : undefined;
      };
    }
    default:
      break;
  }
  const truth = evaluateNode(condition, environment);
  if (truth.kind !== 'truth')
    return truth.kind === 'absent' ? truth : cannotCompute('the condition is no statement');
  const { verdict, why } = truth;
  if (verdict === 'holds') return () => true;
  if (verdict === 'fails') return () => false;
  const status = verdict === 'not measured' ? verdict : 'cannot compute';
  return { kind: 'absent', status, why: why ?? `the condition is ${verdict}` };
}

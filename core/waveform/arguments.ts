import { cannotCompute } from '../expression/absent.ts';
import type { ComputedType, Parameter, WholeFunction } from '../expression/functionRow.ts';
import type { Type } from '../expression/type.ts';
import type { Absent, Series, Value } from '../expression/value.ts';
import { exact } from '../quantity/amount.ts';
import type { Amount, QuantityType } from '../quantity/types.ts';
import { plainUnit, unitOf } from '../quantity/unit.ts';
import { carried } from './carry.ts';
import { isRecorded, type Recorded, recorded } from './recorded.ts';

export const samplesOfX: Parameter = {
  name: 'x',
  takes: { what: 'series' },
  meaning: 'samples of one channel',
};
export const samplesOfY: Parameter = {
  name: 'y',
  takes: { what: 'series' },
  meaning: 'samples of another channel of the same capture',
};

export function volts(name: string, meaning: string): Parameter {
  return { name, takes: { what: 'series', unit: 'V' }, meaning };
}

export function voltage(name: string, meaning: string, otherwise: string): Parameter {
  return { name, takes: { what: 'quantity', unit: 'V' }, meaning, otherwise };
}

/** One quantity of this unit, without a kind. */
export function typeIn(symbol: string): QuantityType {
  const unit = unitOf(symbol) ?? plainUnit;
  return { dimension: unit.dimension, kind: 'none', unit };
}

/** Whether a level may be laid against samples: of their dimension, and counted from the same zero where both say which. */
export function sameSort(x: Type | undefined, level: Type | undefined): boolean {
  if (x?.kind !== 'series') return false;
  if (level === undefined) return true;
  if (level.kind !== 'one') return false;
  const [a, b] = [x.quantity, level.quantity];
  return a.dimension === b.dimension && (a.kind === b.kind || a.kind === 'open' || b.kind === 'open');
}

/** Two channels of one capture, whose samples belong together; otherwise the second does not fit. */
export function ofOneCapture(types: readonly (Type | undefined)[], result: QuantityType): ComputedType {
  const [x, y] = types;
  if (x?.kind !== 'series') return { wrong: 0, takes: 'samples of a capture' };
  if (y?.kind !== 'series') return { wrong: 1, takes: 'samples of a capture' };
  if (x.capture !== y.capture) {
    return { wrong: 1, takes: 'samples of the same capture; `resample(y, x)` takes them to its moments' };
  }
  return { type: { kind: 'one', quantity: result } };
}

/** A number read off one channel, with up to two numbers beside it (SI; undefined where left out). */
type Read = (record: Recorded, a: number | undefined, b: number | undefined) => number | Absent;
type Arguments = readonly (Value | undefined)[];

/** A row's `evaluate` for what is read off one channel; uncertainty is carried. */
export function readingOf(symbol: string, read: Read): WholeFunction['evaluate'] {
  return (args) => evaluated(args, symbol, (series, amounts) => carriedRead(series, amounts, read));
}

/** The same for what is counted: exact, by the nominal values. */
export function countOf(symbol: string, read: Read): WholeFunction['evaluate'] {
  return (args) =>
    evaluated(args, symbol, ([series], [a, b]) => {
      const count = readRecord(series, read, a?.si, b?.si);
      return typeof count === 'number' ? exact(count) : count;
    });
}

/** The same for what two channels say together. */
export function pairOf(
  symbol: string,
  read: (x: Series, y: Series) => number | Absent,
): WholeFunction['evaluate'] {
  return (args) =>
    evaluated(args, symbol, (series) =>
      carried(series, [], ([x, y]) => (x === undefined || y === undefined ? noSamples : read(x, y))),
    );
}

function carriedRead(
  series: readonly Series[],
  amounts: readonly (Amount | undefined)[],
  read: Read,
): Amount | Absent {
  const given = amounts.filter((each) => each !== undefined);
  return carried(series, given, ([moved], numbers) => {
    let next = 0;
    const [a, b] = amounts.map((each) => (each === undefined ? undefined : numbers[next++]));
    return readRecord(moved, read, a, b);
  });
}

const noSamples = cannotCompute('it has no samples');

function readRecord(
  series: Series | undefined,
  read: Read,
  a: number | undefined,
  b: number | undefined,
): number | Absent {
  if (series === undefined) return noSamples;
  const record = recorded(series);
  return isRecorded(record) ? read(record, a, b) : record;
}

/** Channels first, then numbers: the order of every row's parameters. */
function evaluated(
  args: Arguments,
  symbol: string,
  evaluate: (series: readonly Series[], amounts: readonly (Amount | undefined)[]) => Amount | Absent,
): Value {
  const series: Series[] = [];
  const amounts: (Amount | undefined)[] = [];
  for (const each of args) {
    if (each === undefined) amounts.push(undefined);
    else if (each.kind === 'series') series.push(each);
    else if (each.kind === 'one') amounts.push(each.amount);
    else return each.kind === 'absent' ? each : cannotCompute('it is no number');
  }
  const amount = evaluate(series, amounts);
  return 'si' in amount ? { kind: 'one', type: typeIn(symbol), amount } : amount;
}

import { fromSi, toSi } from '../quantity/convert.ts';
import { formatQuantity } from '../quantity/format.ts';
import type { Kind } from '../quantity/types.ts';
import { unitOf } from '../quantity/unit.ts';
import { type Interval, rangesOf } from '../signals/ranges.ts';
import type { Form, Signal } from '../signals/types.ts';

/** A signal as it may stand in a case, and the engine state that the value is usual in. */
export interface SignalExample {
  readonly line: string;
  readonly state?: string;
}

/** A believable line for a signal: the middle of what is usual in a state, or of what is possible. */
export function signalExample(signal: Signal): SignalExample | undefined {
  const [form] = signal.forms;
  if (signal.holds === 'word') {
    const [word] = signal.words ?? [];
    return word === undefined ? undefined : { line: `${signal.name}: ${word}` };
  }
  if (signal.holds === 'text' || form === undefined) return undefined;
  const { usual, physical, encoding } = rangesOf(form);
  const [common] = usual;
  const range = common?.range ?? within(physical, encoding);
  const value = range === undefined ? undefined : written(middle(range), range, form);
  if (value === undefined) return undefined;
  const line = `${signal.name}: ${value}`;
  return common === undefined ? { line } : { line, state: common.state };
}

/** What is possible and can be carried by the data. */
function within(possible: Interval | undefined, carried: Interval | undefined): Interval | undefined {
  if (possible === undefined || carried === undefined) return possible ?? carried;
  return { low: Math.max(possible.low, carried.low), high: Math.min(possible.high, carried.high) };
}

function middle({ low, high }: Interval): number {
  if (Number.isFinite(low) && Number.isFinite(high)) return (low + high) / 2;
  return Number.isFinite(low) ? low : high;
}

/** With as few digits as stay inside the range. */
function written(si: number, { low, high }: Interval, form: Form): string | undefined {
  const unit = unitOf(form.unit);
  if (unit === undefined || !Number.isFinite(si)) return undefined;
  const kind: Kind = form.kind ?? 'none';
  const size = (high - low) / unit.factor;
  const step = Number.isFinite(size) && size > 0 ? 10 ** Math.floor(Math.log10(size / 4)) : 1;
  const rounded = toSi(Math.round(fromSi(si, unit, kind) / step) * step, unit, kind);
  const type = { dimension: unit.dimension, kind, unit };
  if (!(rounded >= low && rounded <= high)) return undefined;
  // The signal's kind is its own and is not written.
  return formatQuantity(rounded, type);
}

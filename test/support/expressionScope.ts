import { diagnose } from '../../core/diagnostics/diagnostic.ts';
import { noBarometer } from '../../core/expression/absent.ts';
import type { FunctionRow } from '../../core/expression/functionRow.ts';
import { seriesFunctions } from '../../core/expression/functions/series.ts';
import { valueFunctions } from '../../core/expression/functions/values.ts';
import type { Environment, Scope } from '../../core/expression/scope.ts';
import type { Type } from '../../core/expression/type.ts';
import type { Absent, Members, One, Range, Series, Value } from '../../core/expression/value.ts';
import { exact, measured } from '../../core/quantity/amount.ts';
import { halfWidthSi, quantitySi } from '../../core/quantity/convert.ts';
import { scanQuantity } from '../../core/quantity/scan.ts';
import type { Amount, Quantity, QuantityType } from '../../core/quantity/types.ts';
import { nearest } from '../../core/text/nearest.ts';

/** A value by its full name, as a case would hold it. */
export interface Held {
  readonly value: Value;
  readonly type: Type;
  readonly role?: 'barometer' | 'manifold';
}

export type Names = Readonly<Record<string, Held>>;

function written(text: string): Quantity {
  const quantity = scanQuantity(text, 0)?.quantity;
  if (quantity === undefined) throw new Error(`no quantity: ${text}`);
  return quantity;
}

function typeOf({ unit, kind }: Quantity): QuantityType {
  return { dimension: unit.dimension, kind, unit };
}

function amountOf(quantity: Quantity, source: string): Amount {
  const si = quantitySi(quantity);
  return quantity.plusMinus === 0 ? exact(si) : measured(si, source, halfWidthSi(quantity));
}

/** One reading: `reading('13.1 ± 0.2 inHg absolute')`. Each name is a source of its own unless one is given. */
export function reading(text: string, source = text, role?: Held['role']): Held {
  const quantity = written(text);
  const type = typeOf(quantity);
  const value: One = { kind: 'one', type, amount: amountOf(quantity, source) };
  return { value, type: { kind: 'one', quantity: type }, ...(role === undefined ? {} : { role }) };
}

/** A reading by cylinder, label or state; `-` is one that was not taken. */
export function byMember(by: Members['by'], texts: Readonly<Record<string, string>>): Held {
  let type: QuantityType | undefined;
  const members = new Map<string, Amount | Absent>();
  for (const [name, text] of Object.entries(texts)) {
    if (text === '-') {
      members.set(name, { kind: 'absent', status: 'not measured', why: 'not taken' });
      continue;
    }
    const quantity = written(text);
    type ??= typeOf(quantity);
    members.set(name, amountOf(quantity, `${name}: ${text}`));
  }
  if (type === undefined) throw new Error('no member has a value');
  return { value: { kind: 'members', by, type, members }, type: { kind: 'members', by, quantity: type } };
}

/** Samples in the unit of `like`, at these times in seconds; NaN is a missing sample. */
export function samples(
  capture: string,
  like: string,
  time: readonly number[],
  values: readonly number[],
  halfWidth = 0,
): Held {
  const quantity = written(`1 ${like}`);
  const type = typeOf(quantity);
  const value: Series = {
    kind: 'series',
    type,
    capture,
    time: Float64Array.from(time),
    samples: Float64Array.from(values.map((each) => quantitySi({ ...quantity, value: each }))),
    spread: halfWidth === 0 ? [] : [{ source: `${capture} ${like}`, by: halfWidth * quantity.unit.factor }],
  };
  return { value, type: { kind: 'series', quantity: type, capture } };
}

export function range(low: string | undefined, high: string | undefined): Held {
  const type = typeOf(written(high ?? low ?? '1'));
  const end = (text: string | undefined): Amount | undefined =>
    text === undefined ? undefined : amountOf(written(text), text);
  const value: Range = { kind: 'range', type, low: end(low), high: end(high) };
  return { value, type: { kind: 'range', quantity: type } };
}

export function curve(pairs: readonly (readonly [string, string])[]): Held {
  const x = pairs.map(([each]) => written(each));
  const y = pairs.map(([, each]) => written(each));
  const [first, second] = [x[0], y[0]];
  if (first === undefined || second === undefined) throw new Error('a curve needs points');
  const [xType, yType] = [typeOf(first), typeOf(second)];
  const value: Value = {
    kind: 'curve',
    xType,
    yType,
    x: x.map((each) => quantitySi(each)),
    y: y.map((each) => quantitySi(each)),
  };
  return { value, type: { kind: 'curve', x: xType, y: yType } };
}

export function words(text: string): Held {
  return { value: { kind: 'words', text }, type: { kind: 'words' } };
}

/** A signal that no cell holds: its type is known, its value is not. */
export function notTaken(like: string): Held {
  return { ...reading(like), value: { kind: 'absent', status: 'not measured', why: 'not measured' } };
}

export function notComputed(like: string, why: string): Held {
  return { ...reading(like), value: { kind: 'absent', status: 'cannot compute', why } };
}

/** A scope over names, with dotted ones; what a name lacks behind its longest part are members of its value. */
export function scopeOf(names: Names, header: Names = {}, more: readonly FunctionRow[] = []): Scope {
  const rows = new Map([...valueFunctions, ...seriesFunctions, ...more].map((row) => [row.name, row]));
  return {
    place: 'test',
    resolve: (path, spans) => {
      for (let used = path.length; used > 0; used--) {
        const id = path.slice(0, used).join('.');
        if (!Object.hasOwn(names, id)) continue;
        const held = names[id];
        if (held !== undefined) return { kind: 'value', id, type: held.type, used, role: held.role };
      }
      const name = path.join('.');
      const [start, end] = [spans[0], spans.at(-1)];
      const span = { start: start?.start ?? 0, end: end?.end ?? 0 };
      const facts = { name, nearest: nearest(name, Object.keys(names)) };
      return { kind: 'problem', diagnostic: diagnose('unknown-name', span, facts) };
    },
    functionRow: (name) => rows.get(name),
    functionNames: () => [...rows.keys()],
    headerType: (name) => header[name]?.type,
  };
}

export function environmentOf(names: Names, header: Names = {}, barometer?: Held): Environment {
  return {
    value: (id) => names[id]?.value ?? { kind: 'absent', status: 'cannot compute', why: 'unknown' },
    header: (name) => header[name]?.value,
    barometer: () => (barometer?.value.kind === 'one' ? barometer.value : noBarometer),
    caution: () => {},
  };
}

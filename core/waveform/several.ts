import { absentOf, cannotCompute } from '../expression/absent.ts';
import type { ResultField, WholeFunction } from '../expression/functionRow.ts';
import type { Absent, Fields, Series, Value } from '../expression/value.ts';
import { linear } from '../quantity/amount.ts';
import type { Amount, SourceId, Spread } from '../quantity/types.ts';
import { typeIn } from './arguments.ts';
import { between, contribution, movedSeries, tooUnsure } from './carry.ts';
import { type Recorded, recorded } from './recorded.ts';

/** An argument as a reading takes it: samples, a number in SI, a text, or nothing where it is left out. */
export type Given = Series | number | string | undefined;

/** What a reading gives under each name of the row's fields: a number in SI, words, or why there is none. */
export type Readings = Readonly<Record<string, number | string | Absent>>;

/**
 * A row's `evaluate` for a reading that gives several values at once. Uncertainty goes to each number on its own:
 * the whole reading is taken again with every source moved up and down (see `carried`). Counts and words are nominal.
 */
export function severalOf(
  fields: readonly ResultField[],
  read: (given: readonly Given[]) => Readings | Absent,
): WholeFunction['evaluate'] {
  return (args) => {
    const absent = absentOf(args);
    if (absent !== undefined) return absent;
    if (args.some((each) => each?.kind === 'members')) return oneEach;
    const nominal = read(args.map((each) => given(each, '', 0)));
    if (isAbsent(nominal)) return nominal;
    const shifts = [...sourcesOf(args)].map((source) => ({
      source,
      up: read(args.map((each) => given(each, source, 1))),
      down: read(args.map((each) => given(each, source, -1))),
    }));
    const values = new Map<string, Exclude<Value, Fields>>();
    for (const { name, unit } of fields) {
      const found = nominal[name];
      if (typeof found === 'string') values.set(name, { kind: 'words', text: found });
      else if (typeof found === 'object') values.set(name, found);
      else if (found !== undefined) {
        const amount = carriedBy(found, name, shifts);
        values.set(name, 'si' in amount ? { kind: 'one', type: typeIn(unit), amount } : amount);
      }
    }
    return { kind: 'fields', fields: values };
  };
}

const oneEach = cannotCompute('it takes one value here, not several: name one of them');

interface Shift {
  readonly source: SourceId;
  readonly up: Readings | Absent;
  readonly down: Readings | Absent;
}

function carriedBy(nominal: number, name: string, shifts: readonly Shift[]): Amount | Absent {
  const terms: [number, Amount][] = [];
  for (const { source, up, down } of shifts) {
    const by = between(nominal, numberIn(up, name), numberIn(down, name));
    if (by === undefined) return tooUnsure;
    terms.push([1, { si: nominal, spread: [{ source, by }] }]);
  }
  return linear(nominal, terms);
}

function numberIn(readings: Readings | Absent, name: string): number {
  const found = isAbsent(readings) ? undefined : readings[name];
  return typeof found === 'number' ? found : Number.NaN;
}

export function isAbsent(of: object): of is Absent {
  return 'kind' in of && of.kind === 'absent';
}

function given(value: Value | undefined, source: SourceId, sign: 1 | 0 | -1): Given {
  if (value?.kind === 'series') return sign === 0 ? value : movedSeries(value, source, sign);
  if (value?.kind === 'one') return value.amount.si + sign * contribution(value.amount.spread, source);
  return value?.kind === 'words' ? value.text : undefined;
}

function sourcesOf(args: readonly (Value | undefined)[]): ReadonlySet<SourceId> {
  const sources = new Set<SourceId>();
  for (const each of args) {
    const spread: Spread | Series['spread'] =
      each?.kind === 'series' ? each.spread : each?.kind === 'one' ? each.amount.spread : [];
    for (const { source } of spread) sources.add(source);
  }
  return sources;
}

/** The samples of an argument that is a channel, checked and ready; why not, where they are not. */
export function recordIn(of: Given): Recorded | Absent {
  return typeof of === 'object' ? recorded(of) : cannotCompute('it has no samples');
}

/** The number of an argument, or what stands in where it is left out. */
export function numberOr(of: Given, otherwise: number): number {
  return typeof of === 'number' ? of : otherwise;
}

import type { Chosen } from '../../engine/obd/chooseValues.ts';
import type { ItemValue } from '../../engine/obd/item.ts';
import { hexOnTape, type Tape } from '../../engine/obd/tape.ts';
import type { Type } from '../../expression/type.ts';
import type { Absent, Value } from '../../expression/value.ts';
import { linear, measured } from '../../quantity/amount.ts';
import { fromSi, toSi } from '../../quantity/convert.ts';
import type { Amount, QuantityType } from '../../quantity/types.ts';
import { unitOf } from '../../quantity/unit.ts';
import { formFor, signalOf } from '../../signals/lookup.ts';
import type { Form, Signal } from '../../signals/types.ts';
import { cover, type Span } from '../../text/span.ts';
import { typeOfSignal } from '../readValue.ts';
import { findTool } from '../tools.ts';
import type { Reading } from '../types.ts';
import type { Circumstances } from './values.ts';

/** A reading from the bytes of one value, or of the members of one signal; undefined for a signal that is not known. */
export function decodedReading(
  chosen: readonly Chosen[],
  around: Circumstances,
  tape: Tape,
  placed: (from: number, to: number) => Span,
): Reading | undefined {
  const [first] = chosen;
  const signal = first === undefined ? undefined : signalOf(first.signal);
  if (first === undefined || signal === undefined) return undefined;
  const key = signal.name;
  const fullName = around.prefix === undefined ? key : `${around.prefix}.${key}`;
  const source = around.prefix === undefined ? `${around.cell + 1}..${key}` : fullName;
  const read =
    first.member === undefined
      ? oneValue(first.item.value, signal, source, around)
      : members(chosen, signal, source, around);
  const spans = chosen.map(({ item }) => placed(item.from, item.to));
  const span = spans.reduce(cover);
  return {
    fullName,
    key,
    from: around.from,
    cell: around.cell,
    when: around.when,
    state: around.state,
    column: around.column,
    signal,
    form: read.form,
    type: read.type,
    value: read.value,
    keySpan: span,
    valueSpan: span,
    tool: around.tool?.text,
    at: undefined,
    saw: undefined,
    bytes: chosen.map(({ item }) => hexOnTape(tape, item.from, item.to)).join(' '),
  };
}

interface Read {
  readonly type: Type;
  readonly value: Value;
  readonly form: Form | undefined;
}

function oneValue(value: ItemValue, signal: Signal, source: string, around: Circumstances): Read {
  switch (value.is) {
    case 'absent':
      return { type: typeOfSignal(signal), value: absent(value.why), form: undefined };
    case 'words': {
      const known = signal.holds === 'text' || (signal.words ?? []).includes(value.text);
      const words: Value = known
        ? { kind: 'words', text: value.text }
        : { kind: 'absent', status: 'cannot compute', why: `its bytes hold no known word: ${value.text}` };
      return { type: { kind: 'words' }, value: words, form: undefined };
    }
    case 'number': {
      const number = readItem(value, signal);
      if (number === undefined) return { type: typeOfSignal(signal), value: noUnit, form: undefined };
      const { type, form } = number;
      const amount = amountOf(number, source, around);
      return { type: { kind: 'one', quantity: type }, value: { kind: 'one', type, amount }, form };
    }
  }
}

function members(chosen: readonly Chosen[], signal: Signal, source: string, around: Circumstances): Read {
  const amounts = new Map<string, Amount | Absent>();
  let first: ReturnType<typeof readItem>;
  for (const { member = '', item } of chosen) {
    const number = item.value.is === 'number' ? readItem(item.value, signal) : undefined;
    first ??= number;
    amounts.set(member, number === undefined ? noUnit : amountOf(number, `${source}[${member}]`, around));
  }
  if (first === undefined) return { type: typeOfSignal(signal), value: noUnit, form: undefined };
  const { type, form } = first;
  const by = signal.by ?? 'label';
  return {
    type: { kind: 'members', by, quantity: type },
    value: { kind: 'members', by, type, members: amounts },
    form,
  };
}

interface ReadNumber {
  readonly si: number;
  /** In SI. */
  readonly step: number;
  readonly type: QuantityType;
  readonly form: Form | undefined;
}

/** A decoded number in SI, of the kind that its signal is; undefined for a unit that is not known. */
export function readItem(
  value: ItemValue & { readonly is: 'number' },
  signal: Signal | undefined,
): ReadNumber | undefined {
  const unit = unitOf(value.unit);
  if (unit === undefined) return undefined;
  const form = signal === undefined ? undefined : formFor(signal, unit.dimension);
  const type: QuantityType = { dimension: unit.dimension, kind: form?.kind ?? value.kind, unit };
  return { si: toSi(value.value, unit, type.kind), step: value.step * Math.abs(unit.factor), type, form };
}

/**
 * What is read lies within half a step of what was measured (JCGM 100:2008, F.2.2.1); the instrument's own accuracy,
 * where one is named, is a second source.
 */
function amountOf({ si, step, type }: ReadNumber, source: string, around: Circumstances): Amount {
  const encoded = measured(si, source, step / 2);
  const accuracy = findTool(around.header.tools, around.tool).accuracy;
  const width = accuracy?.halfWidth(fromSi(si, type.unit, type.kind), type) ?? 0;
  if (width === 0) return encoded;
  if (step === 0) return measured(si, source, width);
  return linear(si, [
    [1, encoded],
    [1, measured(0, `${source} tool`, width)],
  ]);
}

const absent = (why: string): Absent => ({ kind: 'absent', status: 'not measured', why });

const noUnit: Absent = { kind: 'absent', status: 'cannot compute', why: 'it could not be read' };

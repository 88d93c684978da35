import type { HeaderCell } from '../casefile/cell.ts';
import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import { oneOf } from '../diagnostics/row.ts';
import { pressure, temperature, turn } from '../quantity/dimension.ts';
import { parseQuantity } from '../quantity/parse.ts';
import type { Dimension, Quantity } from '../quantity/types.ts';
import { signalOf } from '../signals/lookup.ts';
import type { Form, Signal } from '../signals/types.ts';
import { takenByLanguage } from './cells/names.ts';
import { readUnit } from './readUnit.ts';
import { readValue } from './readValue.ts';

type Declared = NonNullable<HeaderCell['signals']>[number]['value'];

export interface OwnSignals {
  readonly signals: ReadonlyMap<string, Signal>;
  readonly diagnostics: readonly Diagnostic[];
}

/** `signals:` of the header: the case's own vocabulary. */
export function readOwnSignals(cell: HeaderCell): OwnSignals {
  const signals = new Map<string, Signal>();
  const diagnostics: Diagnostic[] = [];
  for (const { key, value } of cell.signals ?? []) {
    const name = key.text;
    const what =
      takenByLanguage(name) ?? (signalOf(name) === undefined ? undefined : 'a signal that is known already');
    if (what !== undefined) {
      diagnostics.push(diagnose('shadowed-name', key.span, { name, what }));
      continue;
    }
    // Without a unit it is a plain number.
    const unit = value.unit === undefined ? parseQuantity('1') : readUnit(value.unit);
    diagnostics.push(...unit.diagnostics);
    const words = value.words?.map((each) => each.text) ?? [];
    const by = value.by?.text;
    const signal = (forms: readonly Form[]): Signal => ({
      name,
      meaning: value.meaning?.text.trim() ?? name,
      family: 'own',
      holds: words.length > 0 ? 'word' : 'quantity',
      ...(words.length > 0 ? { words } : {}),
      forms,
      ...(by === 'cylinder' || by === 'label' ? { by } : {}),
    });
    // A unit that nobody knows is told once: without a form, readings stand as they are written.
    const isMeasured = words.length === 0 && unit.value !== undefined;
    signals.set(name, signal(isMeasured ? [formOf(value, unit.value, signal, diagnostics)] : []));
  }
  return { signals, diagnostics };
}

function formOf(
  value: Declared,
  one: Quantity,
  signal: (forms: readonly Form[]) => Signal,
  diagnostics: Diagnostic[],
): Form {
  const { symbol, dimension } = one.unit;
  const kinds = kindsOf(dimension);
  const written = kinds.find((each) => each === value.kind?.text);
  if (value.kind !== undefined && written === undefined) {
    const takes = kinds.length === 0 ? 'nothing' : oneOf(kinds.map((each) => `\`${each}\``));
    const facts = { name: 'kind', got: `\`${value.kind.text}\``, takes: `${takes} beside \`${symbol}\`` };
    diagnostics.push(diagnose('wrong-value-shape', value.kind.span, facts));
  }
  const kind = written ?? kindOf(one);
  const form: Form = { unit: symbol, physical: '', ...(kind === undefined ? {} : { kind }) };
  return { ...form, physical: possibleOf(value, signal([form]), diagnostics) };
}

/** What may be said of a unit: pressures, temperatures and crank angles have kinds, nothing else has. */
function kindsOf(dimension: Dimension | undefined): readonly NonNullable<Form['kind']>[] {
  switch (dimension) {
    case pressure:
      return ['absolute', 'gauge', 'vacuum', 'difference'];
    case temperature:
      return ['point', 'difference'];
    case turn:
      return ['btdc', 'atdc', 'bbdc', 'abdc', 'difference'];
    default:
      return [];
  }
}

/** What an own signal is when only its unit is given: a temperature is a point on its scale, °BTDC says it itself. */
function kindOf({ unit, kind, kindGiven }: Quantity): Form['kind'] {
  if (kindGiven || unit.kind !== undefined) return kindsOf(unit.dimension).find((each) => each === kind);
  return unit.dimension === temperature ? 'point' : undefined;
}

/** The range that can occur at all, read like a reference's; what is no range is told and counts as none. */
function possibleOf({ possible }: Declared, signal: Signal, diagnostics: Diagnostic[]): string {
  if (possible === undefined) return '';
  const place = { source: 'possible', key: 'possible', reference: true, cylinders: undefined } as const;
  const read = readValue(possible, { ...place, signal, accuracy: () => undefined });
  diagnostics.push(...read.diagnostics);
  if (read.value.kind === 'range') return possible.text;
  if (read.diagnostics.length === 0) {
    const facts = {
      name: 'possible',
      got: `\`${possible.text.trim()}\``,
      takes: 'a range, such as `0 .. 5 V` or `at most 5 V`',
    };
    diagnostics.push(diagnose('wrong-value-shape', possible.span, facts));
  }
  return '';
}

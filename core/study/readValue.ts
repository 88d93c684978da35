import { entryOf, type ListNode, type MapNode, type Node, type TextNode } from '../casefile/tree.ts';
import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import type { Type } from '../expression/type.ts';
import type { Absent, Value } from '../expression/value.ts';
import { exact, measured } from '../quantity/amount.ts';
import { toSi } from '../quantity/convert.ts';
import { absences, isAbsence, isRange, parseReading } from '../quantity/parse.ts';
import { parseCurve } from '../quantity/parseCurve.ts';
import type { Absence, Amount, Quantity, QuantityRange, QuantityType } from '../quantity/types.ts';
import { unitOf } from '../quantity/unit.ts';
import type { Form, Signal } from '../signals/types.ts';
import { nearest } from '../text/nearest.ts';
import type { Span } from '../text/span.ts';
import { cylinderUnits, type WrittenMember } from './cylinderUnits.ts';
import { type Fitted, fitTo, unitsThatFit } from './fitTo.ts';
import { misspeltValue, strayKeys } from './measuredKeys.ts';
import { placedIn } from './placed.ts';
import type { Accuracy } from './tools.ts';

/** Where a value stands: what it may be there, and what is known about it. */
export interface Place {
  /** Names the value among all of the case: its ± is a source of its own. */
  readonly source: string;
  readonly key: string;
  readonly signal: Signal | undefined;
  /** A reference may hold ranges and curves. */
  readonly reference: boolean;
  readonly cylinders: number | undefined;
  /** The accuracy of the instrument, by its name in the header; undefined when no tool is named. */
  readonly accuracy: (tool: TextNode | undefined) => Accuracy | undefined;
}

export interface ReadValue {
  readonly type: Type;
  readonly value: Value;
  readonly form: Form | undefined;
  readonly span: Span;
  readonly tool: string | undefined;
  readonly at: string | undefined;
  readonly saw: string | undefined;
  readonly diagnostics: readonly Diagnostic[];
}

/** Reads what stands behind a signal's name: a quantity, a word, a map, a range or a curve. */
export function readValue(node: Node, place: Place): ReadValue {
  if (node.kind === 'map') {
    const inner = entryOf(node, 'value');
    if (inner !== undefined) return measuredValue(node, inner.value, place);
    const misspelt = misspeltValue(node, place.key, place.signal);
    if (misspelt.length > 0) return broken(node, place, misspelt);
  }
  const accuracy = place.accuracy(undefined);
  return read(node, place, accuracy);
}

/** `{value: 16.4 inHg, tool: gauge, at: brake booster port, saw: steady}` */
function measuredValue(node: MapNode, inner: Node, place: Place): ReadValue {
  const tool = textOf(node, 'tool');
  const result = read(inner, place, place.accuracy(tool));
  const diagnostics = [...strayKeys(node, place.key), ...result.diagnostics];
  return {
    ...result,
    diagnostics,
    tool: tool?.text,
    at: textOf(node, 'at')?.text,
    saw: textOf(node, 'saw')?.text,
  };
}

function textOf(node: MapNode, key: string): TextNode | undefined {
  const value = entryOf(node, key)?.value;
  return value?.kind === 'text' ? value : undefined;
}

function read(node: Node, place: Place, accuracy: Accuracy | undefined): ReadValue {
  switch (node.kind) {
    case 'text':
      return readText(node, place, accuracy);
    case 'map':
      return readMap(node, place, accuracy);
    case 'list':
      return place.reference ? readCurve(node, place) : listForMap(node, place);
  }
}

function readText(node: TextNode, place: Place, accuracy: Accuracy | undefined): ReadValue {
  const { signal } = place;
  if (signal !== undefined && signal.holds !== 'quantity') return readWords(node, signal, place);
  const parsed = parseReading(node.text, place.reference ? 'reference' : 'reading');
  const diagnostics = [...placedIn(node, unitsThatFit(parsed.diagnostics, signal))];
  const written = parsed.value;
  if (written === undefined) return broken(node, place, diagnostics);
  if (isAbsence(written)) {
    const value = absence(written);
    return result(node, { type: typeOfSignal(place.signal), value, form: undefined, diagnostics });
  }
  if (isRange(written)) {
    if (!place.reference) return wrongShape(node, place, 'a range');
    return readRange(node, written, place, diagnostics);
  }
  const { fitted, diagnostics: found } = fitTo(written, signal, place.key, node);
  diagnostics.push(...found);
  if (fitted === undefined) return broken(node, place, diagnostics);
  const amount = amountOf(written, fitted.type, place.source, accuracy);
  return result(node, {
    type: { kind: 'one', quantity: fitted.type },
    value: { kind: 'one', type: fitted.type, amount },
    form: fitted.form,
    diagnostics,
  });
}

function readWords(node: TextNode, signal: Signal, place: Place): ReadValue {
  const text = node.text.trim();
  const absent = absences.find((each) => each === text);
  if (absent !== undefined) {
    return result(node, {
      type: typeOfSignal(signal),
      value: absence(absent),
      form: undefined,
      diagnostics: [],
    });
  }
  const diagnostics: Diagnostic[] = [];
  const allowed = signal.words ?? [];
  if (signal.holds === 'word' && !allowed.includes(text)) {
    const meant = Object.hasOwn(signal.wordsMeant ?? {}, text) ? signal.wordsMeant?.[text] : undefined;
    const close = meant === undefined ? nearest(text, allowed) : [meant];
    const fixes = close.map((word) => ({
      title: `Write \`${word}\``,
      edits: [{ span: node.span, newText: word }],
    }));
    const facts = { name: place.key, word: text, allowed, nearest: close };
    diagnostics.push(diagnose('unknown-value-word', node.span, facts, fixes));
    return result(node, { type: typeOfSignal(signal), value: unreadable, form: undefined, diagnostics });
  }
  return result(node, {
    type: typeOfSignal(signal),
    value: { kind: 'words', text },
    form: undefined,
    diagnostics,
  });
}

function readRange(
  node: TextNode,
  written: QuantityRange,
  place: Place,
  diagnostics: Diagnostic[],
): ReadValue {
  const ends = [written.low, written.high].filter((each) => each !== undefined);
  let fitted: Fitted | undefined;
  for (const end of ends) {
    const found = fitTo(end, place.signal, place.key, node);
    diagnostics.push(...found.diagnostics);
    // What is wrong with the one end is mostly wrong with the other: it is told once.
    if (found.fitted === undefined) return broken(node, place, diagnostics);
    fitted ??= found.fitted;
  }
  if (fitted === undefined || diagnostics.some((each) => each.severity === 'error')) {
    return broken(node, place, diagnostics);
  }
  const { type } = fitted;
  const end = (quantity: Quantity | undefined): Amount | undefined =>
    quantity === undefined ? undefined : amountOf(quantity, type, place.source, undefined);
  return result(node, {
    type: { kind: 'range', quantity: type },
    value: { kind: 'range', type, low: end(written.low), high: end(written.high) },
    form: fitted.form,
    diagnostics,
  });
}

/** A map by cylinder ({1: 181 psi}) or by label ({battery post to starter stud: 0.35 V}). */
function readMap(node: MapNode, place: Place, accuracy: Accuracy | undefined): ReadValue {
  const numbered = node.entries.every((entry) => isCylinder(entry.key.text));
  const by = place.signal?.by ?? (numbered ? 'cylinder' : 'label');
  const diagnostics: Diagnostic[] = [];
  const members = new Map<string, Amount | Absent>();
  const written: WrittenMember[] = [];
  let fitted: Fitted | undefined;
  if (place.signal !== undefined && place.signal.holds !== 'quantity')
    return wrongShape(node, place, 'a map');
  for (const { key, value } of node.entries) {
    if (by === 'cylinder') diagnostics.push(...checkCylinder(key, place));
    if (by === 'cylinder' && !isCylinder(key.text)) continue;
    const member = read(
      value,
      { ...place, source: `${place.source}[${key.text}]`, reference: false },
      accuracy,
    );
    diagnostics.push(...member.diagnostics);
    if (member.value.kind === 'one') {
      fitted ??= { type: member.value.type, form: member.form };
      const same = sameSort(member.value.type, fitted.type);
      if (!same) diagnostics.push(otherSort(value, place));
      if (same) {
        const { type, amount } = member.value;
        written.push({ cylinder: key.text, node: value, type, si: amount.si });
      }
      members.set(key.text, same ? member.value.amount : unreadable);
    } else if (member.value.kind === 'absent') members.set(key.text, member.value);
    else members.set(key.text, unreadable);
  }
  if (by === 'cylinder') diagnostics.push(...cylinderUnits(place.key, written));
  const type = fitted?.type ?? usualType(place.signal);
  if (type === undefined) return broken(node, place, diagnostics);
  return result(node, {
    type: { kind: 'members', by, quantity: type },
    value: { kind: 'members', by, type, members },
    form: fitted?.form,
    diagnostics,
  });
}

const isCylinder = (key: string): boolean => /^[1-9][0-9]?$/.test(key);

function checkCylinder(key: TextNode, { key: name, cylinders }: Place): readonly Diagnostic[] {
  if (!isCylinder(key.text)) return [diagnose('not-a-cylinder', key.span, { name, key: key.text })];
  if (cylinders === undefined || Number(key.text) <= cylinders) return [];
  return [diagnose('unknown-cylinder', key.span, { name, cylinder: key.text, cylinders })];
}

function sameSort(a: QuantityType, b: QuantityType): boolean {
  return a.dimension === b.dimension && a.kind === b.kind;
}

function otherSort(node: Node, place: Place): Diagnostic {
  const got = node.kind === 'text' ? `\`${node.text}\`` : 'this';
  const facts = { name: place.key, got, takes: 'the same sort of value as its other members' };
  return diagnose('wrong-value-shape', node.span, facts);
}

/** A list of pairs: `[[0.4 V, 2 g/s], [1.1 V, 9 g/s]]`. */
function readCurve(node: ListNode, place: Place): ReadValue {
  const pairs: (readonly [TextNode, TextNode])[] = [];
  for (const item of node.items) {
    const [x, y] = item.kind === 'list' && item.items.length === 2 ? item.items : [];
    if (x?.kind !== 'text' || y?.kind !== 'text') {
      const facts = { name: place.key, got: 'this', takes: 'a list of pairs: `[0.4 V, 2 g/s]`' };
      return broken(node, place, [diagnose('wrong-value-shape', item.span, facts)]);
    }
    pairs.push([x, y]);
  }
  const parsed = parseCurve(pairs.map(([x, y]) => ({ x: x.text, y: y.text })));
  const diagnostics = parsed.problems.flatMap(({ point, side, diagnostic }) => {
    const text = pairs[point]?.[side === 'x' ? 0 : 1];
    return text === undefined ? [] : placedIn(text, [diagnostic]);
  });
  if (parsed.value === undefined) {
    if (diagnostics.length === 0) return wrongShape(node, place, 'a list without pairs');
    return broken(node, place, diagnostics);
  }
  const { xType, yType, x, y } = parsed.value;
  return result(node, {
    type: { kind: 'curve', x: xType, y: yType },
    value: { kind: 'curve', xType, yType, x, y },
    form: undefined,
    diagnostics,
  });
}

/** `[181 psi, 178 psi]` where each value has its cylinder: the numbers are offered. */
function listForMap(node: ListNode, place: Place): ReadValue {
  const texts = node.items.flatMap((each) => (each.kind === 'text' ? [each.text.trim()] : []));
  if (place.signal?.by !== 'cylinder' || texts.length !== node.items.length || !node.flow)
    return wrongShape(node, place, 'a list');
  const offer = `{${texts.map((text, i) => `${i + 1}: ${text}`).join(', ')}}`;
  const fix = { title: `Write \`${offer}\``, edits: [{ span: node.span, newText: offer }] };
  const facts = { name: place.key, got: 'a list', takes: `a value for each cylinder: \`${offer}\`` };
  return broken(node, place, [diagnose('wrong-value-shape', node.span, facts, [fix])]);
}

function wrongShape(node: Node, place: Place, got: string): ReadValue {
  const takes =
    place.signal?.holds === 'quantity' || place.signal === undefined ? 'one value with its unit' : 'one word';
  return broken(node, place, [diagnose('wrong-value-shape', node.span, { name: place.key, got, takes })]);
}

/** The amount with the half-width that it states, or else that of its instrument. */
function amountOf(
  quantity: Quantity,
  type: QuantityType,
  source: string,
  accuracy: Accuracy | undefined,
): Amount {
  const si = toSi(quantity.value, quantity.unit, type.kind);
  const stated = quantity.plusMinus * Math.abs(quantity.unit.factor);
  const width = stated > 0 ? stated : (accuracy?.halfWidth(quantity.value, type) ?? 0);
  return width > 0 ? measured(si, source, width) : exact(si);
}

function absence(word: Absence): Absent {
  return { kind: 'absent', status: 'not measured', why: word };
}

const unreadable: Absent = { kind: 'absent', status: 'cannot compute', why: 'it could not be read' };

/** The type that a signal has when nobody measured it: that of its usual form. */
export function typeOfSignal(signal: Signal | undefined): Type {
  if (signal === undefined) return { kind: 'unknown' };
  if (signal.holds === 'text') return { kind: 'words' };
  if (signal.holds === 'word') return { kind: 'words', among: signal.words ?? [] };
  const quantity = usualType(signal);
  return quantity === undefined ? { kind: 'unknown' } : { kind: 'one', quantity };
}

function usualType(signal: Signal | undefined): QuantityType | undefined {
  const form = signal?.forms[0];
  const unit = form === undefined ? undefined : unitOf(form.unit);
  if (unit === undefined) return undefined;
  return { dimension: unit.dimension, kind: form?.kind ?? 'none', unit };
}

function broken(node: Node, place: Place, diagnostics: readonly Diagnostic[]): ReadValue {
  // In a reference it may have been meant as a range or a curve.
  const type: Type = place.reference ? { kind: 'unknown' } : typeOfSignal(place.signal);
  return result(node, { type, value: unreadable, form: undefined, diagnostics });
}

function result(node: Node, of: Pick<ReadValue, 'type' | 'value' | 'form' | 'diagnostics'>): ReadValue {
  return { ...of, span: node.span, tool: undefined, at: undefined, saw: undefined };
}

import type { ReadingsCell } from '../../casefile/cell.ts';
import { entryOf, sourceSpan } from '../../casefile/tree.ts';
import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import type { Answer } from '../../engine/obd/answer.ts';
import { type Chosen, chooseValues, nearlyTheSame, sayTheSame } from '../../engine/obd/chooseValues.ts';
import { type Decoded, decodeObd } from '../../engine/obd/decodeObd.ts';
import type { Item } from '../../engine/obd/item.ts';
import { spanOnTape } from '../../engine/obd/tape.ts';
import { vinKind } from '../../engine/obd/vehicleInformation.ts';
import { formatQuantity } from '../../quantity/format.ts';
import type { Span } from '../../text/span.ts';
import type { GivenCodes, GivenVin } from '../cellFacts.ts';
import { placedIn } from '../placed.ts';
import type { Reading } from '../types.ts';
import { decodedReading, readItem } from './decodedReading.ts';
import { answersText } from './obdText.ts';
import { differsFromTyped, wordsOf } from './typedAndDecoded.ts';
import type { Circumstances } from './values.ts';

/** What the `obd` of a readings cell brings beside its typed values. */
export interface FromAnswers {
  readonly readings: readonly Reading[];
  readonly givenCodes: GivenCodes | undefined;
  readonly givenVins: readonly GivenVin[];
  readonly diagnostics: readonly Diagnostic[];
}

const nothing: FromAnswers = { readings: [], givenCodes: undefined, givenVins: [], diagnostics: [] };

/**
 * Decodes the recording of a cell into readings. A value that is also typed stays as it was typed, and is compared.
 * In a cell with `when: freeze frame` service 02 counts, elsewhere service 01.
 */
export function answeredReadings(
  cell: ReadingsCell,
  cellText: string,
  around: Circumstances,
  typed: readonly Reading[],
): FromAnswers {
  const node = answersText(cell.obd ?? [], cellText);
  if (node === undefined) return nothing;
  if (cell.states !== undefined && cell.states.length > 0) {
    const key = entryOf(cell.node, 'obd')?.key.span ?? node.span;
    return { ...nothing, diagnostics: [diagnose('obd-several-states', key, { states: cell.states.length })] };
  }
  const decoded = decodeObd(node.text);
  const inFrame = around.when === 'freeze frame';
  const { answers, others, further } = ofThisMoment(decoded.answers, inFrame);
  const placed = (from: number, to: number): Span => sourceSpan(node, spanOnTape(decoded.tape, from, to));
  const diagnostics: Diagnostic[] = [...placedIn(node, decoded.diagnostics)];
  const [other] = others;
  if (other !== undefined)
    diagnostics.push(diagnose('obd-freeze-frame', placed(other.from, other.to), { inFrame }));
  if (further?.frame !== undefined) {
    const frames = {
      taken: answers.find(({ frame }) => frame !== undefined)?.frame ?? 0,
      left: further.frame,
    };
    diagnostics.push(diagnose('obd-freeze-frame', placed(further.from, further.to), { inFrame, frames }));
  }
  const readings: Reading[] = [];
  for (const chosen of groups(chooseValues(answers))) {
    const [first] = chosen;
    if (first === undefined) continue;
    const reading = decodedReading(chosen, around, decoded.tape, placed);
    if (reading === undefined) continue;
    for (const each of chosen) diagnostics.push(...aboutChosen(each, placed));
    const same = typed.find((each) => each.key === reading.key);
    if (same === undefined) readings.push(reading);
    else if (differsFromTyped(same, reading, first.item, cellText)) {
      const facts = { name: reading.key, typed: wordsOf(same), decoded: wordsOf(reading) };
      diagnostics.push(diagnose('obd-typed-differs', reading.valueSpan, facts));
    }
  }
  diagnostics.sort((a, b) => a.span.start - b.span.start);
  return { readings, givenCodes: codesIn(decoded, placed), givenVins: vinsIn(decoded, placed), diagnostics };
}

/** What belongs to the cell's moment, and what of current data or freeze frames does not. Of several frames the first counts: `further` is of another. */
function ofThisMoment(
  answers: readonly Answer[],
  inFrame: boolean,
): {
  readonly answers: readonly Answer[];
  readonly others: readonly Answer[];
  readonly further: Answer | undefined;
} {
  const wrong = inFrame ? 1 : 2;
  const frame = answers.reduce((least, each) => Math.min(least, each.frame ?? least), 255);
  return {
    further: inFrame ? answers.find((each) => (each.frame ?? frame) !== frame) : undefined,
    answers: answers.filter((each) => each.service !== wrong && (each.frame ?? frame) === frame),
    // What a controller can answer is no current data.
    others: answers.filter(
      (each) => each.service === wrong && each.items.some((item) => item.signal !== undefined),
    ),
  };
}

/** The members of one signal together. */
function groups(chosen: readonly Chosen[]): readonly (readonly Chosen[])[] {
  const bySignal = new Map<string, Chosen[]>();
  for (const each of chosen) {
    const group = bySignal.get(each.signal);
    if (group === undefined) bySignal.set(each.signal, [each]);
    else group.push(each);
  }
  return [...bySignal.values()];
}

/** Several answers that say different things. Each controller counts its own codes and runs its own monitors. */
function aboutChosen(
  { signal, member, id, item, given, others }: Chosen,
  placed: (from: number, to: number) => Span,
): readonly Diagnostic[] {
  const found: Diagnostic[] = [];
  const name = member === undefined ? signal : `${signal}[${member}]`;
  const span = placed(item.from, item.to);
  if (given.some((each) => !sayTheSame(each, item))) {
    const [low, high] = ends(given);
    const facts = { name, times: given.length, low, high, last: sayItem(item) };
    found.push(diagnose('obd-answered-often', span, facts));
  }
  const different = others.filter((each) => !nearlyTheSame(each.item, item));
  if (different.length > 0 && !/^(?:mil|dtc_count|monitors_left|\w+_monitor)$/.test(signal)) {
    const facts = {
      name,
      taken: sayItem(item),
      from: id,
      others: different.map((each) => `${sayItem(each.item)} from ${each.id === '' ? 'another' : each.id}`),
    };
    found.push(diagnose('obd-controllers-differ', span, facts));
  }
  return found;
}

function ends(given: readonly Item[]): readonly [string, string] {
  const sorted = [...given].sort((a, b) =>
    a.value.is === 'number' && b.value.is === 'number' ? a.value.value - b.value.value : 0,
  );
  const [first, last] = [sorted[0], sorted[sorted.length - 1]];
  return [first === undefined ? '' : sayItem(first), last === undefined ? '' : sayItem(last)];
}

/** A value in a sentence: "1726 rpm". */
function sayItem({ value }: Item): string {
  if (value.is === 'words') return value.text;
  if (value.is === 'absent') return value.why;
  const read = readItem(value, undefined);
  return read === undefined
    ? `${value.value} ${value.unit}`
    : formatQuantity(read.si, read.type, read.step / 2);
}

/** Each controller's own; what has not 17 characters is told by itself. */
function vinsIn({ answers }: Decoded, placed: (from: number, to: number) => Span): readonly GivenVin[] {
  return answers
    .filter(({ service, parameter }) => service === 9 && parameter === vinKind)
    .flatMap(({ id, items }) =>
      items.flatMap(({ value, from, to }) =>
        value.is === 'words' && value.text.length === 17
          ? [{ id, vin: value.text, span: placed(from, to) }]
          : [],
      ),
    );
}

function codesIn(
  { answers, codes }: Decoded,
  placed: (from: number, to: number) => Span,
): GivenCodes | undefined {
  const services = new Set(answers.map((each) => each.service));
  if (![3, 7, 10].some((service) => services.has(service))) return undefined;
  return {
    codes: codes.map(({ id, code, status, from, to }) => ({ id, code, status, span: placed(from, to) })),
    stored: services.has(3),
    pending: services.has(7),
    permanent: services.has(10),
  };
}

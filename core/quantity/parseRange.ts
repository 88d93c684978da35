import { type Diagnostic, diagnose, type Found } from '../diagnostics/diagnostic.ts';
import { span } from '../text/span.ts';
import { toSi } from './convert.ts';
import { plain } from './dimension.ts';
import { scanQuantity, skipSpaces } from './scan.ts';
import type { Quantity, QuantityRange } from './types.ts';

/**
 * `17 .. 22 inHg`, `at least 142 psi`, `at most 3 psi`, read from `start`; undefined when the text is no range at all.
 * The upper end's unit and qualifier serve both ends. Both ends given as quantities of their own are kept as written.
 */
export function parseRange(text: string, start: number): Found<QuantityRange | undefined> | undefined {
  if (text.charCodeAt(start) === 97) return parseLimit(text, start);
  const first = scanQuantity(text, start, 'reading');
  if (first === undefined) {
    return /^\.\.(?!\.)/.test(text.slice(start)) ? oneEnd(text, start) : undefined;
  }
  const dots = skipSpaces(text, first.end);
  if (!text.startsWith('..', dots)) return undefined;
  const second = skipSpaces(text, dots + 2);
  if (second === text.length) return oneEnd(text, start);
  const last = scanQuantity(text, second, 'reading');
  if (last === undefined)
    return /\d/.test(text.slice(second)) ? failed([expected(text, second)]) : oneEnd(text, start);
  const wrong = [...first.diagnostics, ...last.diagnostics];
  const rest = skipSpaces(text, last.end);
  if (wrong.length === 0 && rest < text.length) wrong.push(trailing(text, start, last.end, rest));
  const low = first.quantity;
  const high = last.quantity;
  if (wrong.length > 0 || low === undefined || high === undefined) return failed(wrong);
  return joinEnds(text, low, high, span(start, first.end), span(second, last.end));
}

function joinEnds(
  text: string,
  low: Quantity,
  high: Quantity,
  lowAt: { start: number; end: number },
  highAt: { start: number; end: number },
): Found<QuantityRange | undefined> {
  const bare = low.unit.symbol === '1' && low.unit !== high.unit;
  const lower: Quantity = bare
    ? { ...low, unit: high.unit, kind: high.kind, kindGiven: high.kindGiven }
    : low.kindGiven || !high.kindGiven || low.unit.dimension !== high.unit.dimension
      ? low
      : { ...low, kind: high.kind, kindGiven: true };
  const upper: Quantity =
    lower.kindGiven && !high.kindGiven && lower.unit.dimension === high.unit.dimension
      ? { ...high, kind: lower.kind, kindGiven: true }
      : high;
  const place = span(lowAt.start, highAt.end);
  const lowText = text.slice(lowAt.start, lowAt.end);
  const highText = text.slice(highAt.start, highAt.end);
  const mixedPercent =
    lower.unit.dimension === plain && (lower.unit.symbol === '1') !== (upper.unit.symbol === '1');
  if (lower.unit.dimension !== upper.unit.dimension || lower.kind !== upper.kind || mixedPercent) {
    return failed([diagnose('range-ends-differ', place, { low: lowText, high: highText })]);
  }
  if (toSi(lower.value, lower.unit, lower.kind) > toSi(upper.value, upper.unit, upper.kind)) {
    return failed([diagnose('range-upside-down', place, { low: lowText, high: highText })]);
  }
  return { value: { low: lower, high: upper }, diagnostics: [] };
}

function parseLimit(text: string, start: number): Found<QuantityRange | undefined> | undefined {
  const words = /^at\s+(least|most)(?![A-Za-z])\s*/.exec(text.slice(start));
  if (words === null) return undefined;
  const at = start + words[0].length;
  const found = scanQuantity(text, at, 'reading');
  if (found === undefined) return failed([expected(text, at)]);
  const rest = skipSpaces(text, found.end);
  const wrong = [...found.diagnostics];
  if (wrong.length === 0 && rest < text.length) wrong.push(trailing(text, start, found.end, rest));
  if (wrong.length > 0 || found.quantity === undefined) return failed(wrong);
  return words[1] === 'least'
    ? { value: { low: found.quantity, high: undefined }, diagnostics: [] }
    : { value: { low: undefined, high: found.quantity }, diagnostics: [] };
}

/** `17 - 22 inHg`, `17–22 inHg`, `17 to 22 inHg`: a range in other words. Offered, since `17 -22` may be a slip. */
export function parseDashedRange(text: string, start: number): Found<undefined> | undefined {
  const first = scanQuantity(text, start, 'reading');
  if (first === undefined || first.diagnostics.length > 0) return undefined;
  const at = skipSpaces(text, first.end);
  const dash = /^(?:-|–|—|to\b|…|\.{3})\s*/.exec(text.slice(at));
  if (dash === null) return undefined;
  const second = at + dash[0].length;
  const last = scanQuantity(text, second, 'reading');
  if (last === undefined || last.diagnostics.length > 0) return undefined;
  const written = text.slice(start).trimEnd();
  const offer = `${text.slice(start, first.end)} .. ${text.slice(second).trimEnd()}`;
  const place = span(start, start + written.length);
  const fix = { title: `Write ${offer}`, edits: [{ span: place, newText: offer }] };
  return failed([diagnose('range-in-other-words', place, { text: written, offer }, [fix])]);
}

/** `3 psi max`, `142 psi minimum`, `3 psi or less`: a limit in other words. */
export function parseWordedLimit(text: string, start: number): Found<undefined> | undefined {
  const first = scanQuantity(text, start, 'reading');
  if (first === undefined || first.diagnostics.length > 0) return undefined;
  const at = skipSpaces(text, first.end);
  const word = /^(?:(max(?:imum|\.)?|or less|or below)|min(?:imum|\.)?|or more|or above)\s*$/i.exec(
    text.slice(at),
  );
  if (word === null) return undefined;
  const written = text.slice(start).trimEnd();
  const offer = `at ${word[1] === undefined ? 'least' : 'most'} ${text.slice(start, first.end)}`;
  const place = span(start, start + written.length);
  const fix = { title: `Write ${offer}`, edits: [{ span: place, newText: offer }] };
  return failed([diagnose('range-in-other-words', place, { text: written, offer }, [fix])]);
}

function oneEnd(text: string, start: number): Found<undefined> {
  const written = text.slice(start).trimEnd();
  return failed([diagnose('range-end-missing', span(start, start + written.length), { text: written })]);
}

function expected(text: string, at: number): Diagnostic {
  const written = text.slice(at).trimEnd();
  return diagnose('quantity-expected', span(at, at + written.length), { text: written, offers: [] });
}

function trailing(text: string, start: number, end: number, rest: number): Diagnostic {
  const written = text.slice(rest).trimEnd();
  const quantity = text.slice(start, end);
  return diagnose('quantity-trailing', span(rest, rest + written.length), { text: written, quantity });
}

function failed(diagnostics: readonly Diagnostic[]): Found<undefined> {
  return { value: undefined, diagnostics };
}

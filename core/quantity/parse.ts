import { type Diagnostic, diagnose, type Found } from '../diagnostics/diagnostic.ts';
import { nearest } from '../text/nearest.ts';
import { span } from '../text/span.ts';
import { formatNumber } from './format.ts';
import { parseDashedRange, parseRange, parseWordedLimit } from './parseRange.ts';
import { scanQuantity, skipSpaces } from './scan.ts';
import type { Absence, Quantity, QuantityRange } from './types.ts';
import { plainUnit } from './unit.ts';

const clean: readonly Diagnostic[] = [];

/**
 * The one quantity that this text is: `13.1 ± 0.2 inHg`, `45 psi gauge`, `+8 %`.
 * Undefined when it is anything else; spans count in `text`. Space around it is no part of it.
 */
export function parseQuantity(text: string): Found<Quantity | undefined> {
  const start = skipSpaces(text, 0);
  const found = scanQuantity(text, start, 'reading');
  if (found === undefined) return refuse(text, start);
  if (found.end === text.length) return { value: found.quantity, diagnostics: found.diagnostics };
  const rest = skipSpaces(text, found.end);
  if (rest === text.length) return { value: found.quantity, diagnostics: found.diagnostics };
  // What is wrong inside explains what follows better than the rest does.
  if (found.diagnostics.length > 0) return { value: undefined, diagnostics: found.diagnostics };
  return refuseRest(text, start, found.end, rest);
}

/** What a reading may say: a quantity, a range (`17 .. 22 inHg`, `at least 142 psi`), or why there is none. */
export type Reading = Quantity | QuantityRange | Absence;

/**
 * The value of a reading or a limit; undefined when it cannot be read. Spans count in `text`.
 * In a reading proper a range or limit in other words is told to be none, instead of being offered as one.
 */
export function parseReading(
  text: string,
  place: 'reading' | 'reference' = 'reference',
): Found<Reading | undefined> {
  const start = skipSpaces(text, 0);
  const code = text.charCodeAt(start);
  if (code === 110 || code === 97) {
    const words = text.trim();
    const absence = absences.find((each) => each === words);
    if (absence !== undefined) return { value: absence, diagnostics: clean };
  }
  if (code === 97 || text.includes('..')) {
    const range = parseRange(text, start);
    if (range !== undefined) return range;
  }
  const quantity = parseQuantity(text);
  if (quantity.value !== undefined) return quantity;
  const range = parseDashedRange(text, start) ?? parseWordedLimit(text, start);
  if (place === 'reference') return range ?? quantity;
  const isLimit = /^(?:<=?|>=?|≤|≥)\s*[+-]?\.?\d/.test(text.slice(start));
  return range === undefined && !isLimit ? quantity : notOneValue(text, start);
}

/** `50-55 psi`, `<10 psi`, `3 psi max` where one value was read; the offer is the middle of what it swung over. */
function notOneValue(text: string, start: number): Found<undefined> {
  const written = text.slice(start).trimEnd();
  const place = span(start, start + written.length);
  const swung = parseDashedRange(text, start)?.diagnostics[0];
  const between =
    swung?.code === 'range-in-other-words' ? parseRange(swung.facts.offer, 0)?.value : undefined;
  const offer = between === undefined ? undefined : middleOf(between);
  if (offer === undefined)
    return { value: undefined, diagnostics: [diagnose('range-in-reading', place, { text: written })] };
  const fix = { title: `Write ${offer}`, edits: [{ span: place, newText: offer }] };
  return {
    value: undefined,
    diagnostics: [diagnose('range-in-reading', place, { text: written, offer }, [fix])],
  };
}

function middleOf({ low, high }: QuantityRange): string | undefined {
  if (low === undefined || high === undefined || low.unit !== high.unit) return undefined;
  const half = (high.value - low.value) / 2;
  if (half <= 0) return undefined;
  const unit = high.unit === plainUnit ? '' : ` ${high.unit.symbol}`;
  const word = high.kindGiven && high.unit.kind === undefined ? ` ${high.kind}` : '';
  return `${formatNumber(low.value + half)} ± ${formatNumber(half)}${unit}${word}`;
}

/** The words that a cell may hold instead of a value. */
export const absences: readonly Absence[] = ['not taken', 'not supported', 'no reading'];

export function isAbsence(reading: Reading): reading is Absence {
  return typeof reading === 'string';
}

export function isRange(reading: Reading): reading is QuantityRange {
  return typeof reading === 'object' && 'low' in reading;
}

function refuse(text: string, start: number): Found<undefined> {
  const written = text.slice(start).trimEnd();
  const place = span(start, start + written.length);
  const doubled = /^[+\-−–]\s*[+\-−–]?\s*(?=\.?\d)/.exec(written);
  if (doubled !== null) {
    const sign = /^[-−–]\s*$/.test(doubled[0]) ? '-' : '';
    const offer = sign + written.slice(doubled[0].length);
    // `--5` may be a slip for 5 as well as for -5: the offer keeps neither sign secret, it offers both.
    const offers = sign === '-' || /^\+\s*$/.test(doubled[0]) ? [offer] : [offer, `-${offer}`];
    return {
      value: undefined,
      diagnostics: [
        diagnose(
          'number-signs',
          place,
          { text: written, offers },
          offers.map((each) => ({ title: `Write ${each}`, edits: [{ span: place, newText: each }] })),
        ),
      ],
    };
  }
  const about = /^(?:about|approx\.?|ca\.?|~|≈|<=?|>=?|≤|≥|=)\s*(?=[+-]?\.?\d)/i.exec(written);
  const offers =
    about === null ? absenceOffers(written) : limitOffers(about[0].trim(), written.slice(about[0].length));
  return {
    value: undefined,
    diagnostics: [
      diagnose(
        'quantity-expected',
        place,
        { text: written, offers },
        offers.map((each) => ({ title: `Write ${each}`, edits: [{ span: place, newText: each }] })),
      ),
    ],
  };
}

/** What people write where there is no value: the words for it that are read. */
function absenceOffers(written: string): readonly string[] {
  if (/^(?:n\.?[/.]?a\.?)$/i.test(written)) return ['not taken', 'not supported'];
  // What a meter shows over its range, an open circuit among resistances.
  if (/^(?:o\.?l\.?|over ?(?:load|range|limit)|∞|open(?: (?:circuit|line|loop))?)$/i.test(written))
    return ['no reading'];
  const isNone = /^(?:none|nil|\?+|[-–—]+|unknown|missing|tbd|not (?:measured|tested|checked|done|read))$/i;
  return isNone.test(written) ? ['not taken'] : nearest(written, absences, 1);
}

function limitOffers(sign: string, rest: string): string[] {
  if (/^[<≤]/.test(sign)) return [`at most ${rest}`];
  return /^[>≥]/.test(sign) ? [`at least ${rest}`] : [rest];
}

function refuseRest(text: string, start: number, end: number, rest: number): Found<undefined> {
  const written = text.slice(rest).trimEnd();
  const place = span(rest, rest + written.length);
  // `2 500 rpm`: a number in groups, not a number and a text.
  if (/^[-+−]?\d{1,3}(?:\s\d{3})+(?!\d)/.test(text.slice(start))) {
    const groups = /^[-+−]?\d{1,3}(?:\s\d{3})+(?:[.,]\d+)?/.exec(text.slice(start))?.[0] ?? '';
    const offer = groups.replace(/\s/g, '').replace(',', '.');
    const whole = span(start, start + groups.length);
    const fix = { title: `Write ${offer}`, edits: [{ span: whole, newText: offer }] };
    return {
      value: undefined,
      diagnostics: [diagnose('digit-groups', whole, { text: groups, offer }, [fix])],
    };
  }
  const quantity = text.slice(start, end);
  // `10.5:1` is a ratio, whose `to one` goes without saying.
  const fixes = /^:\s*1$/.test(written)
    ? [{ title: `Write ${quantity}`, edits: [{ span: span(end, place.end), newText: '' }] }]
    : [];
  return {
    value: undefined,
    diagnostics: [diagnose('quantity-trailing', place, { text: written, quantity }, fixes)],
  };
}

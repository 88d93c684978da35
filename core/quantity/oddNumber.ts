import { type Diagnostic, diagnose, type Fix } from '../diagnostics/diagnostic.ts';
import { type Span, span } from '../text/span.ts';
import { isDigit } from './readNumber.ts';

/**
 * Among arguments a comma separates them; anywhere else one inside a number is a slip.
 * In an expression, arguments included, `in` is a word of the language; in a reading it is a slip as well.
 */
export type WrittenIn = 'arguments' | 'expression' | 'reading';

const vulgarFractions: Readonly<Record<string, string>> = {
  '½': '.5',
  '¼': '.25',
  '¾': '.75',
  '⅛': '.125',
  '⅜': '.375',
  '⅝': '.625',
  '⅞': '.875',
};

/**
 * A number that goes on in a way that is not read: `13,1`, `1,000`, `1_000`, `1e3`, `0x10`, `2½`, `1.2.3`.
 * `start` is where it starts (sign included), `end` where the plain decimal number ends.
 * Undefined when nothing odd follows.
 */
export function oddNumber(
  text: string,
  start: number,
  end: number,
  where: WrittenIn,
): { readonly end: number; readonly diagnostic: Diagnostic } | undefined {
  const code = text.charCodeAt(end);
  const next = text.charCodeAt(end + 1);
  switch (code) {
    case 44: // ,
      if (where === 'arguments' || !isDigit(next)) return undefined;
      return commaNumber(text, start);
    case 39: // '
    case 95: // _
      if (!isDigit(next)) return undefined;
      return grouped(text, start, runEnd(text, end, "_'.,"));
    case 46: // .
      if (!isDigit(next) && !(code === 46 && end === start)) return undefined;
      return unreadable(text, start, runEnd(text, end, '.'), undefined);
    case 69: // E
    case 101: // e
      if (!isDigit(next) && !((next === 43 || next === 45) && isDigit(text.charCodeAt(end + 2))))
        return undefined;
      return exponent(text, start, end);
    case 88: // X
    case 120: // x
      if (text.slice(start, end).replace(/^[+-]/, '') !== '0') return undefined;
      return unreadable(text, start, wordEnd(text, end), undefined);
    default:
      return code > 127 ? fraction(text, start, end) : undefined;
  }
}

function fraction(text: string, start: number, end: number) {
  const decimals = vulgarFractions[text.charAt(end)];
  if (decimals === undefined) return undefined;
  const whole = text.slice(start, end);
  const sound = /^[+-]?\d*$/.test(whole);
  const offer = sound ? (/\d$/.test(whole) ? whole : `${whole}0`) + decimals : undefined;
  return unreadable(text, start, end + 1, offer);
}

function exponent(text: string, start: number, end: number) {
  let after = end + 2;
  while (isDigit(text.charCodeAt(after))) after++;
  const value = Number(text.slice(start, after));
  const plainly = Math.abs(value) < 1e15 && (value === 0 || Math.abs(value) >= 1e-9);
  return unreadable(text, start, after, plainly ? writtenOut(value) : undefined);
}

function writtenOut(value: number): string {
  const text = String(value);
  return text.includes('e') ? value.toFixed(20).replace(/0+$/, '') : text;
}

function commaNumber(text: string, start: number) {
  const end = runEnd(text, start + 1, ',.');
  const written = text.slice(start, end);
  if (/^[+-−]?\d{1,3}(,\d{3}){2,}(\.\d+)?$/.test(written) || /^[+-−]?\d{1,3}(,\d{3})+\.\d+$/.test(written)) {
    return grouped(text, start, end);
  }
  const offers = decimalOffers(written);
  const place = span(start, end);
  return {
    end,
    diagnostic: diagnose(
      'decimal-comma',
      place,
      { text: written, offers },
      offers.map((offer) => write(place, offer)),
    ),
  };
}

/** `13,1` is 13.1; `1,000` may be 1000 or 1.000; `1.234,5` is 1234.5. */
function decimalOffers(written: string): string[] {
  if ((written.match(/,/g) ?? []).length > 1) return [];
  if (written.includes('.')) {
    return /^.?\d{1,3}(\.\d{3})+,\d+$/.test(written) ? [written.replaceAll('.', '').replace(',', '.')] : [];
  }
  const point = written.replace(',', '.');
  return /^[+-−]?[1-9]\d{0,2},\d{3}$/.test(written) ? [written.replace(',', ''), point] : [point];
}

function grouped(text: string, start: number, end: number) {
  const written = text.slice(start, end);
  const offer = written.replace(/[_',]/g, '');
  const place = span(start, end);
  return {
    end,
    diagnostic: diagnose('digit-groups', place, { text: written, offer }, [write(place, offer)]),
  };
}

function unreadable(text: string, start: number, end: number, offer: string | undefined) {
  const place = span(start, end);
  const written = text.slice(start, end);
  return {
    end,
    diagnostic: diagnose(
      'number-form',
      place,
      offer === undefined ? { text: written } : { text: written, offer },
      offer === undefined ? [] : [write(place, offer)],
    ),
  };
}

function write(place: Span, text: string): Fix {
  return { title: `Write ${text}`, edits: [{ span: place, newText: text }] };
}

function runEnd(text: string, from: number, also: string): number {
  let i = from;
  while (isDigit(text.charCodeAt(i)) || (also.includes(text.charAt(i)) && isDigit(text.charCodeAt(i + 1))))
    i++;
  return i;
}

function wordEnd(text: string, from: number): number {
  let i = from;
  while (/[0-9A-Za-z_.]/.test(text.charAt(i))) i++;
  return i;
}

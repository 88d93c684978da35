import { type Diagnostic, diagnose, type Fix } from '../diagnostics/diagnostic.ts';
import { nearest } from '../text/nearest.ts';
import { span } from '../text/span.ts';
import { pressure, temperature, turn } from './dimension.ts';
import { nearestUnits } from './nearestUnits.ts';
import { oddNumber, type WrittenIn } from './oddNumber.ts';
import { isDigit, numberEnd, numberValue } from './readNumber.ts';
import type { Kind, Quantity, Unit } from './types.ts';
import { percentUnit, plainUnit, unitOf } from './unit.ts';
import { countedThings } from './unitSlips.ts';

/** One quantity token. `quantity` is undefined where something in it cannot be read; the diagnostics say what. */
export interface ScannedQuantity {
  readonly quantity: Quantity | undefined;
  /** The offset after the token's last character. */
  readonly end: number;
  readonly diagnostics: readonly Diagnostic[];
}

/** Operators of the expression language that are words. */
export const operatorWords = [
  'if',
  'then',
  'else',
  'or',
  'and',
  'not',
  'is',
  'between',
  'within',
  'in',
  'of',
  'from',
  'to',
  'where',
] as const;

/** They never are units. */
export const notUnits: ReadonlySet<string> = new Set(operatorWords);

const clean: readonly Diagnostic[] = [];

/**
 * The quantity that starts at `at`, or undefined when no number starts there:
 * `number [± number] [unit [qualifier]] [± number %]`, where `+/-` is `±` and a sign directly before belongs to it.
 * A word after the number is its unit, unless it is a word of the expression language; the unit may touch the number.
 * Numbers have the value that `Number()` gives; one beyond 10³⁰ or, but for 0, below 10⁻³⁰ is reported. A comma between digits is a decimal comma and reported;
 * among arguments it separates them and ends the quantity.
 */
export function scanQuantity(
  text: string,
  at: number,
  where: WrittenIn = 'arguments',
): ScannedQuantity | undefined {
  let start = at;
  let code = text.charCodeAt(at);
  const negative = code === 45 || code === 0x2212;
  if (negative || code === 43) start++;
  const end = numberEnd(text, start);
  let i = end;
  if (i === start) return bareFraction(text, at, start, where);
  let value = numberValue(text, start, i);
  if (negative) value = -value;

  code = text.charCodeAt(i);
  if (code === 32) code = text.charCodeAt(++i);
  const word = classOf(code) === wordStart ? unitEnd(text, i) : i;
  const unit = word > i ? unitOf(text.slice(i, word)) : undefined;
  if (unit !== undefined && end - start <= longestNumber && isBareEnd(text, word)) {
    const given = unit.kind !== undefined;
    const kind = given ? unit.kind : kindOf(unit);
    return { quantity: { value, unit, kind, kindGiven: given, plusMinus: 0 }, end: word, diagnostics: clean };
  }
  return scanSlowly(text, at, start, value, where);
}

/** Characters of a number of which none can be beyond measure. */
const longestNumber = 30;

/** A number of 310 digits, or of 400 zeros behind the point: no slip of the hand shall become infinite or nothing. */
function beyondMeasure(text: string, start: number, end: number, value: number): Diagnostic | undefined {
  if (end - start <= longestNumber) return undefined;
  const size = Math.abs(value);
  if (size < 1e30 && (size > 1e-30 || !/[1-9]/.test(text.slice(start, end)))) return undefined;
  const facts = { digits: text.slice(start, end).replace('.', '').length, isLarge: size >= 1 };
  return diagnose('number-beyond', span(start, end), facts);
}

/** Whether nothing behind a unit can belong to its quantity: no qualifier, no ±, no hyphen that joins. */
function isBareEnd(text: string, at: number): boolean {
  let i = at;
  while (text.charCodeAt(i) === 32) i++;
  if (i === text.length) return true;
  const code = text.charCodeAt(i);
  return code < 127 && code > 32 && code !== 43 && code !== 45 && !isLetter(code);
}

/** All but a lone number with a unit, which the caller has read already. */
function scanSlowly(
  text: string,
  at: number,
  start: number,
  value: number,
  where: WrittenIn,
): ScannedQuantity {
  const wrong: Diagnostic[] = [];
  let end = numberEnd(text, start);
  const odd = oddNumber(text, at, end, where);
  const beyond = beyondMeasure(text, start, end, value);
  if (odd !== undefined) {
    wrong.push(odd.diagnostic);
    end = odd.end;
  } else if (beyond !== undefined) wrong.push(beyond);
  const written = text.slice(at, end);
  const first = scanPlusMinus(text, skipSpaces(text, end), where, wrong);
  let width = first?.value ?? 0;
  if (first !== undefined) end = first.end;

  const unit = scanUnit(text, skipSpaces(text, end), where, wrong);
  if (unit === undefined) return scanned(value, plainUnit, 'none', false, width, end, wrong);
  end = unit.end;
  const qualifier = scanQualifier(text, skipSpaces(text, end), unit.unit, wrong);
  if (qualifier !== undefined) end = qualifier.end;
  const last = scanPlusMinus(text, skipSpaces(text, end), where, wrong);
  if (last !== undefined) {
    end = last.end;
    const share = skipSpaces(text, end);
    const other = scanUnit(text, share, where, wrong);
    if (other !== undefined) end = other.end;
    const place = span(last.start, end);
    // A ± without its number has been told, and what it counts cannot be seen.
    if (last.end === last.numberStart) return scanned(value, unit.unit, 'none', false, width, end, wrong);
    if (first !== undefined) wrong.push(diagnose('plus-minus-twice', place, { text: text.slice(at, end) }));
    else if (other?.unit === percentUnit) {
      width = unit.unit === percentUnit ? last.value : (Math.abs(value) * last.value) / 100;
    } else if (other !== undefined && other.unit.dimension === unit.unit.dimension) {
      width = (last.value * other.unit.factor) / unit.unit.factor;
    } else {
      const tail = text.slice(unit.start, qualifier?.end ?? unit.end);
      const offer = `${written} ± ${text.slice(last.numberStart, last.end)} ${tail}`;
      const fix: Fix = { title: `Write ${offer}`, edits: [{ span: span(at, end), newText: offer }] };
      wrong.push(diagnose('plus-minus-unit', place, { text: text.slice(last.start, end), offer }, [fix]));
    }
  }
  const kind = qualifier?.kind ?? unit.unit.kind;
  return scanned(value, unit.unit, kind ?? kindOf(unit.unit), kind !== undefined, width, end, wrong);
}

function scanned(
  value: number,
  unit: Unit,
  kind: Kind,
  kindGiven: boolean,
  plusMinus: number,
  end: number,
  wrong: readonly Diagnostic[],
): ScannedQuantity {
  if (wrong.length > 0) return { quantity: undefined, end, diagnostics: wrong };
  return { quantity: { value, unit, kind, kindGiven, plusMinus }, end, diagnostics: clean };
}

/** Without a qualifier: a pressure stays open, a temperature is a point. */
function kindOf(unit: Unit): Kind {
  const { dimension } = unit;
  return dimension === pressure ? 'open' : dimension === temperature ? 'point' : 'none';
}

function bareFraction(
  text: string,
  at: number,
  start: number,
  where: WrittenIn,
): ScannedQuantity | undefined {
  const odd = text.charCodeAt(start) > 127 ? oddNumber(text, at, start, where) : undefined;
  if (odd === undefined) return undefined;
  const wrong = [odd.diagnostic];
  const unit = scanUnit(text, skipSpaces(text, odd.end), where, wrong);
  return { quantity: undefined, end: unit?.end ?? odd.end, diagnostics: wrong };
}

interface ScannedUnit {
  readonly unit: Unit;
  readonly start: number;
  readonly end: number;
}

/** The unit word at `at`; an unknown one is reported and stands as a plain number. */
function scanUnit(text: string, at: number, where: WrittenIn, wrong: Diagnostic[]): ScannedUnit | undefined {
  const spaced = spacedUnit(text, at);
  if (spaced !== undefined) {
    const { word, offer } = spaced;
    const place = span(at, at + word.length);
    const fix = { title: `Write ${offer}`, edits: [{ span: place, newText: offer }] };
    wrong.push(diagnose('unknown-unit', place, { word, nearest: [offer] }, [fix]));
    return { unit: plainUnit, start: at, end: place.end };
  }
  if (classOf(text.charCodeAt(at)) !== wordStart) return undefined;
  let end = unitEnd(text, at);
  let word = text.slice(at, end);
  const hyphened = text.charCodeAt(end) === 45 ? /^-[a-z]+/.exec(text.slice(end, end + 8))?.[0] : undefined;
  if (hyphened === undefined || !isHyphenSlip(word + hyphened)) {
    const unit = unitOf(word);
    if (unit !== undefined) return { unit, start: at, end };
    if (notUnits.has(word) && (where !== 'reading' || word !== 'in')) return undefined;
  } else {
    word += hyphened;
    end += hyphened.length;
  }
  const place = span(at, end);
  if (countedThings.has(word)) {
    wrong.push(
      diagnose('unit-of-count', place, { word }, [
        { title: 'Leave the number alone', edits: [{ span: place, newText: '' }] },
      ]),
    );
  } else {
    const offers = nearestUnits(word);
    const fixes = offers.map((offer) => ({
      title: `Write ${offer}`,
      edits: [{ span: place, newText: offer }],
    }));
    wrong.push(diagnose('unknown-unit', place, { word, nearest: offers }, fixes));
  }
  return { unit: plainUnit, start: at, end };
}

/** A unit written in two words: `in Hg`, `"Hg`, `cu in`, `deg BTDC`, `deg F`. */
function spacedUnit(text: string, at: number): { readonly word: string; readonly offer: string } | undefined {
  const code = text.charCodeAt(at);
  // c, i, I, d, D, the degree sign, inch marks.
  if (
    code !== 99 &&
    code !== 105 &&
    code !== 73 &&
    code !== 100 &&
    code !== 68 &&
    code !== 0xb0 &&
    code !== 34 &&
    // Also where the text ends.
    !(code >= 0x2000)
  )
    return undefined;
  // The commonest that are none of these, known without patterns: `inHg` as it should be, and `°F`.
  if (text.startsWith('inHg', at) && classOf(text.charCodeAt(at + 4)) !== wordStart) return undefined;
  const next = text.charCodeAt(at + 1);
  if (code === 0xb0 && next >= 65 && next <= 90) return undefined;
  const rest = text.slice(at, at + 20);
  const column = /^(?:(?:in|inches|inch)\b\.?\s*|["″”]\s*)(Hg|H2O)(?![\w])/i.exec(rest);
  if (column !== null && unitOf(column[0]) === undefined)
    return { word: column[0], offer: /^hg$/i.test(column[1] ?? '') ? 'inHg' : 'inH2O' };
  const cubic = /^(?:cu\.?|cubic)\s+(?:(in)(?:ch(?:es)?)?|(?:ft|feet|foot))\b\.?/.exec(rest);
  if (cubic !== null) return { word: cubic[0], offer: cubic[1] === undefined ? 'ft³' : 'inch³' };
  const degrees = /^(?:degrees|degree|deg\.?|°)\s+(BTDC|ATDC|BBDC|ABDC|CA|F|C)(?![\w])/i.exec(rest);
  return degrees === null ? undefined : { word: degrees[0], offer: `°${(degrees[1] ?? '').toUpperCase()}` };
}

function isHyphenSlip(word: string): boolean {
  return /^(ft|lb|in|inch|N|kg|kW|A|amp)-(lbf?s?|ft|in|inch|m|h|hr)$/.test(word);
}

/** The qualifiers that a unit may have. */
export function qualifiersOf(unit: Unit): readonly Kind[] {
  if (unit.kind !== undefined) return [];
  if (unit.dimension === pressure) return ['absolute', 'gauge', 'vacuum', 'difference'];
  if (unit.dimension === temperature) return ['point', 'difference'];
  return unit.dimension === turn ? ['difference'] : [];
}

const qualifierWords = ['absolute', 'gauge', 'vacuum', 'difference', 'point'] as const;
const qualifierSlips: Readonly<Record<string, string>> = {
  abs: 'absolute',
  gage: 'gauge',
  vac: 'vacuum',
  diff: 'difference',
  delta: 'difference',
};

function scanQualifier(
  text: string,
  at: number,
  unit: Unit,
  wrong: Diagnostic[],
): { readonly kind: Kind | undefined; readonly end: number } | undefined {
  let end = at;
  while (isLetter(text.charCodeAt(end))) end++;
  if (end === at) return undefined;
  const next = text.charCodeAt(end);
  if (isDigit(next) || next === 95 || next > 127) return undefined;
  const word = text.slice(at, end);
  const kind = qualifierWords.find((each) => each === word);
  const allowed = qualifiersOf(unit);
  const place = span(at, end);
  if (kind !== undefined) {
    if (allowed.includes(kind)) return { kind, end };
    if (unit !== plainUnit) {
      wrong.push(diagnose('qualifier-misplaced', place, { word, unit: unit.symbol, allowed: [...allowed] }));
    }
    return { kind: undefined, end };
  }
  if (allowed.length === 0 || notUnits.has(word)) return undefined;
  const slip = Object.hasOwn(qualifierSlips, word) ? qualifierSlips[word] : undefined;
  const offers = slip === undefined ? nearest(word, qualifierWords) : [slip];
  if (offers.length === 0) return undefined;
  const fixes = offers.map((offer) => ({
    title: `Write ${offer}`,
    edits: [{ span: place, newText: offer }],
  }));
  wrong.push(diagnose('unknown-qualifier', place, { word, nearest: offers }, fixes));
  return { kind: undefined, end };
}

interface ScannedPlusMinus {
  readonly value: number;
  readonly start: number;
  readonly numberStart: number;
  readonly end: number;
}

function scanPlusMinus(
  text: string,
  at: number,
  where: WrittenIn,
  wrong: Diagnostic[],
): ScannedPlusMinus | undefined {
  const code = text.charCodeAt(at);
  if (code !== 0xb1 && !(code === 43 && text.startsWith('+/-', at))) return undefined;
  const numberStart = skipSpaces(text, at + (code === 0xb1 ? 1 : 3));
  const end = numberEnd(text, numberStart);
  if (end === numberStart) {
    wrong.push(
      diagnose('plus-minus-number', span(at, numberStart), { text: text.slice(at, numberStart + 8).trim() }),
    );
    return { value: 0, start: at, numberStart, end: numberStart };
  }
  const odd = oddNumber(text, numberStart, end, where);
  if (odd === undefined) {
    const value = numberValue(text, numberStart, end);
    const beyond = beyondMeasure(text, numberStart, end, value);
    if (beyond !== undefined) wrong.push(beyond);
    return { value, start: at, numberStart, end };
  }
  wrong.push(odd.diagnostic);
  return { value: 0, start: at, numberStart, end: odd.end };
}

/** Spaces and line breaks, the unbreakable and the narrow ones among them. */
export function skipSpaces(text: string, from: number): number {
  let i = from;
  while (isSpace(text.charCodeAt(i))) i++;
  return i;
}

function isSpace(code: number): boolean {
  return code === 32 || (code >= 9 && code <= 13) || code === 0xa0 || code === 0x202f || code === 0x2009;
}

function isLetter(code: number): boolean {
  return (code >= 97 && code <= 122) || (code >= 65 && code <= 90);
}

const wordStart = 2;
const wordPart = 1;
const outside = 0;

/** What a character is to a unit word. */
function classOf(code: number): 0 | 1 | 2 {
  if (code < 128) {
    if (isLetter(code) || code === 37) return wordStart;
    // Digits belong to inH2O, a slash joins; dots and carets are looked at where they stand.
    return isDigit(code) || code === 47 || code === 95 || code === 46 || code === 94 ? wordPart : outside;
  }
  if (code === 0xb7 || code === 0x22c5) return wordPart;
  // No letters of any unit: signs of arithmetic, quotes, dashes, spaces. NaN (the text's end) falls here as well.
  if (isSpace(code) || code === 0xb1 || code === 0xd7 || code === 0xf7 || !(code >= 0xb0)) return outside;
  return (code >= 0x2010 && code <= 0x2027) || (code >= 0x2200 && code <= 0x22ff) ? outside : wordStart;
}

/** The end of the unit word at `at`: a run without spaces. */
function unitEnd(text: string, at: number): number {
  const { length } = text;
  let i = at;
  while (i < length) {
    const code = text.charCodeAt(i);
    if (classOf(code) === outside) return i;
    if (code === 46 && classOf(text.charCodeAt(i + 1)) !== wordStart) return i;
    if (code === 94) {
      const next = text.charCodeAt(i + 1);
      const signed = next === 45 && isDigit(text.charCodeAt(i + 2));
      if (!signed && !isDigit(next)) return i;
      if (signed) i++;
    }
    i++;
  }
  return i;
}

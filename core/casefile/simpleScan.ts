/** Characters of YAML by their code units, and what a place in a line of a cell can be: for the quick reader. */
export const tab = 9;
export const lineFeed = 10;
export const carriageReturn = 13;
export const space = 32;
export const doubleQuote = 34;
export const numberSign = 35;
export const singleQuote = 39;
export const comma = 44;
export const minus = 45;
export const colon = 58;
export const greater = 62;
export const questionMark = 63;
export const openBracket = 91;
export const closeBracket = 93;
export const openBrace = 123;
export const bar = 124;
export const closeBrace = 125;
const lastAscii = 127;

/** By character: 1 where a plain text cannot start with it, whatever follows. */
const startsNoPlain = new Uint8Array(128);
for (const mark of '"\'[]{},#&*!|>%@` \t\r\n') startsNoPlain[mark.charCodeAt(0)] = 1;

/** The longest key that YAML allows on one line with its value. */
const longestKey = 1024;

/** Where the colon of a plain key on one line stands; -1 when there is no such key. */
export function keyEndAt(text: string, start: number): number {
  if (!startsPlain(text, start)) return -1;
  const most = Math.min(text.length, start + longestKey);
  for (let at = start; at < most; at++) {
    const unit = text.charCodeAt(at);
    if (unit === colon && isBlank(text, at + 1)) {
      return text.charCodeAt(at - 1) === space ? -1 : at;
    }
    if (unit === lineFeed || unit === tab) return -1;
    if (unit === numberSign && text.charCodeAt(at - 1) === space) return -1;
  }
  return -1;
}

/** The end of a plain text on its line, without the white space after it; -1 when a colon makes a key of it. */
export function plainEndAt(text: string, start: number): number {
  let end = start;
  for (let at = start; at < text.length; at++) {
    const unit = text.charCodeAt(at);
    if (unit === lineFeed) break;
    if (unit === space || unit === tab) continue;
    if (unit === carriageReturn) continue;
    if (unit === colon && isBlank(text, at + 1)) return -1;
    if (unit === numberSign && at > start && isWhite(text.charCodeAt(at - 1))) break;
    end = at + 1;
  }
  return end;
}

/** Where the line that holds a place ends, before its break. */
export function lineEnd(text: string, from: number): number {
  const end = text.indexOf('\n', from);
  if (end < 0) return text.length;
  return end > from && text.charCodeAt(end - 1) === carriageReturn ? end - 1 : end;
}

export function skipSpaces(text: string, from: number): number {
  let at = from;
  while (text.charCodeAt(at) === space) at++;
  return at;
}

/** Whether a plain text can start at a place. */
export function startsPlain(text: string, at: number): boolean {
  const unit = text.charCodeAt(at);
  if (at >= text.length) return false;
  if (unit <= lastAscii && startsNoPlain[unit] === 1) return false;
  return !((unit === minus || unit === questionMark || unit === colon) && isBlank(text, at + 1));
}

/** White space, a line break, or the text's end. */
export function isBlank(text: string, at: number): boolean {
  const unit = text.charCodeAt(at);
  return at >= text.length || unit === space || unit === tab || isBreak(unit);
}

export const isWhite = (unit: number): boolean => unit === space || unit === tab;
export const isBreak = (unit: number): boolean => unit === lineFeed || unit === carriageReturn;
export const isFlowMark = (unit: number): boolean =>
  unit === comma ||
  unit === openBracket ||
  unit === closeBracket ||
  unit === openBrace ||
  unit === closeBrace;

import { limits } from './limits.ts';
import { blockHeader, blockText, doubleQuotedText, plainText, singleQuotedText } from './scalarText.ts';
import {
  bar,
  carriageReturn,
  closeBrace,
  closeBracket,
  colon,
  comma,
  doubleQuote,
  greater,
  isBlank,
  isBreak,
  isFlowMark,
  isWhite,
  keyEndAt,
  lineEnd,
  lineFeed,
  minus,
  numberSign,
  openBrace,
  openBracket,
  plainEndAt,
  questionMark,
  singleQuote,
  skipSpaces,
  space,
  startsPlain,
  tab,
} from './simpleScan.ts';
import type { Entry, ListNode, MapNode, Node, TextNode } from './tree.ts';

/**
 * Reads the part of YAML that cases are written in, in one pass: maps and lists in block style, plain texts, quotes
 * and brackets that close on their line, texts after `|` and `>`.
 * It gives the same tree as `readYaml` or nothing: whatever it is not sure of, wrong or merely rare, is left to the
 * yaml package. Every keystroke reads a cell, and this is some thirty times as fast.
 */
export function readSimple(text: string): MapNode | undefined {
  if (text.includes('\r') && /\r(?!\n)/.test(text)) return undefined;
  return new Reader(text).document();
}

const byteOrderMark = 0xfeff;

/** `at` moves over the text; after each node it stands on the next line with content, whose indentation is `column`. */
class Reader {
  readonly #text: string;
  #at = 0;
  #column = 0;
  #depth = 0;

  constructor(text: string) {
    this.#text = text;
  }

  document(): MapNode | undefined {
    if (!this.#firstContent() || this.#column !== 0 || this.#at >= this.#text.length) return undefined;
    const first = this.#text.charCodeAt(this.#at);
    if (first === byteOrderMark || (first === minus && isBlank(this.#text, this.#at + 1))) return undefined;
    const tree = this.#map(0);
    return tree !== undefined && this.#at >= this.#text.length ? tree : undefined;
  }

  /** A map whose first key stands at `at`; its keys start at `column`. */
  #map(column: number): MapNode | undefined {
    if (++this.#depth > limits.depth) return undefined;
    const start = this.#at;
    const entries: Entry[] = [];
    let end = start;
    do {
      const keyStart = this.#at;
      const keyEnd = keyEndAt(this.#text, keyStart);
      if (keyEnd < 0) return undefined;
      const key = plainNode(this.#text, keyStart, keyEnd);
      const value = this.#valueAfter(keyEnd + 1, column, true);
      if (value === undefined) return undefined;
      entries.push({ key, value });
      end = value.span.end;
      if (this.#at >= this.#text.length || this.#column < column) break;
    } while (this.#column === column);
    if (this.#at < this.#text.length && this.#column > column) return undefined;
    this.#depth--;
    return { kind: 'map', entries, flow: false, span: { start, end } };
  }

  /** A list whose first dash stands at `at`, in column `column`. */
  #list(column: number): ListNode | undefined {
    if (++this.#depth > limits.depth) return undefined;
    const text = this.#text;
    const start = this.#at;
    const items: Node[] = [];
    let end = start;
    do {
      const item = this.#item(column);
      if (item === undefined) return undefined;
      items.push(item);
      end = item.span.end;
      if (this.#at >= text.length || this.#column !== column) break;
    } while (text.charCodeAt(this.#at) === minus && isBlank(this.#text, this.#at + 1));
    if (this.#at < text.length && this.#column > column) return undefined;
    this.#depth--;
    return { kind: 'list', items, flow: false, span: { start, end } };
  }

  #item(column: number): Node | undefined {
    const text = this.#text;
    const dash = this.#at;
    let at = dash + 1;
    while (text.charCodeAt(at) === space) at++;
    if (startsPlain(this.#text, at)) {
      const keyEnd = keyEndAt(this.#text, at);
      if (keyEnd >= 0) {
        this.#at = at;
        return this.#map(column + at - dash);
      }
    } else if (text.charCodeAt(at) === minus) return undefined;
    return this.#valueAfter(dash + 1, column, false);
  }

  /** What follows a colon (`ofKey`) or a dash that ends before `from`, inside a collection at `column`. */
  #valueAfter(from: number, column: number, ofKey: boolean): Node | undefined {
    const text = this.#text;
    let at = from;
    while (text.charCodeAt(at) === space) at++;
    switch (text.charCodeAt(at)) {
      case lineFeed:
      case carriageReturn:
      case numberSign:
        return at > from || text.charCodeAt(at) !== numberSign
          ? this.#valueBelow(from, at, column, ofKey)
          : undefined;
      case bar:
      case greater:
        return this.#block(at, column);
      case doubleQuote:
      case singleQuote: {
        const node = quotedAt(this.#text, at);
        return node !== undefined && this.#endLine(node.span.end) ? node : undefined;
      }
      case openBracket:
      case openBrace: {
        const node = this.#flow(at);
        return node !== undefined && this.#endLine(node.span.end) ? node : undefined;
      }
      default:
        if (at >= text.length) return this.#valueBelow(from, at, column, ofKey);
        return startsPlain(this.#text, at) ? this.#plain(at, column) : undefined;
    }
  }

  /** A value on the lines below, or none. */
  #valueBelow(from: number, at: number, column: number, ofKey: boolean): Node | undefined {
    if (!this.#toContent(at)) return undefined;
    if (this.#at >= this.#text.length || this.#column < column) return emptyNode(from);
    const isDash = this.#text.charCodeAt(this.#at) === minus && isBlank(this.#text, this.#at + 1);
    if (this.#column === column) return isDash && ofKey ? this.#list(column) : emptyNode(from);
    if (isDash) return this.#list(this.#column);
    return keyEndAt(this.#text, this.#at) < 0 ? undefined : this.#map(this.#column);
  }

  #plain(start: number, column: number): TextNode | undefined {
    const text = this.#text;
    let end = plainEndAt(this.#text, start);
    if (end < 0) return undefined;
    let next = end;
    while (text.charCodeAt(next) === space || text.charCodeAt(next) === tab) next++;
    if (text.charCodeAt(next) === numberSign) {
      if (!this.#toContent(next)) return undefined;
      return plainNode(this.#text, start, end);
    }
    let folded = false;
    while (true) {
      if (!this.#toLine(next)) return undefined;
      if (this.#at >= text.length || this.#column <= column || text.charCodeAt(this.#at) === numberSign)
        break;
      end = plainEndAt(this.#text, this.#at);
      if (end < 0) return undefined;
      folded = true;
      next = end;
      while (text.charCodeAt(next) === space || text.charCodeAt(next) === tab) next++;
      if (text.charCodeAt(next) === numberSign) return undefined;
    }
    if (text.charCodeAt(this.#at) === numberSign && !this.#toContent(this.#at)) return undefined;
    if (!folded) return plainNode(this.#text, start, end);
    return { kind: 'text', ...plainText(text, start, end), style: 'plain', span: { start, end } };
  }

  /** A list or map between brackets on one line. */
  #flow(start: number): Node | undefined {
    if (++this.#depth > limits.depth) return undefined;
    const text = this.#text;
    const isMap = text.charCodeAt(start) === openBrace;
    const close = isMap ? closeBrace : closeBracket;
    const entries: Entry[] = [];
    const items: Node[] = [];
    let at = skipSpaces(this.#text, start + 1);
    while (text.charCodeAt(at) !== close) {
      const node = this.#flowNode(at);
      if (node === undefined) return undefined;
      at = skipSpaces(this.#text, node.span.end);
      if (isMap) {
        if (node.kind !== 'text' || text.charCodeAt(at) !== colon || text.charCodeAt(at + 1) !== space)
          return undefined;
        if (at !== node.span.end || node.style !== 'plain') return undefined;
        const value = this.#flowNode(skipSpaces(this.#text, at + 1));
        if (value === undefined) return undefined;
        entries.push({ key: node, value });
        at = skipSpaces(this.#text, value.span.end);
      } else items.push(node);
      const unit = text.charCodeAt(at);
      if (unit === comma) {
        at = skipSpaces(this.#text, at + 1);
        if (text.charCodeAt(at) === close) return undefined;
      } else if (unit !== close) return undefined;
    }
    this.#depth--;
    const span = { start, end: at + 1 };
    return isMap ? { kind: 'map', entries, flow: true, span } : { kind: 'list', items, flow: true, span };
  }

  #flowNode(at: number): Node | undefined {
    const text = this.#text;
    switch (text.charCodeAt(at)) {
      case openBrace:
      case openBracket:
        return this.#flow(at);
      case doubleQuote:
      case singleQuote:
        return quotedAt(this.#text, at);
    }
    if (!startsPlain(this.#text, at)) return undefined;
    // `-`, `?` and `:` before a bracket or comma are no text here.
    const first = text.charCodeAt(at);
    if (
      (first === minus || first === questionMark || first === colon) &&
      isFlowMark(text.charCodeAt(at + 1))
    ) {
      return undefined;
    }
    let end = at;
    for (let next = at; next < text.length; next++) {
      const unit = text.charCodeAt(next);
      if (unit === lineFeed || unit === tab) return undefined;
      if (isFlowMark(unit)) break;
      if (unit === colon) {
        const after = text.charCodeAt(next + 1);
        if (isFlowMark(after)) return undefined;
        if (isBlank(this.#text, next + 1)) break;
      }
      if (unit === numberSign && text.charCodeAt(next - 1) === space) return undefined;
      if (unit !== space) end = next + 1;
    }
    return end > at ? plainNode(this.#text, at, end) : undefined;
  }

  #block(start: number, column: number): TextNode | undefined {
    const text = this.#text;
    const header = blockHeader(text, start);
    if (header.indicator !== 0 || header.chomp === '+') return undefined;
    let at = start + 1 + header.chomp.length;
    const afterHeader = at;
    while (text.charCodeAt(at) === space) at++;
    if (text.charCodeAt(at) === numberSign && at > afterHeader) at = lineEnd(this.#text, at);
    if (text.charCodeAt(at) === carriageReturn) at++;
    if (text.charCodeAt(at) !== lineFeed) return undefined;
    const bodyStart = at + 1;
    let indent = -1;
    let widestBlank = 0;
    let lineStart = bodyStart;
    let end = bodyStart;
    while (lineStart < text.length) {
      at = lineStart;
      while (text.charCodeAt(at) === space) at++;
      const unit = text.charCodeAt(at);
      const spaces = at - lineStart;
      if (at >= text.length || unit === lineFeed || unit === carriageReturn) {
        if (indent < 0) widestBlank = Math.max(widestBlank, spaces);
        // White space beyond the indentation at the text's end is content of its own; rare, and left to the package.
        else if (spaces > indent) return undefined;
      } else {
        if (unit === tab && (indent < 0 || spaces < indent)) return undefined;
        if (indent < 0) {
          if (spaces <= column) break;
          if (widestBlank > spaces) return undefined;
          indent = spaces;
        } else if (spaces < indent) {
          if (spaces > column) return undefined;
          break;
        }
        end = lineEnd(this.#text, at);
      }
      lineStart = lineEnd(this.#text, at);
      if (text.charCodeAt(lineStart) === carriageReturn) lineStart++;
      lineStart++;
    }
    if (indent < 0) return undefined;
    if (!this.#toContent(end)) return undefined;
    const bodyEnd = Math.min(text.charCodeAt(end) === carriageReturn ? end + 2 : end + 1, text.length);
    let last = end;
    while (isWhite(text.charCodeAt(last - 1)) || isBreak(text.charCodeAt(last - 1))) last--;
    return {
      kind: 'text',
      ...blockText(text, bodyStart, bodyEnd, header, column),
      style: header.folded ? 'folded' : 'literal',
      span: { start, end: last },
    };
  }

  /** Nothing but a remark may follow on the line; goes on to the next content. */
  #endLine(at: number): boolean {
    const text = this.#text;
    let next = at;
    while (text.charCodeAt(next) === space) next++;
    const unit = text.charCodeAt(next);
    if (unit === numberSign && next === at) return false;
    if (next < text.length && unit !== lineFeed && unit !== carriageReturn && unit !== numberSign)
      return false;
    return this.#toContent(next);
  }

  #firstContent(): boolean {
    if (!this.#openLine(0)) return false;
    const first = this.#text.charCodeAt(this.#at);
    if (first === numberSign) return this.#toContent(this.#at);
    return isBreak(first) ? this.#toContent(this.#at) : true;
  }

  /** From a place in a line to the next line that has content, remarks passed over. False when a tab sets it in. */
  #toContent(from: number): boolean {
    let at = lineEnd(this.#text, from);
    while (this.#toLine(at)) {
      if (this.#text.charCodeAt(this.#at) !== numberSign) return true;
      at = lineEnd(this.#text, this.#at);
    }
    return false;
  }

  /** From a line's end to the next line that is not blank. */
  #toLine(lineEnd: number): boolean {
    const text = this.#text;
    let at = lineEnd;
    while (at < text.length) {
      if (text.charCodeAt(at) === carriageReturn) at++;
      if (!this.#openLine(at + 1)) return false;
      if (!isBreak(text.charCodeAt(this.#at))) return true;
      at = this.#at;
    }
    this.#at = text.length;
    this.#column = -1;
    return true;
  }

  #openLine(lineStart: number): boolean {
    const text = this.#text;
    let at = lineStart;
    while (text.charCodeAt(at) === space) at++;
    this.#at = at;
    this.#column = at - lineStart;
    return text.charCodeAt(at) !== tab;
  }
}

function emptyNode(at: number): TextNode {
  return { kind: 'text', text: '', style: 'plain', span: { start: at, end: at }, map: [[0, at]] };
}

/** A text in quotes that closes on its line; nothing when it does not, or holds a rare escape. */
function quotedAt(text: string, start: number): TextNode | undefined {
  const quote = text.charCodeAt(start);
  for (let at = start + 1; at < text.length; at++) {
    const unit = text.charCodeAt(at);
    if (unit === lineFeed) return undefined;
    if (unit === 92 && quote === doubleQuote) {
      if (!'"\\/nt '.includes(text[at + 1] ?? 'x')) return undefined;
      at++;
    } else if (unit === quote) {
      if (quote === singleQuote && text.charCodeAt(at + 1) === singleQuote) at++;
      else {
        const end = at + 1;
        const span = { start, end };
        return quote === doubleQuote
          ? { kind: 'text', ...doubleQuotedText(text, start, end), style: 'double quoted', span }
          : { kind: 'text', ...singleQuotedText(text, start, end), style: 'single quoted', span };
      }
    }
  }
  return undefined;
}

function plainNode(text: string, start: number, end: number): TextNode {
  return {
    kind: 'text',
    text: text.slice(start, end),
    style: 'plain',
    span: { start, end },
    map: [[0, start]],
  };
}

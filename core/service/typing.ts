import type { Span } from '../text/span.ts';

/**
 * Where in a cell someone is typing, told from the lines alone: it works on text that is no YAML yet.
 */
export interface Typing {
  /** The keys above, the cell's kind first; items of lists add nothing. For a value its own key is the last. */
  readonly path: readonly string[];
  /** `either`: a line without a colon, which may become a key or be a text. */
  readonly where: 'key' | 'value' | 'either';
  /** Key or value from its start on, as far as the cursor. */
  readonly before: string;
  /** Where that starts. */
  readonly start: number;
  /** Keys that the same map has already. */
  readonly siblings: readonly string[];
  /** In the lines after a `|`: those above the cursor's, and where each starts. */
  readonly block: readonly BlockLine[] | undefined;
  /** The item of a list has just begun, or its map is written in braces. */
  readonly inBraces: boolean;
}

interface BlockLine {
  readonly text: string;
  readonly start: number;
}

interface Line {
  readonly start: number;
  readonly text: string;
}

/** A key or an item's dash with the column that it stands in. */
interface Level {
  readonly indent: number;
  readonly key: string | undefined;
}

/** A line cut into dashes, key and value. Columns count in the line. */
interface Parts {
  readonly dashes: readonly number[];
  readonly indent: number;
  readonly key: string | undefined;
  /** The colon; -1 without a key. */
  readonly colon: number;
  readonly value: number;
}

export function typingAt(text: string, at: number): Typing {
  const offset = Math.max(0, Math.min(at, text.length));
  const lines = linesOf(text);
  const current = lines.findLastIndex((line) => line.start <= offset);
  const line = lines[current] ?? { start: 0, text: '' };
  const column = offset - line.start;
  const stack: Level[] = [];
  let block: { indent: number; from: number } | undefined;
  for (let i = 0; i < current; i++) {
    const each = lines[i]?.text ?? '';
    if (block !== undefined && (isBlank(each) || indentOf(each) > block.indent)) continue;
    block = undefined;
    if (isBlank(each) || /^\s*#/.test(each)) continue;
    const parts = partsOf(each);
    descend(stack, parts);
    if (opensBlock(each, parts)) block = { indent: blockIndent(parts), from: i + 1 };
  }
  const indent = isBlank(line.text) ? column : indentOf(line.text);
  if (block !== undefined && indent > block.indent) {
    const start = firstColumn(line.text, column);
    return {
      path: keysOf(stack),
      where: 'value',
      before: line.text.slice(start, column),
      start: line.start + start,
      siblings: [],
      block: lines.slice(block.from, current),
      inBraces: false,
    };
  }
  return onLine(lines, current, column, stack);
}

function onLine(lines: readonly Line[], at: number, column: number, stack: Level[]): Typing {
  const { text, start } = lines[at] ?? { text: '', start: 0 };
  const parts = partsOf(text);
  const none = { siblings: [], block: undefined, inBraces: false };
  if (parts.key !== undefined && column > parts.colon) {
    descend(stack, parts);
    const inside = inFlow(text, parts.value, column);
    if (inside !== undefined) {
      const path = [...keysOf(stack), ...inside.path];
      return { ...none, ...inside, path, start: start + inside.start };
    }
    const from = Math.min(column, parts.value);
    return {
      ...none,
      path: keysOf(stack),
      where: 'value',
      before: text.slice(from, column),
      start: start + from,
    };
  }
  const blank = isBlank(text);
  const indent = blank ? column : parts.indent;
  descend(stack, { ...parts, indent, key: undefined });
  const from = blank ? column : Math.min(column, parts.indent);
  const inside = inFlow(text, parts.indent, column);
  if (inside !== undefined) {
    const path = [...keysOf(stack), ...inside.path];
    return { ...none, ...inside, path, start: start + inside.start };
  }
  return {
    path: keysOf(stack),
    where: parts.key === undefined ? 'either' : 'key',
    before: text.slice(from, column),
    start: start + from,
    siblings: siblingsAt(lines, at, indent),
    block: undefined,
    inBraces: parts.dashes.length > 0,
  };
}

/** Takes the levels that end at a line off the stack, and puts the line's own on. */
function descend(stack: Level[], { dashes, indent, key }: Parts): void {
  for (const dash of dashes) {
    while (stack.length > 0 && endsAtDash(stack[stack.length - 1], dash)) stack.pop();
    stack.push({ indent: dash, key: undefined });
  }
  while (stack.length > 0 && (stack[stack.length - 1]?.indent ?? 0) >= indent) stack.pop();
  if (key !== undefined) stack.push({ indent: stack.length === 0 ? cellItself : indent, key });
}

/** The cell's kind stands above all other keys, though they stand in its column. */
const cellItself = -1;

/** A list may stand in the same column as the key that holds it. */
function endsAtDash(level: Level | undefined, dash: number): boolean {
  if (level === undefined) return false;
  return level.indent > dash || (level.indent === dash && level.key === undefined);
}

function keysOf(stack: readonly Level[]): string[] {
  return stack.flatMap(({ key }) => (key === undefined ? [] : [key]));
}

/** The lines of a block stand further in than the key that holds it, or than the dash. */
function blockIndent({ key, indent, dashes }: Parts): number {
  return key === undefined ? (dashes[dashes.length - 1] ?? indent) : indent;
}

function opensBlock(line: string, { key, value, indent }: Parts): boolean {
  return /^[|>][-+0-9]*\s*(?:#.*)?$/.test(line.slice(key === undefined ? indent : value));
}

function partsOf(line: string): Parts {
  const dashes: number[] = [];
  let indent = indentOf(line);
  while (line[indent] === '-' && (line[indent + 1] === ' ' || indent + 1 >= line.length)) {
    dashes.push(indent);
    indent++;
    while (line[indent] === ' ') indent++;
  }
  const colon = colonOf(line, indent);
  if (colon < 0) return { dashes, indent, key: undefined, colon, value: indent };
  let value = colon + 1;
  while (line[value] === ' ') value++;
  const key = line
    .slice(indent, colon)
    .trim()
    .replace(/^(["'])(.*)\1$/, '$2');
  return { dashes, indent, key, colon, value };
}

/** The colon behind a key: the first that a space or the line's end follows, outside of quotes; -1 without one. */
function colonOf(line: string, from: number): number {
  const first = line[from];
  if (first === '{' || first === '[' || first === '#') return -1;
  let at = from;
  if (first === '"' || first === "'") {
    at = line.indexOf(first, from + 1);
    if (at < 0) return -1;
  }
  for (; at < line.length; at++) {
    if (line[at] === '#' && line[at - 1] === ' ') return -1;
    if (line[at] === ':' && (at + 1 >= line.length || line[at + 1] === ' ')) return at;
  }
  return -1;
}

/** The keys of the map that a line of this column belongs to, the lines above and below it. */
function siblingsAt(lines: readonly Line[], at: number, indent: number): string[] {
  const found: string[] = [];
  const look = (step: 1 | -1): void => {
    for (let i = at + step; i >= 0 && i < lines.length; i += step) {
      const { text } = lines[i] ?? { text: '' };
      if (isBlank(text)) continue;
      const parts = partsOf(text);
      const item = parts.dashes.length > 0;
      if (parts.indent < indent || (step === 1 && item && (parts.dashes[0] ?? 0) < indent)) return;
      if (parts.indent === indent && parts.key !== undefined) found.push(parts.key);
      if (step === -1 && item && (parts.dashes[0] ?? 0) < indent) return;
    }
  };
  // An item's own dash ends the search upwards.
  if (partsOf(lines[at]?.text ?? '').dashes.length === 0) look(-1);
  look(1);
  return found;
}

type InFlow = Pick<Typing, 'path' | 'where' | 'before' | 'start' | 'siblings' | 'inBraces'>;

/** Inside braces or brackets that open on the line: what stands at the cursor there. */
function inFlow(line: string, from: number, column: number): InFlow | undefined {
  const levels: { mark: string; key: string | undefined; keys: string[]; start: number }[] = [];
  for (let at = from; at < column; at++) {
    const mark = line[at] ?? '';
    const top = levels[levels.length - 1];
    if ((mark === '"' || mark === "'") && top !== undefined && line.slice(top.start, at).trim() === '') {
      const end = line.indexOf(mark, at + 1);
      at = end < 0 || end >= column ? column : end;
    } else if (mark === '{' || mark === '[') {
      if (top === undefined && at !== from) return undefined;
      if (top === undefined || line.slice(top.start, at).trim() === '')
        levels.push({ mark, key: undefined, keys: [], start: at + 1 });
    } else if (top === undefined) return undefined;
    else if (mark === '}' || mark === ']') levels.pop();
    else if (mark === ',') {
      top.key = undefined;
      top.start = at + 1;
    } else if (mark === ':' && top.mark === '{' && (line[at + 1] === ' ' || at + 1 === column)) {
      top.key = line.slice(top.start, at).trim();
      top.keys.push(top.key);
      top.start = at + 1;
    }
  }
  const top = levels[levels.length - 1];
  if (top === undefined) return undefined;
  let start = top.start;
  while (start < column && line[start] === ' ') start++;
  return {
    path: levels.flatMap(({ key }) => (key === undefined ? [] : [key])),
    where: top.mark === '{' && top.key === undefined ? 'key' : 'value',
    before: line.slice(start, column),
    start,
    // Behind a key's colon no map of its own has begun.
    siblings: top.key === undefined ? top.keys : [],
    inBraces: top.key === undefined,
  };
}

function linesOf(text: string): readonly Line[] {
  const lines: Line[] = [];
  let start = 0;
  for (const each of text.split(/\r\n|\r|\n/)) {
    lines.push({ start, text: each });
    start += each.length;
    start += text[start] === '\r' && text[start + 1] === '\n' ? 2 : 1;
  }
  return lines;
}

function firstColumn(line: string, column: number): number {
  return Math.min(indentOf(line), column);
}

function indentOf(line: string): number {
  let at = 0;
  while (line[at] === ' ') at++;
  return at;
}

const isBlank = (line: string): boolean => line.trim() === '';

/** The word that ends at an offset of a text, as a span of the cell in which the text starts at `start`. */
export function wordBefore(before: string, start: number, word = /[\p{L}_][\p{L}\p{M}\p{N}_]*$/u): Span {
  const found = word.exec(before);
  const end = start + before.length;
  return { start: end - (found?.[0].length ?? 0), end };
}

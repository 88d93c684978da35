import {
  Composer,
  type CST,
  type Document,
  isAlias,
  isMap,
  isPair,
  isScalar,
  isSeq,
  Parser,
  type YAMLError,
} from 'yaml';
import type { Span } from '../text/span.ts';
import {
  type BlockHeader,
  blockHeader,
  blockText,
  doubleQuotedText,
  plainText,
  singleQuotedText,
} from './scalarText.ts';
import type { Entry, MapNode, Node, TextNode } from './tree.ts';

/** Something of YAML that cases do without, at its place. */
export interface Mark {
  readonly kind: 'anchor' | 'alias' | 'tag' | 'directive' | 'question mark';
  readonly span: Span;
}

/** What the yaml package makes of a document's text. */
export interface YamlReading {
  /** Nothing when the document is empty or nested too deeply. */
  readonly tree: Node | undefined;
  readonly errors: readonly YamlProblem[];
  readonly marks: readonly Mark[];
  readonly tooDeep: Span | undefined;
}

export interface YamlProblem {
  readonly code: YAMLError['code'];
  readonly span: Span;
  readonly message: string;
}

/**
 * Reads one document with the yaml package, every scalar as the text that stands there; nothing is expanded.
 * `text` holds no `---` and no `...` line. The tokens are built without recursion and measured before anything recurses.
 */
export function readYaml(text: string, depth: number): YamlReading {
  // The package knows LF and CRLF; a lone CR is a line break too and is as long as LF.
  const source = text.includes('\r') ? text.replace(/\r(?!\n)/g, '\n') : text;
  const tokens = [...new Parser().parse(source)];
  const marks: Mark[] = [];
  for (const token of tokens) {
    if (token.type === 'directive') marks.push({ kind: 'directive', span: tokenSpan(token) });
    if (token.type !== 'document') continue;
    const tooDeep = collectMarks(token, deepest, marks);
    if (tooDeep !== undefined) return { tree: undefined, errors: [], marks, tooDeep };
  }
  const errors: YamlProblem[] = [];
  let tree: Node | undefined;
  const composer = new Composer({
    schema: 'failsafe',
    uniqueKeys: false,
    keepSourceTokens: true,
    prettyErrors: false,
  });
  for (const document of composer.compose(tokens, true, source.length)) {
    for (const error of document.errors) errors.push(problem(error, source.length));
    tree ??= treeOf(document, text);
  }
  errors.sort((a, b) => a.span.start - b.span.start);
  // Where there are errors the package may have put lines inside each other that were not meant so.
  const tooDeep = errors.length === 0 && tree !== undefined ? deeperThan(tree, depth) : undefined;
  return { tree, errors, marks, tooDeep };
}

/** How deep the package may recurse; some ten frames of the stack a level. */
const deepest = 400;

function deeperThan(node: Node, depth: number): Span | undefined {
  if (node.kind === 'text') return undefined;
  if (depth === 0) return { start: node.span.start, end: node.span.start + 1 };
  const parts = node.kind === 'list' ? node.items : node.entries.map((entry) => entry.value);
  for (const part of parts) {
    const found = deeperThan(part, depth - 1);
    if (found !== undefined) return found;
  }
  return undefined;
}

function problem(error: YAMLError, length: number): YamlProblem {
  const start = Math.min(error.pos[0], length);
  const end = Math.min(Math.max(error.pos[1], start), length);
  return { code: error.code, span: { start, end }, message: error.message };
}

function tokenSpan(token: { offset: number; source: string }): Span {
  return { start: token.offset, end: token.offset + token.source.length };
}

/** Walks the tokens without recursion; gives the place where nesting goes beyond `depth`. */
function collectMarks(document: CST.Document, depth: number, marks: Mark[]): Span | undefined {
  const waiting: { readonly token: CST.Token; readonly level: number }[] = [];
  const tokens = (list: readonly CST.SourceToken[] | undefined): void => {
    for (const token of list ?? []) {
      if (token.type === 'anchor') marks.push({ kind: 'anchor', span: tokenSpan(token) });
      else if (token.type === 'tag') marks.push({ kind: 'tag', span: tokenSpan(token) });
      else if (token.type === 'explicit-key-ind')
        marks.push({ kind: 'question mark', span: tokenSpan(token) });
    }
  };
  tokens(document.start);
  if (document.value !== undefined) waiting.push({ token: document.value, level: 1 });
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const { token, level } = next;
    if (token.type === 'alias') marks.push({ kind: 'alias', span: tokenSpan(token) });
    if (token.type !== 'block-map' && token.type !== 'block-seq' && token.type !== 'flow-collection')
      continue;
    if (level > depth) return { start: token.offset, end: token.offset + 1 };
    for (const item of token.items) {
      tokens(item.start);
      if ('key' in item && item.key) waiting.push({ token: item.key, level: level + 1 });
      if ('sep' in item) tokens(item.sep);
      if (item.value) waiting.push({ token: item.value, level: level + 1 });
    }
  }
  marks.sort((a, b) => a.span.start - b.span.start);
  return undefined;
}

function treeOf(document: Document.Parsed, text: string): Node | undefined {
  const contents: unknown = document.contents;
  if (contents === null || (isScalar(contents) && contents.srcToken === undefined)) return undefined;
  return nodeOf(contents, text, 0);
}

function nodeOf(node: unknown, text: string, emptyAt: number): Node {
  if (isScalar(node)) return scalarOf(node.srcToken, node.range?.[0] ?? emptyAt, text);
  if (isAlias(node)) return aliasOf(node.srcToken, node.range?.[0] ?? emptyAt, text);
  if (isMap(node)) {
    const entries = node.items.map((pair) => entryOf(pair, text));
    return {
      kind: 'map',
      entries,
      flow: node.flow === true,
      span: collectionSpan(node, entries.at(-1)?.value),
    };
  }
  if (isSeq(node)) {
    const items = node.items.map((item) =>
      isPair(item) ? pairMap(entryOf(item, text)) : nodeOf(item, text, emptyAt),
    );
    return { kind: 'list', items, flow: node.flow === true, span: collectionSpan(node, items.at(-1)) };
  }
  return emptyText(emptyAt);
}

function pairMap(entry: Entry): MapNode {
  return {
    kind: 'map',
    entries: [entry],
    flow: true,
    span: { start: entry.key.span.start, end: entry.value.span.end },
  };
}

/** Block collections end with their last content, flow collections with their bracket. */
function collectionSpan(
  node: {
    readonly flow?: boolean | undefined;
    readonly range?: readonly [number, number, number] | null | undefined;
  },
  last: Node | undefined,
): Span {
  const start = node.range?.[0] ?? 0;
  return { start, end: node.flow === true ? (node.range?.[1] ?? start) : (last?.span.end ?? start) };
}

function entryOf(pair: { key: unknown; value: unknown; srcToken?: unknown }, text: string): Entry {
  const key = keyOf(nodeOf(pair.key, text, 0), text);
  const value =
    pair.value === null || pair.value === undefined
      ? emptyText(key.span.end)
      : nodeOf(pair.value, text, key.span.end);
  return { key, value };
}

/** A key is a text; a list or a map in its place is taken as the text that stands there. */
function keyOf(node: Node, text: string): TextNode {
  if (node.kind === 'text') return node;
  const { start, end } = node.span;
  return { kind: 'text', text: text.slice(start, end), style: 'plain', span: node.span, map: [[0, start]] };
}

function emptyText(at: number): TextNode {
  return { kind: 'text', text: '', style: 'plain', span: { start: at, end: at }, map: [[0, at]] };
}

function aliasOf(token: CST.Token | undefined, at: number, text: string): TextNode {
  const end = token !== undefined && 'source' in token ? at + token.source.length : at;
  return {
    kind: 'text',
    text: text.slice(at, end),
    style: 'plain',
    span: { start: at, end },
    map: [[0, at]],
  };
}

function scalarOf(token: CST.Token | undefined, at: number, text: string): TextNode {
  switch (token?.type) {
    case 'scalar': {
      if (token.source === '') return emptyText(afterIndicator(text, at));
      const end = at + token.source.length;
      return { kind: 'text', ...plainText(text, at, end), style: 'plain', span: { start: at, end } };
    }
    case 'single-quoted-scalar': {
      const end = at + token.source.length;
      return {
        kind: 'text',
        ...singleQuotedText(text, at, end),
        style: 'single quoted',
        span: { start: at, end },
      };
    }
    case 'double-quoted-scalar': {
      const end = at + token.source.length;
      return {
        kind: 'text',
        ...doubleQuotedText(text, at, end),
        style: 'double quoted',
        span: { start: at, end },
      };
    }
    case 'block-scalar': {
      let start = at;
      for (const part of token.props) if ('source' in part) start += part.source.length;
      const header = blockHeader(text, at);
      return blockNode(text, at, start, start + token.source.length, header, token.indent);
    }
    default:
      return emptyText(afterIndicator(text, at));
  }
}

/** The package puts a missing value after the spaces that follow its colon or dash; here it is right behind the mark. */
function afterIndicator(text: string, at: number): number {
  let end = at;
  while (end > 0 && (text[end - 1] === ' ' || text[end - 1] === '\t')) end--;
  return end;
}

function blockNode(
  text: string,
  at: number,
  start: number,
  end: number,
  header: BlockHeader,
  parentIndent: number,
): TextNode {
  let last = end;
  while (last > at && ' \t\r\n'.includes(text[last - 1] ?? '')) last--;
  return {
    kind: 'text',
    ...blockText(text, start, end, header, parentIndent),
    style: header.folded ? 'folded' : 'literal',
    span: { start: at, end: last },
  };
}

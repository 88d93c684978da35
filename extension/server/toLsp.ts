import {
  type CodeAction,
  CodeActionKind,
  type CompletionItem,
  CompletionItemKind,
  type CompletionList,
  DiagnosticSeverity,
  type DocumentLink,
  type DocumentSymbol,
  type FoldingRange,
  FoldingRangeKind,
  InlayHintKind,
  InsertTextFormat,
  type Location,
  type LocationLink,
  type Diagnostic as LspDiagnostic,
  type Hover as LspHover,
  type InlayHint as LspInlayHint,
  SymbolKind as LspSymbolKind,
  type TextEdit as LspTextEdit,
  type MarkupContent,
  type Range,
  type SelectionRange,
  type SemanticTokens,
  type SignatureHelp,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import type { Severity } from '../../core/diagnostics/row.ts';
import { message } from '../../core/diagnostics/words.ts';
import {
  type CellEdits,
  type CellSymbol,
  type CodeFix,
  type CompletionKind,
  type Completions,
  type Definitions,
  type Fold,
  type Hover,
  type InlayHint,
  type Link,
  type Reference,
  type Signature,
  type SymbolKind,
  type Token,
  tokenModifiers,
  tokenTypes,
} from '../../core/service/types.ts';
import type { TextEdit } from '../../core/text/edits.ts';
import type { Span } from '../../core/text/span.ts';
import { isShown, type OpenCase, type PlacedFinding, placeInView, placeOf, placeOfFile } from './openCase.ts';
import type { Stretch, View } from './view.ts';

/** Our answers in the words of the language server protocol. Questions come the other way in `fromLsp.ts`. */
export function diagnosticTo({ finding, place }: PlacedFinding): LspDiagnostic {
  const { diagnostic } = finding;
  return {
    range: rangeTo(place),
    severity: severities[diagnostic.severity],
    code: diagnostic.code,
    source: 'casebook',
    message: message(diagnostic),
  };
}

const severities: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  info: DiagnosticSeverity.Information,
};

export function rangeTo({ start, end }: Stretch): Range {
  return { start, end };
}

/** The range of a cell's span in one document; nothing when it stands in another. */
function rangeIn(open: OpenCase, view: View, cell: number, span: Span): Range | undefined {
  const place = placeInView(open, view, cell, span);
  return place === undefined ? undefined : rangeTo(place);
}

function locationTo(open: OpenCase, cell: number, span: Span): Location | undefined {
  const place = placeOf(open, cell, span);
  return place === undefined ? undefined : { uri: place.view.uri, range: rangeTo(place) };
}

export function hoverTo(open: OpenCase, view: View, cell: number, { span, markdown }: Hover): LspHover {
  const range = rangeIn(open, view, cell, span);
  return { contents: markdownTo(markdown), ...(range === undefined ? {} : { range }) };
}

function markdownTo(value: string): MarkupContent {
  return { kind: 'markdown', value };
}

/** The pages of the offers stay behind (`completionPage`), since a list can hold all signals: `list` is its number. */
export function completionsTo(
  open: OpenCase,
  view: View,
  cell: number,
  { items, complete }: Completions,
  list: number,
): CompletionList {
  return {
    isIncomplete: !complete,
    items: items.flatMap((item, at): CompletionItem | readonly [] => {
      const range = rangeIn(open, view, cell, item.span);
      if (range === undefined) return [];
      return {
        label: item.label,
        kind: completionKinds[item.kind],
        detail: item.detail,
        sortText: `${item.rank}`.padStart(6, '0') + item.label,
        textEdit: { range, newText: item.newText },
        insertTextFormat: item.snippet ? InsertTextFormat.Snippet : InsertTextFormat.PlainText,
        ...(item.markdown === undefined ? {} : { data: { list, at } }),
        ...(item.filter === undefined ? {} : { filterText: item.filter }),
      };
    }),
  };
}

/** An offer with its page; as it was when it comes from another list than the last. */
export function completionPage(item: CompletionItem, { items }: Completions, list: number): CompletionItem {
  const data: unknown = item.data;
  if (typeof data !== 'object' || data === null || Reflect.get(data, 'list') !== list) return item;
  const markdown = items[Number(Reflect.get(data, 'at'))]?.markdown;
  return markdown === undefined ? item : { ...item, documentation: markdownTo(markdown) };
}

const completionKinds: Readonly<Record<CompletionKind, CompletionItemKind>> = {
  'cell kind': CompletionItemKind.Class,
  key: CompletionItemKind.Property,
  word: CompletionItemKind.EnumMember,
  signal: CompletionItemKind.Field,
  unit: CompletionItemKind.Unit,
  state: CompletionItemKind.Enum,
  name: CompletionItemKind.Variable,
  member: CompletionItemKind.Field,
  function: CompletionItemKind.Function,
  parameter: CompletionItemKind.Variable,
  keyword: CompletionItemKind.Keyword,
  tool: CompletionItemKind.Module,
};

export function signatureTo({ label, markdown, parameters, active }: Signature): SignatureHelp {
  return {
    signatures: [
      {
        label,
        documentation: markdownTo(markdown),
        parameters: parameters.map((each) => ({
          label: [each.span.start, each.span.end],
          documentation: markdownTo(each.markdown),
        })),
      },
    ],
    activeSignature: 0,
    // One past the last: none is marked.
    activeParameter: active ?? parameters.length,
  };
}

export function definitionsTo(
  open: OpenCase,
  view: View,
  cell: number,
  { span, targets }: Definitions,
): LocationLink[] {
  const origin = rangeIn(open, view, cell, span);
  return targets.flatMap((target) => {
    const whole = locationTo(open, target.cell, target.span);
    const name = locationTo(open, target.cell, target.nameSpan);
    if (whole === undefined || name === undefined) return [];
    return {
      targetUri: whole.uri,
      targetRange: whole.range,
      targetSelectionRange: name.range,
      ...(origin === undefined ? {} : { originSelectionRange: origin }),
    };
  });
}

/** For clients that do not know links. */
export function locationsTo(open: OpenCase, { targets }: Definitions): Location[] {
  return targets.flatMap(({ cell, nameSpan }) => locationTo(open, cell, nameSpan) ?? []);
}

export function referencesTo(open: OpenCase, references: readonly Reference[]): Location[] {
  return references.flatMap(({ cell, span }) => locationTo(open, cell, span) ?? []);
}

/** Edits of several documents at once, each for the version that was looked at; undefined when one is not shown. */
export function workspaceEditTo(open: OpenCase, edits: readonly CellEdits[]): WorkspaceEdit | undefined {
  const byView = new Map<View, LspTextEdit[]>();
  for (const { cell, edits: inCell } of edits) {
    for (const edit of inCell) {
      const place = placeOf(open, cell, edit.span);
      if (place === undefined) return undefined;
      const list = byView.get(place.view) ?? [];
      list.push({ range: rangeTo(place), newText: edit.newText });
      byView.set(place.view, list);
    }
  }
  return {
    documentChanges: [...byView].map(([{ uri, version }, list]) => ({
      textDocument: { uri, version },
      edits: list,
    })),
  };
}

/** Edits whose spans count in the file; undefined when one of them changes what no document shows, such as a `---` line between cells. */
export function fileEditTo(
  open: OpenCase,
  view: View,
  edits: readonly TextEdit[],
): WorkspaceEdit | undefined {
  if (!edits.every((each) => isShown(open, view, each.span))) return undefined;
  const list = edits.map(({ span, newText }) => ({ range: rangeTo(placeOfFile(open, view, span)), newText }));
  return { documentChanges: [{ textDocument: { uri: view.uri, version: view.version }, edits: list }] };
}

export function formatTo(
  open: OpenCase,
  view: View,
  cell: number,
  edits: readonly TextEdit[],
): LspTextEdit[] {
  return edits.flatMap(({ span, newText }) => {
    const range = rangeIn(open, view, cell, span);
    return range === undefined ? [] : { range, newText };
  });
}

export function codeActionTo(open: OpenCase, cell: number, fix: CodeFix): CodeAction | undefined {
  const edit = workspaceEditTo(open, fix.edits);
  if (edit === undefined) return undefined;
  return {
    title: fix.title,
    kind: actionKinds[fix.kind],
    edit,
    ...(fix.preferred ? { isPreferred: true } : {}),
    ...(fix.diagnostics.length === 0
      ? {}
      : {
          diagnostics: fix.diagnostics.flatMap((diagnostic) => {
            const place = placeOf(open, cell, diagnostic.span);
            return place === undefined ? [] : diagnosticTo({ finding: { cell, diagnostic }, place });
          }),
        }),
  };
}

export const actionKinds: Readonly<Record<CodeFix['kind'], CodeActionKind>> = {
  fix: CodeActionKind.QuickFix,
  rewrite: CodeActionKind.RefactorRewrite,
  extract: CodeActionKind.RefactorExtract,
};

export function symbolsTo(
  open: OpenCase,
  view: View,
  cell: number,
  symbols: readonly CellSymbol[],
): DocumentSymbol[] {
  return symbols.flatMap((symbol) => {
    const range = rangeIn(open, view, cell, symbol.span);
    const selectionRange = rangeIn(open, view, cell, symbol.nameSpan);
    if (range === undefined || selectionRange === undefined) return [];
    return {
      // A symbol without a name is refused by editors.
      name: symbol.name === '' ? '…' : symbol.name,
      detail: symbol.detail,
      kind: symbolKinds[symbol.kind],
      range,
      selectionRange,
      children: symbolsTo(open, view, cell, symbol.children),
    };
  });
}

const symbolKinds: Readonly<Record<SymbolKind, LspSymbolKind>> = {
  cell: LspSymbolKind.Module,
  'note heading': LspSymbolKind.String,
  reading: LspSymbolKind.Field,
  computed: LspSymbolKind.Variable,
  expectation: LspSymbolKind.Boolean,
  suspect: LspSymbolKind.Class,
  signal: LspSymbolKind.Constant,
  tool: LspSymbolKind.Object,
};

export function foldsTo(open: OpenCase, view: View, cell: number, folds: readonly Fold[]): FoldingRange[] {
  return folds.flatMap(({ span, kind }) => {
    const range = rangeIn(open, view, cell, span);
    if (range === undefined || range.end.line <= range.start.line) return [];
    return {
      startLine: range.start.line,
      startCharacter: range.start.character,
      endLine: range.end.line,
      endCharacter: range.end.character,
      kind: kind === 'comment' ? FoldingRangeKind.Comment : FoldingRangeKind.Region,
    };
  });
}

export function inlayHintsTo(
  open: OpenCase,
  view: View,
  cell: number,
  hints: readonly InlayHint[],
): LspInlayHint[] {
  return hints.flatMap(({ offset, text, kind, tooltip }) => {
    const range = rangeIn(open, view, cell, { start: offset, end: offset });
    if (range === undefined) return [];
    return {
      position: range.start,
      // The padding alone is a few pixels wide, and a verdict would stick to the unit before it.
      label: `${noBreak}${text}`,
      paddingLeft: true,
      ...(tooltip === '' ? {} : { tooltip: markdownTo(tooltip) }),
      ...(kind === 'other unit' ? { kind: InlayHintKind.Type } : {}),
    };
  });
}

/** A space that no editor trims or breaks at. */
const noBreak = '\u00a0';

/** Each around the one before, as the protocol nests them: the smallest holds its parents. */
export function selectionTo(
  open: OpenCase,
  view: View,
  cell: number,
  spans: readonly Span[],
): SelectionRange | undefined {
  let found: SelectionRange | undefined;
  for (const span of spans.toReversed()) {
    const range = rangeIn(open, view, cell, span);
    if (range !== undefined) found = found === undefined ? { range } : { range, parent: found };
  }
  return found;
}

/** Files beside the case; `folder` is the uri of the case's own folder. */
export function linksTo(
  open: OpenCase,
  view: View,
  cell: number,
  links: readonly Link[],
  folder: string,
): DocumentLink[] {
  return links.flatMap(({ span, file }) => {
    const range = rangeIn(open, view, cell, span);
    if (range === undefined) return [];
    return { range, target: folder + file.split('/').map(encodeURIComponent).join('/') };
  });
}

export const semanticLegend = { tokenTypes: [...tokenTypes], tokenModifiers: [...tokenModifiers] };

/** All tokens of a document, cell by cell, each told by its distance from the one before. */
export function tokensTo(
  open: OpenCase,
  view: View,
  tokens: readonly { readonly cell: number; readonly tokens: readonly Token[] }[],
): SemanticTokens {
  const data: number[] = [];
  let line = 0;
  let character = 0;
  for (const { cell, tokens: inCell } of tokens) {
    for (const { span, type, modifiers } of inCell) {
      const range = rangeIn(open, view, cell, span);
      if (range === undefined || range.end.line !== range.start.line) continue;
      const { start, end } = range;
      data.push(
        start.line - line,
        start.line === line ? start.character - character : start.character,
        end.character - start.character,
        tokenTypes.indexOf(type),
        modifiers.reduce((bits, each) => bits | (1 << tokenModifiers.indexOf(each)), 0),
      );
      line = start.line;
      character = start.character;
    }
  }
  return { data };
}

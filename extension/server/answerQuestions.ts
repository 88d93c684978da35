import {
  type CancellationToken,
  type CodeAction,
  type Connection,
  type DocumentHighlight,
  DocumentHighlightKind,
  LSPErrorCodes,
  type Hover as LspHover,
  type Position,
  ResponseError,
} from 'vscode-languageserver';
import type { Service } from '../../core/service/service.ts';
import type { Completions, Hover, Refusal } from '../../core/service/types.ts';
import { fixesInFile } from './fixesInFile.ts';
import { pointFrom, stretchFrom } from './fromLsp.ts';
import { withChart } from './hoverChart.ts';
import { placeOf, type Spot, spansWithin, spotAt } from './openCase.ts';
import type { Asked, OpenCases } from './openCases.ts';
import {
  codeActionTo,
  completionPage,
  completionsTo,
  definitionsTo,
  foldsTo,
  formatTo,
  hoverTo,
  inlayHintsTo,
  linksTo,
  locationsTo,
  rangeTo,
  referencesTo,
  selectionTo,
  signatureTo,
  symbolsTo,
  tokensTo,
  workspaceEditTo,
} from './toLsp.ts';

interface AboutDocument {
  readonly textDocument: { readonly uri: string };
}

interface AboutPosition extends AboutDocument {
  readonly position: Position;
}

/** Answers what an editor asks about a document or a place in it. */
export function answerQuestions(
  connection: Connection,
  service: Service,
  cases: OpenCases,
  knowsLinks: () => boolean,
): void {
  connection.onHover(
    atPlace(({ open, view, settings }, { cell, offset }) => {
      const hover = service.hover(open.study, cell, offset, settings.units);
      const chart = service.chart(open.study, cell, offset);
      const told = (about: Hover | undefined): LspHover | null =>
        about === undefined ? null : hoverTo(open, view, cell, about);
      return chart === undefined ? told(hover) : withChart(hover, chart).then(told);
    }),
  );
  let listed: Completions = { items: [], complete: true };
  let list = 0;
  connection.onCompletion(
    atPlace(({ open, view }, { cell, offset }) => {
      listed = service.completions(open.study, cell, offset);
      list++;
      return completionsTo(open, view, cell, listed, list);
    }),
  );
  connection.onCompletionResolve((item) => completionPage(item, listed, list));
  connection.onSignatureHelp(
    atPlace(({ open }, { cell, offset }) => {
      const signature = service.signature(open.study, cell, offset);
      return signature === undefined ? null : signatureTo(signature);
    }),
  );
  connection.onDefinition(
    atPlace(({ open, view }, { cell, offset }) => {
      const found = service.definitions(open.study, cell, offset);
      if (found === undefined) return null;
      return knowsLinks() ? definitionsTo(open, view, cell, found) : locationsTo(open, found);
    }),
  );
  connection.onReferences(
    atPlace(({ open }, { cell, offset }, { context }) => {
      const found = service.references(open.study, cell, offset);
      return referencesTo(open, context.includeDeclaration ? found : found.filter((each) => !each.defines));
    }),
  );
  connection.onDocumentHighlight(
    atPlace(({ open, view }, { cell, offset }) =>
      service.references(open.study, cell, offset).flatMap((each): DocumentHighlight | readonly [] => {
        const place = placeOf(open, each.cell, each.span);
        if (place?.view !== view) return [];
        const kind = each.defines ? DocumentHighlightKind.Write : DocumentHighlightKind.Read;
        return { range: rangeTo(place), kind };
      }),
    ),
  );
  connection.onPrepareRename(
    atPlace(({ open }, { cell, offset }) => {
      const found = service.renamable(open.study, cell, offset);
      if (found === undefined) return null;
      if ('refused' in found) return refusal(found);
      const place = placeOf(open, cell, found.span);
      return place === undefined ? null : { range: rangeTo(place), placeholder: found.name };
    }),
  );
  connection.onRenameRequest(
    atPlace(({ open }, { cell, offset }, { newName }) => {
      const found = service.rename(open.study, cell, offset, newName);
      return 'refused' in found ? refusal(found) : (workspaceEditTo(open, found.edits) ?? null);
    }),
  );
  connection.onDocumentSymbol(
    ofDocument((asked) =>
      cellsOf(asked).flatMap((cell) =>
        symbolsTo(asked.open, asked.view, cell, service.symbols(asked.open.study, cell)),
      ),
    ),
  );
  connection.onFoldingRanges(
    ofDocument((asked) =>
      cellsOf(asked).flatMap((cell) =>
        foldsTo(asked.open, asked.view, cell, service.folds(asked.open.study, cell)),
      ),
    ),
  );
  connection.languages.semanticTokens.on(async (params, token) => {
    const answer = await ofDocument((asked) => {
      const tokens = cellsOf(asked).map((cell) => ({ cell, tokens: service.tokens(asked.open.study, cell) }));
      return tokensTo(asked.open, asked.view, tokens);
    })(params, token);
    return answer ?? { data: [] };
  });
  connection.languages.inlayHint.on(
    ofDocument(({ open, view, settings }, { range }) =>
      spansWithin(open, view, stretchFrom(range)).flatMap(({ cell, span }) =>
        inlayHintsTo(open, view, cell, service.inlayHints(open.study, cell, span, settings.units)),
      ),
    ),
  );
  connection.onSelectionRanges(
    ofDocument(({ open, view }, { positions }) =>
      positions.map((position) => {
        const spot = spotAt(open, view, pointFrom(position));
        const spans = spot === undefined ? [] : service.selections(open.study, spot.cell, spot.offset);
        const found = spot === undefined ? undefined : selectionTo(open, view, spot.cell, spans);
        return found ?? { range: { start: position, end: position } };
      }),
    ),
  );
  connection.onDocumentLinks(
    ofDocument((asked) => {
      const folder = folderOf(asked.open.uri);
      if (folder === undefined) return [];
      return cellsOf(asked).flatMap((cell) =>
        linksTo(asked.open, asked.view, cell, service.links(asked.open.study, cell), folder),
      );
    }),
  );
  connection.onDocumentFormatting(
    ofDocument((asked) =>
      cellsOf(asked).flatMap((cell) =>
        formatTo(asked.open, asked.view, cell, service.format(asked.open.study, cell)),
      ),
    ),
  );
  connection.onCodeAction(
    ofDocument(({ open, view }, { range, context }) => {
      const stretch = stretchFrom(range);
      const actions: CodeAction[] = fixesInFile(open, view, stretch);
      for (const { cell, span } of spansWithin(open, view, stretch)) {
        for (const fix of service.fixes(open.study, cell, span)) {
          const action = codeActionTo(open, cell, fix);
          if (action !== undefined) actions.push(action);
        }
      }
      const { only } = context;
      if (only === undefined) return actions;
      return actions.filter(({ kind = '' }) =>
        only.some((wanted) => wanted === '' || kind === wanted || kind.startsWith(`${wanted}.`)),
      );
    }),
  );

  type Handler<P, R> = (params: P, token: CancellationToken) => R | ResponseError | null;

  /** Asks about a document as a whole; one that is not open has no answer. */
  function ofDocument<P extends AboutDocument, R>(answer: (asked: Asked, params: P) => R): Handler<P, R> {
    return (params, token) => {
      if (token.isCancellationRequested) return cancelled();
      const asked = cases.ask(params.textDocument.uri);
      return asked === undefined ? null : answer(asked, params);
    };
  }

  /** Asks about a place in a document; one outside every cell, as on a `---` line, has no answer. */
  function atPlace<P extends AboutPosition, R>(
    answer: (asked: Asked, spot: Spot, params: P) => R,
  ): Handler<P, R | null> {
    return ofDocument<P, R | null>((asked, params) => {
      const spot = spotAt(asked.open, asked.view, pointFrom(params.position));
      return spot === undefined ? null : answer(asked, spot, params);
    });
  }
}

function cellsOf({ view }: Asked): number[] {
  return Array.from({ length: view.pastCell - view.firstCell }, (_, index) => view.firstCell + index);
}

function cancelled(): ResponseError {
  return new ResponseError(LSPErrorCodes.RequestCancelled, 'The question was taken back.');
}

function refusal({ refused }: Refusal): ResponseError {
  return new ResponseError(LSPErrorCodes.RequestFailed, refused);
}

/** The uri of the case's own folder, with its `/`; an unsaved case has none. */
function folderOf(uri: string): string | undefined {
  return uri.startsWith('untitled:') ? undefined : uri.slice(0, uri.lastIndexOf('/') + 1);
}

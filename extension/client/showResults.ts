import {
  commands,
  type Disposable,
  type Event,
  EventEmitter,
  l10n,
  type NotebookCell,
  NotebookCellOutput,
  NotebookCellOutputItem,
  type NotebookController,
  NotebookControllerAffinity,
  type NotebookDocument,
  type NotebookEditor,
  notebooks,
  window,
  workspace,
} from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { CellResult } from '../../core/service/cellResult.ts';
import {
  type RecomputeParams,
  type ResultsParams,
  recomputeRequest,
  resultsNotification,
} from '../shared/protocol.ts';
import { resultMime } from '../shared/resultMime.ts';
import { defaultSettings } from '../shared/settings.ts';
import { isCase, notebookType } from './notebookType.ts';

/** What stands under the cells. */
export interface ShownResults extends Disposable {
  /** The result under a cell, as it is shown now. */
  of(cell: NotebookCell): CellResult | undefined;
  /** A notebook of which something that is shown changed. */
  readonly onDidChange: Event<NotebookDocument>;
}

/**
 * Shows the server's results under the cells, without being asked: one controller, whose executions follow the edits.
 * A result is shown only when it says something else than the one that stands there, and only while every cell is
 * as it was when it was computed; otherwise a later one is on its way.
 */
export function showResults(client: Promise<BaseLanguageClient>, extension: string): ShownResults {
  const changed = new EventEmitter<NotebookDocument>();
  const cases = new Map<string, ShownCase>();
  const controller = notebooks.createNotebookController(
    'diag-results',
    notebookType,
    l10n.t('Diagnostic Casebook'),
    (_, notebook) => recompute(notebook),
  );
  controller.supportedLanguages = ['diag', 'markdown'];
  controller.supportsExecutionOrder = false;
  controller.description = l10n.t('computes while you write');

  const shownCase = (notebook: NotebookDocument): ShownCase => {
    const key = notebook.uri.toString();
    const known = cases.get(key);
    if (known?.notebook === notebook) return known;
    known?.dispose();
    const fresh = new ShownCase(
      notebook,
      controller,
      () => changed.fire(notebook),
      () => void recompute(notebook),
    );
    cases.set(key, fresh);
    controller.updateNotebookAffinity(notebook, NotebookControllerAffinity.Preferred);
    return fresh;
  };

  async function recompute(notebook: NotebookDocument): Promise<void> {
    const params: RecomputeParams = { uri: notebook.uri.toString() };
    await (await client).sendRequest(recomputeRequest, params);
    shownCase(notebook).showNow();
  }

  // The editor takes outputs of a chosen controller only. There is one, so that nobody needs to be asked.
  const choose = (editors: readonly NotebookEditor[]): void => {
    for (const notebookEditor of editors) {
      const { notebook } = notebookEditor;
      if (!isCase(notebook) || shownCase(notebook).selected) continue;
      void commands.executeCommand('notebook.selectKernel', { notebookEditor, id: controller.id, extension });
    }
  };

  for (const notebook of workspace.notebookDocuments) if (isCase(notebook)) shownCase(notebook);
  const parts: Disposable[] = [
    changed,
    controller,
    workspace.onDidOpenNotebookDocument((notebook) => {
      if (isCase(notebook)) shownCase(notebook);
    }),
    workspace.onDidChangeNotebookDocument(({ notebook, contentChanges, cellChanges }) => {
      const isEdit = contentChanges.length > 0 || cellChanges.some((each) => each.document !== undefined);
      if (isEdit && isCase(notebook)) shownCase(notebook).edited();
    }),
    workspace.onDidCloseNotebookDocument((notebook) => {
      const key = notebook.uri.toString();
      if (cases.get(key)?.notebook !== notebook) return;
      cases.get(key)?.dispose();
      cases.delete(key);
    }),
    window.onDidChangeVisibleNotebookEditors(choose),
    controller.onDidChangeSelectedNotebooks(({ notebook, selected }) => {
      if (isCase(notebook)) shownCase(notebook).select(selected);
    }),
  ];
  void client.then((each) => {
    const subscription = each.onNotification(resultsNotification, (params: ResultsParams) => {
      const notebook = workspace.notebookDocuments.find(({ uri }) => uri.toString() === params.uri);
      if (notebook !== undefined && isCase(notebook)) shownCase(notebook).take(params);
    });
    parts.push(subscription);
  });
  choose(window.visibleNotebookEditors);
  return {
    of: (cell) => cases.get(cell.notebook.uri.toString())?.shown.get(cell.document.uri.toString())?.result,
    onDidChange: changed.event,
    dispose: () => {
      for (const each of [...cases.values(), ...parts]) each.dispose();
    },
  };
}

class ShownCase {
  readonly notebook: NotebookDocument;
  /** By the uri of the cell's document. */
  readonly shown = new Map<string, { readonly result: CellResult; readonly json: string }>();
  /** The editor accepts outputs only once it has chosen the controller for the notebook. */
  selected = false;
  readonly #controller: NotebookController;
  readonly #changed: () => void;
  readonly #askForAll: () => void;
  #latest: ResultsParams | undefined;
  /** All results that the server sent, by the uri of the cell's document: it sends those that changed. */
  #known = new Map<string, CellResult>();
  #pause: ReturnType<typeof setTimeout> | undefined;

  constructor(
    notebook: NotebookDocument,
    controller: NotebookController,
    changed: () => void,
    askForAll: () => void,
  ) {
    this.notebook = notebook;
    this.#controller = controller;
    this.#changed = changed;
    this.#askForAll = askForAll;
  }

  dispose(): void {
    clearTimeout(this.#pause);
  }

  select(selected: boolean): void {
    this.selected = selected;
    // What was shown by another controller, or by this one before, is not known any more.
    this.shown.clear();
    if (selected) this.showNow();
  }

  take(params: ResultsParams): void {
    const known = new Map<string, CellResult>();
    for (const { cell, result = this.#known.get(cell) } of params.cells)
      if (result !== undefined) known.set(cell, result);
    this.#known = known;
    this.#latest = params;
    // An earlier message was missed: nothing half is shown.
    if (known.size < params.cells.length) {
      this.#askForAll();
      return;
    }
    const { live, delay } = liveSettings(this.notebook);
    if (!live && this.shown.size > 0) this.#show((json, before) => json === before);
    else if (this.shown.size === 0) this.showNow();
    else this.#showAfter(delay);
  }

  edited(): void {
    if (this.#pause !== undefined) this.#showAfter(liveSettings(this.notebook).delay);
  }

  showNow(): void {
    this.#show(() => true);
  }

  #showAfter(delay: number): void {
    clearTimeout(this.#pause);
    this.#pause = setTimeout(() => this.showNow(), delay);
  }

  /** Shows what `wanted` lets through; what it does not is taken away, so that nothing stale stands there. */
  #show(wanted: (json: string, before: string | undefined) => boolean): void {
    clearTimeout(this.#pause);
    this.#pause = undefined;
    const latest = this.#latest;
    if (latest === undefined || !this.selected || !this.#isCurrent(latest)) return;
    const cells = new Map(this.notebook.getCells().map((cell) => [cell.document.uri.toString(), cell]));
    for (const key of this.shown.keys()) if (!cells.has(key)) this.shown.delete(key);
    let changes = false;
    for (const { cell: key } of latest.cells) {
      const cell = cells.get(key);
      const result = this.#known.get(key);
      if (cell === undefined || result === undefined) continue;
      const before = this.shown.get(key);
      const json = before?.result === result ? before.json : JSON.stringify(result);
      if (!wanted(json, before?.json)) {
        if (before === undefined) continue;
        this.shown.delete(key);
        this.#output(cell, undefined);
      } else if (json === before?.json && (result.blocks.length === 0 || cell.outputs.length > 0)) {
        continue;
      } else {
        this.shown.set(key, { result, json });
        this.#output(cell, result.blocks.length === 0 ? undefined : result);
      }
      changes = true;
    }
    if (changes) this.#changed();
  }

  /** Whether the results were computed from what the cells say now. */
  #isCurrent({ cells }: ResultsParams): boolean {
    const versions = new Map(cells.map(({ cell, version }) => [cell, version]));
    const own = this.notebook.getCells();
    return (
      own.length === cells.length &&
      own.every(({ document }) => versions.get(document.uri.toString()) === document.version)
    );
  }

  #output(cell: NotebookCell, result: CellResult | undefined): void {
    if (result === undefined && cell.outputs.length === 0) return;
    const execution = this.#controller.createNotebookCellExecution(cell);
    execution.start();
    const [before] = cell.outputs;
    const done =
      result === undefined
        ? execution.clearOutput()
        : before !== undefined && cell.outputs.length === 1
          ? // In place, so that the page does not jump.
            execution.replaceOutputItems(itemsOf(result), before)
          : execution.replaceOutput(new NotebookCellOutput(itemsOf(result)));
    // Neither the editor's tick nor its cross: a check that was computed and fails is a finding, and words say so.
    const end = () => execution.end(undefined);
    done.then(end, end);
  }
}

function itemsOf(result: CellResult): NotebookCellOutputItem[] {
  return [
    NotebookCellOutputItem.json(result, resultMime),
    NotebookCellOutputItem.text(result.markdown, 'text/markdown'),
  ];
}

function liveSettings({ uri }: NotebookDocument): { live: boolean; delay: number } {
  const settings = workspace.getConfiguration('diag', uri);
  return {
    live: settings.get('liveResults', defaultSettings.liveResults),
    delay: settings.get('liveResultsDelay', defaultSettings.liveResultsDelay),
  };
}

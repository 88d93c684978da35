import {
  Disposable,
  EventEmitter,
  l10n,
  type NotebookCell,
  NotebookCellStatusBarAlignment,
  NotebookCellStatusBarItem,
  notebooks,
} from 'vscode';
import { notebookType } from './notebookType.ts';
import type { ShownResults } from './showResults.ts';

/** Under each cell that decides something: how its checks came out, in words, and a way to the first that fails. */
export function provideStatusItems(results: ShownResults): Disposable {
  const changed = new EventEmitter<void>();
  const provider = notebooks.registerNotebookCellStatusBarItemProvider(notebookType, {
    onDidChangeCellStatusBarItems: changed.event,
    provideCellStatusBarItems: (cell) => statusItem(cell, results),
  });
  return Disposable.from(
    changed,
    provider,
    results.onDidChange(() => changed.fire()),
  );
}

function statusItem(cell: NotebookCell, results: ShownResults): NotebookCellStatusBarItem | undefined {
  const status = results.of(cell)?.status;
  if (status === undefined) return undefined;
  const item = new NotebookCellStatusBarItem(status.text, NotebookCellStatusBarAlignment.Left);
  item.accessibilityInformation = { label: status.says, role: 'status' };
  item.tooltip = status.says;
  if (status.first !== undefined) {
    item.command = {
      command: 'diag.showFirstFailure',
      title: l10n.t('Show the First Failure'),
      arguments: [cell.document.uri.toString()],
    };
    item.tooltip = l10n.t('{0} Choose it to go there.', status.says);
  }
  return item;
}

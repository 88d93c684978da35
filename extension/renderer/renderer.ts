import type { ActivationFunction } from 'vscode-notebook-renderer';
import { askCloser } from './askCloser.ts';
import { readResult } from './readResult.ts';
import { type Shown, showResult } from './showResult.ts';

/**
 * Shows a cell's results (application/vnd.diag.result+json) in an editor's notebook. It asks nothing of the net and
 * runs nothing of what it is given: texts of the case become text nodes, and nothing else is made of them.
 */
export const activate: ActivationFunction = (context) => {
  const ask = askCloser(context);
  const shown = new Map<string, Shown>();
  const drop = (id: string): void => {
    shown.get(id)?.dispose();
    shown.delete(id);
  };
  return {
    renderOutputItem(item, element, signal) {
      if (signal.aborted) return;
      drop(item.id);
      shown.set(item.id, showResult(readResult(item), element, ask));
    },
    disposeOutputItem(id) {
      for (const each of id === undefined ? [...shown.keys()] : [id]) drop(each);
    },
  };
};

import type { RendererContext } from 'vscode-notebook-renderer';
import type { ChartSpec } from '../../core/chart/spec.ts';
import { type ChartWindowParams, isSeenCloser, type LookCloser } from '../shared/chartMessages.ts';

/** Asks the extension for a chart within a window; null when there is none any more. */
export type AskCloser = (window: ChartWindowParams) => Promise<ChartSpec | null>;

/** Where nobody listens (a notebook that was exported), a chart is looked at with the points that it has. */
export function askCloser(context: RendererContext<unknown>): AskCloser | undefined {
  const { postMessage, onDidReceiveMessage } = context;
  if (postMessage === undefined || onDidReceiveMessage === undefined) return undefined;
  const waiting = new Map<string, (chart: ChartSpec | null) => void>();
  let asked = 0;
  onDidReceiveMessage((message: unknown) => {
    if (!isSeenCloser(message)) return;
    waiting.get(message.id)?.(message.chart);
    waiting.delete(message.id);
  });
  return (window) =>
    new Promise((resolve) => {
      const id = String(++asked);
      waiting.set(id, resolve);
      const message: LookCloser = { type: 'look closer', id, ...window };
      postMessage(message);
    });
}

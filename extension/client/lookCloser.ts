import { type Disposable, notebooks } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { ChartSpec } from '../../core/chart/spec.ts';
import {
  type ChartWindowParams,
  chartWindowRequest,
  isLookCloser,
  type SeenCloser,
} from '../shared/chartMessages.ts';

/** Carries what charts in outputs ask to the language server, and its answers back. */
export function lookCloser(client: Promise<BaseLanguageClient>): Disposable {
  const messaging = notebooks.createRendererMessaging('diag-results');
  return messaging.onDidReceiveMessage(async ({ editor, message }) => {
    if (!isLookCloser(message)) return;
    const { id, cell, from, to } = message;
    const params: ChartWindowParams = { cell, from, to };
    let chart: ChartSpec | null = null;
    try {
      chart = await (await client).sendRequest<ChartSpec | null>(chartWindowRequest, params);
    } catch {
      // The chart stays as it is.
    }
    const answer: SeenCloser = { type: 'seen closer', id, chart };
    await messaging.postMessage(answer, editor);
  });
}

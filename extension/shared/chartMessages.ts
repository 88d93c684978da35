import type { ChartSpec } from '../../core/chart/spec.ts';

/**
 * What a chart in a notebook's output and the extension say to each other, through the editor.
 * From the output: look more closely at a chart that zooms. The window counts in the axis' own unit.
 */
export interface LookCloser {
  readonly type: 'look closer';
  /** Comes back with the answer. */
  readonly id: string;
  /** The document of the cell whose chart it is. */
  readonly cell: string;
  readonly from: number;
  readonly to: number;
}

/** To the output: the chart of that window, compiled, with as many points as are seen; null when there is no such chart any more. */
export interface SeenCloser {
  readonly type: 'seen closer';
  readonly id: string;
  readonly chart: ChartSpec | null;
}

/** Client → server, a request: the chart of a cell within a window. Answers a `ChartSpec`, compiled, or null. */
export const chartWindowRequest = 'diag/chartWindow';

export type ChartWindowParams = Pick<LookCloser, 'cell' | 'from' | 'to'>;

export function isLookCloser(message: unknown): message is LookCloser {
  if (typeof message !== 'object' || message === null) return false;
  const { type, id, cell, from, to } = message as Partial<Record<keyof LookCloser, unknown>>;
  return (
    type === 'look closer' &&
    typeof id === 'string' &&
    typeof cell === 'string' &&
    Number.isFinite(from) &&
    Number.isFinite(to)
  );
}

export function isSeenCloser(message: unknown): message is SeenCloser {
  if (typeof message !== 'object' || message === null) return false;
  const { type, id, chart } = message as Partial<Record<keyof SeenCloser, unknown>>;
  return type === 'seen closer' && typeof id === 'string' && typeof chart === 'object';
}

import type { Charts } from './charts.ts';

let loading: Promise<Charts> | undefined;
let loaded: Charts | undefined;

/** What draws charts; it is read once, when it is first needed. */
export function loadCharts(): Promise<Charts> {
  loading ??= import('./charts.ts').then(({ charts }) => {
    loaded = charts;
    return charts;
  });
  return loading;
}

/** What draws charts, if it has been read. */
export const chartsAtHand = (): Charts | undefined => loaded;

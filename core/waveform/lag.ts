import { cannotCompute } from '../expression/absent.ts';
import type { Caution } from '../expression/cautions.ts';
import { aligned } from '../expression/series.ts';
import type { Absent, Series, Value } from '../expression/value.ts';
import { formatQuantity } from '../quantity/format.ts';
import { fitOf } from './likeness.ts';
import { isRecorded, type Recorded, recorded } from './recorded.ts';
import { along } from './resample.ts';

/**
 * The seconds by which y comes later than x, of channels of one capture: both are laid on even steps first.
 */
export function lagBetween(x: Series, y: Series): number | Absent {
  const fit = fitBetween(x, y);
  return 'kind' in fit ? fit : fit.steps * fit.step;
}

/** Said of a lag where a shift by whole cycles fits nearly as well. */
export function lagCautions([x, y]: readonly (Value | undefined)[], result: Value): readonly Caution[] {
  if (x?.kind !== 'series' || y?.kind !== 'series' || result.kind !== 'one') return [];
  const fit = fitBetween(x, y);
  if ('kind' in fit || fit.rival === undefined) return [];
  const said = (si: number): string => formatQuantity(si, result.type);
  return [{ kind: 'fits as well', got: said(result.amount.si), also: said(fit.rival * fit.step) }];
}

/** In steps of so many seconds: the lag, and another that fits nearly as well. */
type Between = { readonly steps: number; readonly rival: number | undefined; readonly step: number } | Absent;

/** The last fit of a channel: the lag and what is said of it come from one. */
const fits = new WeakMap<Series, { readonly y: Series; readonly fit: Between }>();

function fitBetween(x: Series, y: Series): Between {
  const known = fits.get(x);
  if (known?.y === y) return known.fit;
  const fit = newFit(x, y);
  fits.set(x, { y, fit });
  return fit;
}

function newFit(x: Series, y: Series): Between {
  const [a, b] = aligned(x, y);
  const left = recorded(a);
  const right = recorded(b);
  if (!isRecorded(left)) return left;
  if (!isRecorded(right)) return right;
  if (left.starts.length > 1 || right.starts.length > 1)
    return cannotCompute('the record has a gap: cut one stretch out with `from … to`');
  const from = Math.max(left.time[0] ?? 0, right.time[0] ?? 0);
  const to = Math.min(left.time.at(-1) ?? 0, right.time.at(-1) ?? 0);
  const step = Math.max(left.step, right.step);
  const count = Math.floor((to - from) / step + 1 + 1e-6);
  if (!(count >= 4)) return cannotCompute('a lag needs at least four samples at the same moments');
  if (count > mostSamples) return cannotCompute('the record is too long: cut it with `from … to`');
  const even = new Float64Array(count);
  for (let i = 0; i < count; i++) even[i] = Math.min(from + i * step, to);
  const evenly = ({ time, samples }: Recorded): Float64Array => along(time, samples, noGaps, even);
  const fit = fitOf(evenly(left), evenly(right));
  return 'kind' in fit ? fit : { steps: fit.steps, rival: fit.rival(), step };
}

/** Bound of what is transformed at once: 4 million samples. */
const mostSamples = 2 ** 22;
const noGaps: ReadonlySet<number> = new Set();

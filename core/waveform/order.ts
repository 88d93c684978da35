import { cannotCompute } from '../expression/absent.ts';
import type { Absent } from '../expression/value.ts';
import type { Recorded } from './recorded.ts';

/**
 * The amplitude, in the samples' unit, of the part that repeats `order` times a turn of the crankshaft.
 * `turns` says for each sample how far the crankshaft has turned since the first.
 * A sine of that order and a constant are fitted by least squares over whole engine cycles (two turns), where the record has one,
 * otherwise over whole cycles of the order: even steps then give the component of the discrete Fourier transform,
 * and uneven ones no false one.
 */
export function orderAmplitude(
  { samples, step, duration }: Recorded,
  turns: Float64Array,
  order: number,
): number | Absent {
  if (!(order > 0)) return cannotCompute('the order must be above 0');
  const whole = turns[turns.length - 1] ?? 0;
  if (!(whole > 0 && duration > 0)) return cannotCompute('the engine does not turn in it');
  const window = windowOf(whole, order);
  if (!(window > 0)) return cannotCompute('there is no whole cycle of this order in it');
  if (order * (whole / duration) * step >= 0.5)
    return cannotCompute('the samples are too sparse for this order');
  let n = 0;
  let sx = 0;
  let sc = 0;
  let ss = 0;
  let scc = 0;
  let sss = 0;
  let scs = 0;
  let sxc = 0;
  let sxs = 0;
  // The first sample as zero keeps the digits of a small ripple on a large value.
  const zero = samples[0] ?? 0;
  const grain = 1e-9 * window;
  for (let i = 0; i < samples.length; i++) {
    const turned = turns[i] ?? 0;
    // The window's end is the next one's beginning.
    if (turned >= window - grain) break;
    const x = (samples[i] ?? 0) - zero;
    const angle = 2 * Math.PI * order * turned;
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    n++;
    sx += x;
    sc += c;
    ss += s;
    scc += c * c;
    sss += s * s;
    scs += c * s;
    sxc += x * c;
    sxs += x * s;
  }
  // The normal equations with the constant taken out.
  const cc = scc - (sc * sc) / n;
  const sn = sss - (ss * ss) / n;
  const cs = scs - (sc * ss) / n;
  const xc = sxc - (sx * sc) / n;
  const xs = sxs - (sx * ss) / n;
  const determinant = cc * sn - cs * cs;
  if (!(determinant > 1e-9 * n * n)) return cannotCompute('the samples are too sparse for this order');
  const a = (xc * sn - xs * cs) / determinant;
  const b = (xs * cc - xc * cs) / determinant;
  return Math.hypot(a, b);
}

/** Turns to look at: whole engine cycles for orders that repeat in one, otherwise whole cycles of the order. */
function windowOf(whole: number, order: number): number {
  const grain = 1 + 1e-9;
  const engineCycles = Math.floor((whole * grain) / 2);
  if (Number.isInteger(2 * order) && engineCycles > 0) return 2 * engineCycles;
  return Math.floor(whole * order * grain) / order;
}

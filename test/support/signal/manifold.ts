import type { Signal } from './signal.ts';
import { type Bore, halfLitre, volumeSlope } from './sliderCrank.ts';

/** An intake manifold behind a nearly shut throttle, each cylinder drawing from it on its intake stroke. */
export interface Manifold {
  readonly order: readonly number[];
  /** What a cylinder draws of what it should, 1 when left out: the truth. */
  readonly draws?: Readonly<Record<number, number>>;
  readonly rpm: number;
  /** Mean pressure wanted, kPa absolute. */
  readonly mean: number;
  readonly seconds: number;
  readonly perSecond: number;
  readonly bore?: Bore;
}

/** kPa absolute, and the spark of the first cylinder of the order, 10° before its compression's top dead centre. */
export interface Pulled {
  readonly pressure: Signal;
  readonly sync: Signal;
}

/**
 * V·dp/dt = inflow − p·Σ draws·(dVᵢ/dt): a throttle at the speed of sound lets in the same mass whatever the pressure
 * behind it; every piston on its intake stroke takes its volume at the manifold's pressure. Steps of a quarter degree.
 */
export function manifold({
  order,
  draws = {},
  rpm,
  mean,
  seconds,
  perSecond,
  bore = halfLitre,
}: Manifold): Pulled {
  const n = order.length;
  const volume = 1.2 * n * bore.swept;
  const perRadian = order.map((cylinder) => (degrees: number): number => {
    const turned = degrees - 720 * Math.floor(degrees / 720);
    return turned >= 360 && turned < 540
      ? (draws[cylinder] ?? 1) * Math.max(0, volumeSlope(turned, bore))
      : 0;
  });
  const drawn = order.reduce((sum, cylinder) => sum + (draws[cylinder] ?? 1), 0) * bore.swept;
  const inflow = (mean * drawn) / (4 * Math.PI);
  const count = Math.round(seconds * perSecond);
  const time = Float64Array.from({ length: count }, (_, i) => i / perSecond);
  const samples = new Float64Array(count);
  const marks = new Float64Array(count);
  const inner = Math.max(1, Math.ceil((24 * rpm) / perSecond));
  let [p, degrees] = [mean, 100 - 4 * 720];
  const advance = (): void => {
    const step = (6 * rpm) / (perSecond * inner);
    let taken = 0;
    for (let j = 0; j < n; j++) taken += perRadian[j]?.(degrees - (j * 720) / n) ?? 0;
    p += ((inflow - p * taken) / volume) * ((step * Math.PI) / 180);
    degrees += step;
  };
  while (degrees < 100) advance();
  let left = 0;
  for (let i = 0; i < count; i++) {
    samples[i] = p;
    marks[i] = left > 0 ? 5 : 0;
    left -= 1 / perSecond;
    const before = degrees;
    for (let k = 0; k < inner; k++) advance();
    if (Math.floor((degrees + 10) / 720) > Math.floor((before + 10) / 720)) left = 3e-3;
  }
  return { pressure: { time, samples }, sync: { time, samples: marks } };
}

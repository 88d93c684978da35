import type { Signal } from './signal.ts';
import { type Bore, halfLitre, volumeAt, volumeSlope } from './sliderCrank.ts';

/** An engine that a starter turns, and that does not fire. Synthetic: round figures of a four-cylinder car. */
export interface Cranking {
  /** Cylinders in the order they fire. */
  readonly order: readonly number[];
  /** What a cylinder keeps of its compression, 1 when left out; the truth that a relative compression is measured against. */
  readonly keeps?: Readonly<Record<number, number>>;
  readonly bore?: Bore;
  /** Recorded, s; the starter runs from `on` to `off`. */
  readonly seconds: number;
  readonly on?: number;
  readonly off?: number;
  readonly perSecond: number;
  /** The cylinder whose spark, 10° before its top dead centre, the sync channel shows; every turn if it is wasted. */
  readonly sync?: number;
  readonly wasted?: boolean;
  /** Friction that comes and goes once in 1.7 s, as a share of the whole: uneven cranking. */
  readonly unsteady?: number;
}

export interface Cranked {
  /** A */
  readonly current: Signal;
  /** V, at the battery */
  readonly battery: Signal;
  /** V, a pulse of 3 ms */
  readonly sync: Signal;
  /** Turns of the crank in the last whole engine cycles, by the time they took, rpm. */
  readonly rpm: number;
}

/** Inlet closes 50° after bottom dead centre, exhaust opens 50° before. */
const closes = -130;
const opens = 130;
const barometer = 101_325;
/** Polytropic exponent when cranking (Heywood, section 9.2, less for leakage and heat; value from memory). */
const exponent = 1.22;

/**
 * J·dω/dt = k·i − friction − Σ (gas pressure above the crankcase's)·dV/dθ;  L·di/dt = E − R·i − k·ω: a starter of
 * permanent field through its gears against the compression of every cylinder, by steps of 0.05 ms (explicit Euler).
 */
export function cranking(of: Cranking): Cranked {
  const { order, keeps = {}, bore = halfLitre, seconds, perSecond, on = 0.3, off = seconds - 0.3 } = of;
  const { sync: marked = order[0], wasted = false, unsteady = 0 } = of;
  const spacing = 720 / order.length;
  const share = Math.max(1, order.length / 4);
  const [inertia, constant, inductance] = [0.25 * share, 0.36, 0.1e-3 / share];
  // A larger engine has a larger starter: more current at the same voltage.
  const [emf, inside, outside] = [12.6, 0.008 / share, 0.022 / share];
  const resting = 45 * share;
  const step = 5e-5;
  const every = Math.round(1 / (perSecond * step));
  const count = Math.round(seconds * perSecond);
  const time = Float64Array.from({ length: count }, (_, i) => i / perSecond);
  const current = new Float64Array(count);
  const battery = new Float64Array(count);
  const sync = new Float64Array(count);
  const gas = order.map((cylinder) => gasTorque(bore, keeps[cylinder] ?? 1));
  const place = order.indexOf(marked ?? 0);
  const repeats = wasted ? 360 : 720;
  let [theta, omega, amps] = [-70, 0, 0];
  let pulse = 0;
  const cycles: number[] = [];
  for (let k = 0; k < count * every; k++) {
    const now = k * step;
    const engaged = now >= on && now < off;
    if (k % every === 0) {
      current[k / every] = amps;
      battery[k / every] = emf - inside * amps;
      sync[k / every] = pulse > 0 ? 5 : 0;
    }
    pulse -= step;
    const volts = engaged ? emf - (inside + outside) * amps - constant * omega : 0;
    amps = engaged ? amps + (step * volts) / inductance : 0;
    let torque = constant * amps;
    for (let j = 0; j < order.length; j++) torque += gas[j]?.(theta - j * spacing) ?? 0;
    const rubbing = resting * (1 + unsteady * Math.sin((2 * Math.PI * now) / 1.7));
    const moving = omega > 1e-6 || torque > rubbing;
    omega = moving ? Math.max(0, omega + (step * (torque - rubbing)) / inertia) : 0;
    const before = theta;
    theta += (omega * step * 180) / Math.PI;
    if (
      Math.floor((theta + 10 - place * spacing) / repeats) >
      Math.floor((before + 10 - place * spacing) / repeats)
    )
      pulse = 3e-3;
    if (engaged && Math.floor(theta / 720) > Math.floor(before / 720)) cycles.push(now);
  }
  const [first = 0, last = 0] = [cycles[1], cycles.at(-1)];
  const rpm = (120 * (cycles.length - 2)) / (last - first);
  return {
    current: { time, samples: current },
    battery: { time, samples: battery },
    sync: { time, samples: sync },
    rpm,
  };
}

/** N·m on the crank by degrees after the cylinder's top dead centre, from a table of whole degrees. */
function gasTorque(bore: Bore, keeps: number): (degrees: number) => number {
  const trapped = volumeAt(closes, bore);
  const table = Float64Array.from({ length: 721 }, (_, at) => {
    const degrees = at - 360;
    if (degrees <= closes || degrees >= opens) return 0;
    const pressure = barometer * ((trapped / volumeAt(degrees, bore)) ** exponent - 1);
    // What leaked or cooled away is missing when the charge expands.
    return keeps * pressure * (degrees > 0 ? 0.92 : 1) * volumeSlope(degrees, bore);
  });
  return (degrees) => {
    const turned = degrees - 720 * Math.round(degrees / 720) + 360;
    const at = Math.floor(turned);
    const part = turned - at;
    return (table[at] ?? 0) * (1 - part) + (table[at + 1] ?? 0) * part;
  };
}

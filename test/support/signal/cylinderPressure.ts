import type { Signal } from './signal.ts';
import { type Bore, halfLitre, volumeAt } from './sliderCrank.ts';

/** Valve timing at the seats, degrees as the trade gives them. */
export interface Timing {
  /** Exhaust opens before bottom dead centre. */
  readonly evo: number;
  /** Exhaust closes after top dead centre. */
  readonly evc: number;
  /** Intake opens before top dead centre. */
  readonly ivo: number;
  /** Intake closes after bottom dead centre. */
  readonly ivc: number;
}

/** Within what textbooks give for petrol engines (Heywood, section 6; values from memory). */
export const usualTiming: Timing = { evo: 50, evc: 12, ivo: 14, ivc: 48 };

/** A cylinder that does not fire, a transducer in its plug hole; the other cylinders or a starter turn the crank. */
export interface Breathing {
  readonly timing?: Timing;
  readonly bore?: Bore;
  /** rpm at the beginning, and how much it changes in a second. */
  readonly rpm: number;
  readonly faster?: number;
  /** How much the crank speeds up and slows down twice a turn as the others fire, as a share of its speed. */
  readonly ripple?: number;
  /** kPa above the barometer, in the ports. */
  readonly intake: number;
  readonly exhaust: number;
  /** What leaks past rings and valves: the share of the pressure above the barometer lost in a degree. */
  readonly leak?: number;
  readonly seconds: number;
  readonly perSecond: number;
}

export interface Breath {
  /** kPa gauge */
  readonly pressure: Signal;
  /** Degrees after the compression's top dead centre, 0 to 720, at each sample. */
  readonly angle: Float64Array;
}

const barometer = 101.325;
const fine = 10;

export function breathing(of: Breathing): Breath {
  const table = cycleOf(of);
  const { rpm, faster = 0, ripple = 0, seconds, perSecond } = of;
  const count = Math.round(seconds * perSecond);
  const time = Float64Array.from({ length: count }, (_, i) => i / perSecond);
  const angle = new Float64Array(count);
  const samples = new Float64Array(count);
  const inner = 8;
  let degrees = 410;
  for (let i = 0; i < count; i++) {
    const turned = degrees % 720;
    angle[i] = turned;
    const place = turned * fine;
    const low = Math.floor(place);
    const part = place - low;
    samples[i] = (table[low] ?? 0) * (1 - part) + (table[(low + 1) % table.length] ?? 0) * part - barometer;
    for (let k = 0; k < inner; k++) {
      const speed = 6 * (rpm + faster * ((i + k / inner) / perSecond));
      degrees += (speed * (1 + ripple * Math.cos((degrees * Math.PI) / 90))) / (perSecond * inner);
    }
  }
  return { pressure: { time, samples }, angle };
}

/**
 * kPa absolute over one cycle in tenths of a degree: dp/dθ = −n·p·(dV/dθ)/V + n·p/V·(flow through the valves)/ω − leak,
 * each valve an orifice whose area goes as the lift, sin² from its opening to its closing; three cycles until it repeats.
 */
function cycleOf({
  timing = usualTiming,
  bore = halfLitre,
  rpm,
  intake,
  exhaust,
  leak = 2e-3,
}: Breathing): Float64Array {
  const exponent = 1.32;
  const [exhaustOpens, exhaustCloses] = [180 - timing.evo, 360 + timing.evc];
  const [intakeOpens, intakeCloses] = [360 - timing.ivo, 540 + timing.ivc];
  const ports = [
    { opens: exhaustOpens, closes: exhaustCloses, area: 4.5e-4, pressure: barometer + exhaust },
    { opens: intakeOpens, closes: intakeCloses, area: 5.5e-4, pressure: barometer + intake },
  ];
  const perDegree = 1 / (6 * rpm);
  const step = 1 / fine;
  const table = new Float64Array(720 * fine);
  let p = barometer + intake;
  for (let i = 0; i < 3 * table.length; i++) {
    const degrees = ((i % table.length) + 0.5) * step;
    const volume = volumeAt(degrees, bore);
    const squeezed =
      1 - (exponent * (volumeAt(degrees + step / 2, bore) - volumeAt(degrees - step / 2, bore))) / volume;
    let [gained, taken] = [p * squeezed, 1];
    for (const port of ports) {
      if (degrees <= port.opens || degrees >= port.closes) continue;
      const lift = Math.sin((Math.PI * (degrees - port.opens)) / (port.closes - port.opens)) ** 2;
      const density = (1.2 * Math.max(p, port.pressure)) / barometer;
      const difference = 1000 * Math.abs(port.pressure - p) + 20;
      const flow = port.area * lift * Math.sqrt(2 / (density * difference)) * 1000;
      // As if the difference stayed while the pressure moves, which cannot overshoot.
      const pull = (exponent * p * flow * perDegree * step) / volume;
      gained += pull * port.pressure;
      taken += pull;
    }
    p = gained / taken;
    p -= leak * (p - barometer) * step;
    table[i % table.length] = p;
  }
  return table;
}

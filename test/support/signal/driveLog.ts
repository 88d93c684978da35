import { normalFrom, randomFrom } from './random.ts';

/** A steady piece of a drive. */
export interface Leg {
  readonly seconds: number;
  readonly rpm: number;
  /** Share of 100 kPa in the manifold. */
  readonly pressure: number;
  /** km/h */
  readonly speed: number;
  readonly openLoop?: boolean;
  /** Throttle closed, fuel cut: the trims stand still. */
  readonly cut?: boolean;
}

/** What is wrong, and how much of it: an amount of air past the meter, a share, or fuel that runs short. */
export interface TrimFault {
  /** g/s through a hole at idle: choked there, less once the manifold is above 52.8 kPa (isentropic flow through an orifice). */
  readonly hole?: number;
  /** A meter or a fuel pressure that is off by the same share. */
  readonly share?: number;
  /** The trim that short fuel needs at 100 g/s, growing straight with the air flow. */
  readonly shortAt100?: number;
}

/** One engine: 2.4 L, fills its displacement to four fifths (synthetic). */
const litres = 2.4;
const filling = 0.8;
/** g/L at 100 kPa and 30 °C: p/(R·T) with R = 287.05 J/(kg·K). */
const density = 100_000 / (287.05 * 303.15);

/** g/s that the engine takes in. */
export function airTaken({ rpm, pressure }: Pick<Leg, 'rpm' | 'pressure'>): number {
  return (filling * density * pressure * litres * rpm) / 120;
}

/** Flow through an orifice over its choked flow, air (γ = 1.4) from 100 kPa to this share of it. */
export function orificeShare(pressure: number): number {
  const critical = (2 / 2.4) ** (1.4 / 0.4);
  if (pressure <= critical) return 1;
  const flow = (ratio: number): number => Math.sqrt(ratio ** (2 / 1.4) - ratio ** (2.4 / 1.4));
  return flow(Math.min(1, pressure)) / flow(critical);
}

/** The trim that the fault needs there, and the air that the meter counts, g/s. */
export function neededAt(
  leg: Leg,
  { hole = 0, share = 0, shortAt100 = 0 }: TrimFault,
): { trim: number; counted: number } {
  const taken = airTaken(leg);
  const counted = taken - hole * orificeShare(leg.pressure);
  return { counted, trim: (taken / counted) * (1 + share) * (1 + (shortAt100 * taken) / 100) - 1 };
}

/** A log, ten readings a second; percent as shares, everything else in its own unit. */
export interface DriveLogSignal {
  readonly time: Float64Array;
  readonly rpm: Float64Array;
  /** kPa */
  readonly map: Float64Array;
  /** g/s, as counted. */
  readonly maf: Float64Array;
  /** km/h */
  readonly vss: Float64Array;
  /** As generic data count it: 2 closed, 4 open under load or overrun. */
  readonly loop: Float64Array;
  readonly stft: Float64Array;
  readonly ltft: Float64Array;
}

/**
 * Drives the legs one after the other. The short trim wanders about what is needed (a first-order process of `wander`,
 * a share, that forgets in a second); both trims come in steps of 1/128 as generic data carry them.
 */
export function drive(legs: readonly Leg[], fault: TrimFault, wander: number, seed: number): DriveLogSignal {
  const normal = normalFrom(randomFrom(seed));
  const perSecond = 10;
  const count = legs.reduce((sum, { seconds }) => sum + Math.round(seconds * perSecond), 0);
  const column = (): Float64Array => new Float64Array(count);
  const log = {
    time: column(),
    rpm: column(),
    map: column(),
    maf: column(),
    vss: column(),
    loop: column(),
    stft: column(),
    ltft: column(),
  };
  let i = 0;
  let off = 0;
  const remembers = Math.exp(-1 / perSecond);
  for (const leg of legs) {
    const { trim, counted } = neededAt(leg, fault);
    for (let k = 0; k < Math.round(leg.seconds * perSecond); k++, i++) {
      off = remembers * off + wander * Math.sqrt(1 - remembers ** 2) * normal();
      log.time[i] = i / perSecond;
      log.rpm[i] = leg.rpm * (1 + 0.01 * normal());
      log.map[i] = 100 * leg.pressure * (1 + 0.01 * normal());
      log.maf[i] = counted * (1 + 0.01 * normal());
      log.vss[i] = leg.speed;
      log.loop[i] = leg.openLoop === true || leg.cut === true ? 4 : 2;
      const long = Math.round(128 * 0.7 * trim) / 128;
      log.ltft[i] = long;
      log.stft[i] =
        leg.cut === true || leg.openLoop === true ? 0 : Math.round(128 * (trim - long + off)) / 128;
    }
  }
  return log;
}

/** Idle, light load, cruise, a climb, with overrun and a moment of full throttle between. */
export const islandRound: readonly Leg[] = [
  { seconds: 60, rpm: 750, pressure: 0.33, speed: 0 },
  { seconds: 40, rpm: 2500, pressure: 0.31, speed: 40 },
  { seconds: 15, rpm: 2300, pressure: 0.2, speed: 70, cut: true },
  { seconds: 60, rpm: 2200, pressure: 0.55, speed: 80 },
  { seconds: 10, rpm: 4000, pressure: 0.98, speed: 100, openLoop: true },
  { seconds: 40, rpm: 2600, pressure: 0.8, speed: 80 },
  { seconds: 15, rpm: 2300, pressure: 0.2, speed: 60, cut: true },
];

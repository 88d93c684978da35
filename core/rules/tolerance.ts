/*
 * How far apart two sound readings may be. Each half-width is common practice for parts in use unless a source stands beside it.
 * They are combined in quadrature as uncertainties of one coverage are (JCGM 100:2008), and a finding is only made
 * beyond `certain` times the combined one: a false alarm costs more trust than a small fault found late.
 * A reading's own ± or its instrument's accuracy takes the place of the assumed one where it is greater.
 */

const certain = 2;

/** Pa: a one-bar manifold or barometric sensor, about 1.5 % of its span. */
export const pressureSensor = 1500;
/** Pa: half the step of SAE J1979 $0B and $33, 1 kPa. */
export const pressureStep = 500;
/** Pa: a dial gauge of 30 inHg in class 1.6 (EN 837-1, value from memory). */
export const vacuumGauge = 1700;
/** Pa: what an idle wanders between two looks. */
export const idleWander = 1000;
/** Pa: sea-level weather around the standard atmosphere on all but the rarest days. */
export const weather = 4500;
/** Pa: thirty metres of altitude, and a weather report of another hour. */
export const siteError = 500;
/** Pa: an open throttle leaves no more vacuum than this; what reads more as a pressure is one, of a plate that hardly opens. */
export const vacuumLeft = 15_000;
/** Pa: no open throttle of a running engine leaves less pressure in the manifold, wherever the car stands. */
export const leastOpen = 40_000;
/** K: a temperature sensor of the engine. */
export const temperatureSensor = 2;

/** The largest difference that the half-widths explain. */
export function explained(a: number, b: number, c = 0, d = 0, e = 0, f = 0): number {
  return certain * Math.sqrt(a * a + b * b + c * c + d * d + e * e + f * f);
}

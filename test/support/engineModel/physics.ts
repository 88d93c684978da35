/*
 * The relations that the model stands on, written down anew from their sources and not taken from core:
 * the rules that the model judges must not share their mistakes with it.
 * Pressures in Pa absolute, temperatures in K, flows in kg/s, speeds in turns a minute, volumes in m³.
 */

/** Specific gas constant of dry air, J/(kg·K): 8314.32 / 28.9644 (U.S. Standard Atmosphere 1976). */
const gasConstant = 287.053;
/** Ratio of specific heats of air. */
const gamma = 1.4;

/** The pressure at an altitude, m, when the sea level has `seaLevel`: 101325·(1 − 2.25577e-5·h)^5.2559 (ASHRAE Handbook 2017, chapter 1, equation 3). */
export function pressureAt(altitude: number, seaLevel = 101325): number {
  return seaLevel * (1 - 2.25577e-5 * altitude) ** 5.2559;
}

/** Ideal gas. */
export function density(pressure: number, temperature: number): number {
  return pressure / (gasConstant * temperature);
}

/** What a four-stroke engine draws in: η·ρ·V·n/120 (Heywood, Internal Combustion Engine Fundamentals, equation 2.27). */
export function speedDensityFlow(
  filling: number,
  pressure: number,
  temperature: number,
  displacement: number,
  rpm: number,
): number {
  return (filling * density(pressure, temperature) * displacement * rpm) / 120;
}

/**
 * How much of a cylinder's filling the gas that is left in it leaves over, by exhaust and intake pressure:
 * r/(r − 1) − [pe/pi + (γ − 1)] / [γ·(r − 1)] (Heywood, equation 6.2, the ideal cycle; value from memory). It is 1 at pe = pi.
 */
export function residualShare(ratio: number, exhaust: number, intake: number): number {
  return ratio / (ratio - 1) - (exhaust / intake + (gamma - 1)) / (gamma * (ratio - 1));
}

/**
 * Air through an opening of an effective area, m² (discharge coefficient included), from `before` to `behind`:
 * choked below the critical ratio 0.528, otherwise by the pressure ratio (Heywood, appendix C, equations C.8 and C.9).
 */
export function orificeFlow(area: number, before: number, behind: number, temperature: number): number {
  const critical = (2 / (gamma + 1)) ** (gamma / (gamma - 1));
  const ratio = Math.min(1, Math.max(behind / before, critical));
  const inside = ((2 * gamma) / (gamma - 1)) * (ratio ** (2 / gamma) - ratio ** ((gamma + 1) / gamma));
  return (area * before * Math.sqrt(Math.max(0, inside))) / Math.sqrt(gasConstant * temperature);
}

/** Gauge pressure at the end of compression: p·(rⁿ) − p (polytropic; cranking leaks, so n is 1.1 to 1.25). */
export function compressionGauge(ratio: number, pressure: number, exponent: number): number {
  return pressure * (ratio ** exponent - 1);
}

/** Mass of air to mass of fuel at lambda 1 (Heywood, table D.4 from memory; blends by mass). */
export const stoichiometric = { E0: 14.6, E5: 14.3, E10: 14.0, E85: 9.86 } as const;
export type Fuel = keyof typeof stoichiometric;

/** Atoms for each one of carbon (reference fuels of UN Regulation No. 83, values from memory; gasoline CH1.87 after Heywood). */
export const composition: Readonly<Record<Fuel, { readonly hydrogen: number; readonly oxygen: number }>> = {
  E0: { hydrogen: 1.87, oxygen: 0 },
  E5: { hydrogen: 1.89, oxygen: 0.016 },
  E10: { hydrogen: 1.93, oxygen: 0.033 },
  E85: { hydrogen: 2.74, oxygen: 0.385 },
};

/** Parts of dry air in which there is one of oxygen: O2 + 3.773 N2, argon counted as nitrogen (Heywood). */
export const airPerPartOfOxygen = 4.773;

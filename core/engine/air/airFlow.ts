import { type Answer, noAnswer } from '../answer.ts';
import { sayNumber } from '../sayValue.ts';
import { dryAirConstant, unlikelyAir } from './airDensity.ts';

/*
 * Four-stroke engines: each cylinder draws in once in two turns.
 * Speeds are in turns a second, flows in kg/s, displacement in m³.
 */

/** The air density that absolute load is referred to, kg/m³: 1.184 g/L, 25 °C and 101.3 kPa (SAE J1979). */
const loadDensity = 1.184;

/** The air that one intake stroke draws in, kg: m / (n/2 · cylinders). */
export function airPerStroke(maf: number, rpm: number, cylinders: number): Answer {
  const wrong = unlikelyFlow(maf, rpm);
  if (wrong !== undefined) return noAnswer(wrong);
  if (!(cylinders >= 1 && Number.isInteger(cylinders))) {
    return noAnswer(`An engine has a whole number of cylinders, not ${sayNumber(cylinders)}.`);
  }
  return maf / ((rpm / 2) * cylinders);
}

/**
 * Absolute load as a share (1 is 100 %): the air drawn in per stroke over 1.184 g/L times the cylinder's displacement (SAE J1979, LOAD_ABS).
 * It is not corrected for the barometer: its top falls with altitude, and a boosted engine passes 100 %.
 */
export function absoluteLoad(maf: number, rpm: number, displacement: number): Answer {
  return filling(maf, rpm, displacement, loadDensity);
}

/**
 * Volumetric efficiency as a share (1 is 100 %): η = 2·m / (ρ·V·n) with ρ = p/(287.05·T) of dry air,
 * p absolute in Pa and T in K (Heywood, Internal Combustion Engine Fundamentals, chapter 2).
 * With the barometer and outside air it says how well the whole engine breathes; with manifold pressure and
 * intake temperature, how well the cylinders fill from the manifold.
 */
export function volumetricEfficiency(
  maf: number,
  rpm: number,
  pressure: number,
  temperature: number,
  displacement: number,
): Answer {
  const wrong = unlikelyAir(pressure, temperature);
  if (wrong !== undefined) return noAnswer(wrong);
  return filling(maf, rpm, displacement, pressure / (dryAirConstant * temperature));
}

function filling(maf: number, rpm: number, displacement: number, density: number): Answer {
  const wrong = unlikelyFlow(maf, rpm);
  if (wrong !== undefined) return noAnswer(wrong);
  if (!(displacement > 0))
    return noAnswer('The displacement must be more than nothing. Check `engine: displacement`.');
  return (2 * maf) / (density * displacement * rpm);
}

function unlikelyFlow(maf: number, rpm: number): string | undefined {
  if (!(rpm > 0))
    return `At ${sayNumber(rpm * 60)} rpm the engine draws nothing in; the speed must be above 0 rpm.`;
  if (!(maf >= 0))
    return `An air flow of ${sayNumber(maf * 1000)} g/s runs backwards. Check its sign and unit.`;
  return undefined;
}

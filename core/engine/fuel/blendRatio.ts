import { type Answer, noAnswer } from '../answer.ts';
import { sayNumber, sayPercent } from '../sayValue.ts';

/**
 * The stoichiometric ratio of two fuels mixed by volume: (1 − w)·base + w·added,
 * w = v·ρa / (v·ρa + (1 − v)·ρb) being the added fuel's share by mass. Ratios by mass, densities in kg/m³, the share v from 0 to 1.
 * Fuel is sold by volume and burns by mass: mixing the ratios by volume alone is the usual error
 * (0.85 of ethanol in a 14.7 fuel makes 9.81, not 9.86).
 */
export function blendRatio(
  share: number,
  base: number,
  added: number,
  baseDensity: number,
  addedDensity: number,
): Answer {
  if (!(share >= 0 && share <= 1)) {
    return noAnswer(`A share of ${sayPercent(share)} does not exist; it runs from 0 to 100 %.`);
  }
  for (const ratio of [base, added]) {
    if (!(ratio > 0)) return noAnswer(`A stoichiometric ratio of ${sayNumber(ratio)} does not exist.`);
  }
  for (const density of [baseDensity, addedDensity]) {
    if (!(density > 0)) return noAnswer(`A fuel of ${sayNumber(density / 1000)} kg/L does not exist.`);
  }
  const mass = share * addedDensity;
  const byMass = mass / (mass + (1 - share) * baseDensity);
  return (1 - byMass) * base + byMass * added;
}

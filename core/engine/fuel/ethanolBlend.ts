import { type Composition, molarMass } from './composition.ts';
import type { Fuel } from './fuels.ts';

/** kg/L at 15 to 20 °C (values from memory). Fuel is sold by volume and burns by mass. */
export const gasolineDensity = 0.745;
export const ethanolDensity = 0.789;
const gasoline: Composition = { carbon: 1, hydrogen: 1.87, oxygen: 0 };
const ethanol: Composition = { carbon: 2, hydrogen: 6, oxygen: 1 };

/** Gasoline with this share of ethanol by volume (0 to 1), its composition in moles a kilogram. */
export function ethanolBlend(share: number): Fuel {
  const byMass = ethanolMassShare(share);
  const fromGasoline = (1 - byMass) / molarMass(gasoline);
  const fromEthanol = byMass / molarMass(ethanol);
  return {
    name: `E${Math.round(share * 100)}`,
    alsoCalled: [],
    composition: {
      carbon: gasoline.carbon * fromGasoline + ethanol.carbon * fromEthanol,
      hydrogen: gasoline.hydrogen * fromGasoline + ethanol.hydrogen * fromEthanol,
      oxygen: ethanol.oxygen * fromEthanol,
    },
    source: `blend by mass of gasoline CH1.87, ${gasolineDensity} kg/L, and ethanol, ${ethanolDensity} kg/L (values from memory)`,
  };
}

/** The share by mass of ethanol in a blend that has this share by volume. */
export function ethanolMassShare(byVolume: number): number {
  const mass = byVolume * ethanolDensity;
  return mass / (mass + (1 - byVolume) * gasolineDensity);
}

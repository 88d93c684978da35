/** How many atoms of each element a fuel has, in any common measure (per molecule, per carbon atom, per kilogram). */
export interface Composition {
  readonly carbon: number;
  readonly hydrogen: number;
  readonly oxygen: number;
}

/** The mass of air (O2 + 3.773 N2) that burns a unit mass of this composition completely. */
export function airFuelRatio(of: Composition): number {
  return (airPerAtomOfHydrogen * (4 * of.carbon + of.hydrogen - 2 * of.oxygen)) / molarMass(of);
}

/** The mass in g of as many moles as `of` counts. */
export function molarMass(of: Composition): number {
  return 12.011 * of.carbon + 1.008 * of.hydrogen + 15.999 * of.oxygen;
}

/** A quarter mole of O2 with its 3.773 quarter moles of N2, g. */
const airPerAtomOfHydrogen = 34.56;

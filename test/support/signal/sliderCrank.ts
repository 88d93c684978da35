/** One cylinder: swept volume m³, compression ratio, connecting rod over crank radius. */
export interface Bore {
  readonly swept: number;
  readonly ratio: number;
  readonly rod: number;
}

export const halfLitre: Bore = { swept: 500e-6, ratio: 10.5, rod: 3.5 };

const radians = Math.PI / 180;

/**
 * Volume above the piston, m³, at a crank angle in degrees after top dead centre
 * (Heywood, Internal Combustion Engine Fundamentals, equations 2.4 to 2.6; numbers of equations from memory).
 */
export function volumeAt(degrees: number, { swept, ratio, rod }: Bore): number {
  const theta = degrees * radians;
  const clearance = swept / (ratio - 1);
  const below = rod + 1 - Math.cos(theta) - Math.sqrt(rod * rod - Math.sin(theta) ** 2);
  return clearance + (swept / 2) * below;
}

/** Its change with the crank angle, m³ per radian: what a pressure of 1 Pa turns the crank with, N·m. */
export function volumeSlope(degrees: number, { swept, rod }: Bore): number {
  const theta = degrees * radians;
  const sine = Math.sin(theta);
  return (swept / 2) * sine * (1 + Math.cos(theta) / Math.sqrt(rod * rod - sine * sine));
}

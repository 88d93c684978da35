/** What a cylinder does to the crank while it is only turned: round figures, since only the shape counts. */
const closes = -125;
const opens = 125;
const exponent = 1.25;
/** Of the work of compression, what leakage and cooling leave to the expansion (value from memory). */
const kept = 0.93;

/**
 * How hard a cylinder without combustion holds the crank back, over degrees after its top dead centre (0 to 720); it
 * pushes where the number is below 0. In units of barometer times half the swept volume. Polytropic between inlet
 * closing and exhaust opening, slider-crank (Heywood, Internal Combustion Engine Fundamentals, chapters 2 and 9).
 */
export function compressionTorque(ratio: number, rod: number): (degrees: number) => number {
  const volume = (degrees: number): number => {
    const sine = Math.sin((degrees * Math.PI) / 180);
    const cosine = Math.cos((degrees * Math.PI) / 180);
    return 1 / (ratio - 1) + (rod + 1 - cosine - Math.sqrt(rod * rod - sine * sine)) / 2;
  };
  const trapped = volume(closes);
  return (degrees) => {
    const turned = degrees > 360 ? degrees - 720 : degrees;
    if (turned <= closes || turned >= opens) return 0;
    const sine = Math.sin((turned * Math.PI) / 180);
    const cosine = Math.cos((turned * Math.PI) / 180);
    const slope = sine * (1 + cosine / Math.sqrt(rod * rod - sine * sine));
    return -((trapped / volume(turned)) ** exponent - 1) * slope * (turned > 0 ? kept : 1);
  };
}

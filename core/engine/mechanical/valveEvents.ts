import { type Corner, cornerIn } from '../../waveform/cylinder/corner.ts';
import { median } from '../../waveform/quantile.ts';
import { smooth } from '../../waveform/smooth.ts';

/** What one engine cycle of cylinder pressure shows; angles in degrees after the compression's top dead centre. */
export interface ValveEvents {
  readonly evo: number | undefined;
  readonly evc: number | undefined;
  readonly ivo: number | undefined;
  readonly ivc: number | undefined;
  /** Pa above the barometer. */
  readonly exhaust: number;
  readonly intake: number;
  readonly towerRatio: number;
}

/** What is known of the cylinder beforehand. */
export interface CylinderShape {
  readonly ratio: number;
  /** Connecting rod over crank radius. */
  readonly rod: number;
  /** Pa absolute */
  readonly barometer: number;
}

/** Polytropic exponent without combustion (Heywood, Internal Combustion Engine Fundamentals, section 9.2; value from memory). */
const exponent = 1.3;

/** Behind its corner, what a valve lets through grows with the square of the way that it has turned since. */
const opening: Corner = { degree: 2, powers: [2] };
const fading: Corner = { degree: 1, powers: [1, 2] };

/**
 * Reads the events off a cycle's pressures (Pa above the barometer, by degrees after compression's top dead centre).
 * While both valves are shut, p·Vⁿ stays as it is: the exhaust valve opens, and the intake valve is closed, where it
 * begins and ends to change. Between exhaust and intake the pressure falls from one plateau to the other: the intake
 * valve opens where the fall begins, the exhaust valve is closed where it ends.
 */
export function valveEventsIn(pressures: Float64Array, shape: CylinderShape): ValveEvents {
  const exhaust = median(pressures.subarray(215, 290));
  const intake = median(pressures.subarray(420, 510));
  const charge = chargeOf(pressures, shape);
  const calm = withoutNoise(pressures);
  return {
    exhaust,
    intake,
    evo: exhaustOpens(charge, calm, exhaust),
    ivc: intakeCloses(charge),
    ...overlapIn(pressures, calm, exhaust, intake),
    towerRatio: towerRatio(pressures, intake),
  };
}

/** Bins begin at 0 and stand for the middle of their degree. */
const degreesOf = (corner: { readonly at: number } | undefined): number | undefined =>
  corner === undefined ? undefined : corner.at + 0.5;

/** ln(p·Vⁿ), V in swept volumes: what is in the cylinder, while nothing burns. */
function chargeOf(pressures: Float64Array, { ratio, rod, barometer }: CylinderShape): Float64Array {
  return pressures.map((gauge, i) => {
    const theta = ((i + 0.5) * Math.PI) / 180;
    const below = (rod + 1 - Math.cos(theta) - Math.sqrt(rod * rod - Math.sin(theta) ** 2)) / 2;
    const absolute = Math.max(0.03 * barometer, gauge + barometer);
    return Math.log(absolute) + exponent * Math.log(1 / (ratio - 1) + below);
  });
}

const degrees = Float64Array.from({ length: 720 }, (_, i) => i);
const withoutNoise = (samples: Float64Array): Float64Array => smooth(degrees, samples, 7);

/** Compression's mirror, degrees: from here on nothing leaks in or out but slowly. */
const expanding = 45;
/** Where the pressure has come back by this share of the way to the exhaust plateau, the valve is surely open … */
const surely = 0.4;
/** … and has been for some degrees at least. */
const sinceOpen = 6;

/** The end of expansion is a pocket below the exhaust's pressure, out of which the opening valve leads. */
function exhaustOpens(charge: Float64Array, calm: Float64Array, exhaust: number): number | undefined {
  let pocket = 90;
  for (let at = 90; at < 230; at++) if ((calm[at] ?? 0) < (calm[pocket] ?? 0)) pocket = at;
  const depth = exhaust - (calm[pocket] ?? 0);
  if (!(depth > least)) return undefined;
  let open = pocket;
  while (open < 260 && (calm[open] ?? 0) < exhaust - (1 - surely) * depth) open++;
  return degreesOf(cornerIn(charge, expanding, open, opening, sinceOpen));
}

/** Read from compression backwards. */
function intakeCloses(charge: Float64Array): number | undefined {
  const backwards = charge.toReversed();
  const corner = cornerIn(backwards, 720 - 645, 720 - 545, opening);
  return corner === undefined ? undefined : 720 - 0.5 - corner.at;
}

/** The plateaus must lie this many times the noise of a degree apart, and this far, Pa, for the fall between to be read. */
const clearly = 5;
const least = 800;

function overlapIn(
  pressures: Float64Array,
  calm: Float64Array,
  exhaust: number,
  intake: number,
): { readonly ivo: number | undefined; readonly evc: number | undefined } {
  const steps = pressures.subarray(430, 510).map((each, i) => Math.abs(each - (pressures[429 + i] ?? each)));
  const fall = exhaust - intake;
  if (!(fall > Math.max(least, clearly * median(steps)))) return { ivo: undefined, evc: undefined };
  let half = 300;
  while (half < 450 && (calm[half] ?? 0) > intake + fall / 2) half++;
  if (half >= 450) return { ivo: undefined, evc: undefined };
  return {
    ivo: degreesOf(cornerIn(pressures, half - 60, half + 2, opening)),
    evc: degreesOf(cornerIn(pressures, half - 2, half + 60, fading)),
  };
}

/** Between these degrees from top dead centre the two flanks are laid over each other. */
const flanks = [20, 70] as const;

/** Both flanks above the intake plateau: without loss 1, less by what leaks and cools away. */
function towerRatio(pressures: Float64Array, intake: number): number {
  let [compression, expansion] = [0, 0];
  for (let i = flanks[0]; i < flanks[1]; i++) {
    expansion += (pressures[i] ?? 0) - intake;
    compression += (pressures[719 - i] ?? 0) - intake;
  }
  return compression > 0 ? expansion / compression : Number.NaN;
}

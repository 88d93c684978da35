import { type Answer, noAnswer } from '../answer.ts';
import { sayNumber, sayPressure } from '../sayValue.ts';
import { ratioOf } from './stoichiometry.ts';

/**
 * The fuel that the injectors of a four-stroke engine deliver, kg/s: n/2 · injectors · flow · density · (pulse width − dead time).
 * Pulse width and dead time in s, speed in turns a second, flow in m³/s at the pressure across the injector, density in kg/m³.
 * One injection for each injector in two turns. The dead time is what the injector needs to open, about 0.5 to 1.2 ms,
 * more at low battery voltage (common practice). A pulse shorter than it delivers nothing.
 */
export function injectedFuel(
  pulseWidth: number,
  rpm: number,
  deadTime: number,
  flow: number,
  injectors: number,
  density: number,
): Answer {
  if (!(rpm > 0))
    return noAnswer(`At ${sayNumber(rpm * 60)} rpm nothing is injected; the speed must be above 0 rpm.`);
  if (!(pulseWidth >= 0 && deadTime >= 0)) {
    return noAnswer(
      `A pulse width of ${sayNumber(pulseWidth * 1000)} ms with ${sayNumber(deadTime * 1000)} ms of dead time does not exist.`,
    );
  }
  if (!(flow >= 0 && density > 0))
    return noAnswer('The injector’s flow and the fuel’s density must be above 0.');
  if (!(injectors >= 1 && Number.isInteger(injectors))) {
    return noAnswer(`An engine has a whole number of injectors, not ${sayNumber(injectors)}.`);
  }
  return (rpm / 2) * injectors * flow * density * Math.max(0, pulseWidth - deadTime);
}

/** The air, in the fuel flow's own unit, that burns this fuel at this lambda: fuel · λ · stoichiometric ratio. */
export function airForFuel(fuelFlow: number, lambda: number, fuel: string): Answer {
  if (!(fuelFlow >= 0)) return noAnswer(`A fuel flow of ${sayNumber(fuelFlow * 1000)} g/s runs backwards.`);
  const ratio = ratioOf(lambda, fuel);
  return typeof ratio === 'number' ? fuelFlow * ratio : ratio;
}

/**
 * The pressure across an injector, Pa: rail (gauge) + barometer − manifold (absolute).
 * A regulator with a hose to the manifold keeps it the same at every load; without one it falls as the throttle opens.
 */
export function injectorPressure(rail: number, manifold: number, baro: number): Answer {
  for (const pressure of [manifold, baro]) {
    if (!(pressure > 0))
      return noAnswer(
        `An absolute pressure of ${sayPressure(pressure)} does not exist. A gauge or vacuum reading needs the barometer first.`,
      );
  }
  const across = rail + baro - manifold;
  if (across < 0)
    return noAnswer(
      `With ${sayPressure(across)} across it the injector would run backwards. Check the rail’s pressure and the manifold’s.`,
    );
  return across;
}

/** The trim, as a share, that makes up for another pressure across the injector at the same pulse width: √(rated/actual) − 1. */
export function pressureTrim(rated: number, actual: number): Answer {
  if (!(rated > 0 && actual > 0)) return noAnswer('Both pressures across the injector must be above 0.');
  return Math.sqrt(rated / actual) - 1;
}

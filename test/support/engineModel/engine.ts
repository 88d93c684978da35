import type { Chance } from './chance.ts';
import { type Fuel, pressureAt } from './physics.ts';

/** An engine with its car, its place and its day: what does not change while it is measured. */
export interface Engine {
  /** m³ of all cylinders. */
  readonly displacement: number;
  readonly cylinders: number;
  readonly firingOrder: string;
  readonly banks: 1 | 2;
  readonly ratio: number;
  /** Polytropic exponent of its compression when it is cranked: it leaks, and the gauge asks for air. */
  readonly exponent: number;
  readonly fuel: Fuel;
  readonly boosted: boolean;
  readonly metering: 'air flow' | 'manifold pressure' | 'both';
  readonly frontSensor: 'zirconia' | 'wideband';
  readonly idleControl: 'valve' | 'throttle';
  readonly recirculates: boolean;
  /** °C at which the thermostat begins to open. */
  readonly thermostat: number;
  readonly idleSpeed: number;
  /** The best filling from the manifold, the speed of it, and how fast it falls away from it. */
  readonly filling: { readonly best: number; readonly at: number; readonly falls: number };
  /** Air that one litre needs in one second to idle warm at 1000 rpm, kg/s per m³. */
  readonly idleAir: number;
  /** km/h at 1000 rpm in the gear that the car is driven in. */
  readonly gearing: number;
  /** m² of the open throttle, discharge included. */
  readonly throttleArea: number;
  readonly site: Site;
}

export interface Site {
  /** m above the sea. */
  readonly altitude: number;
  /** Pa: what the weather report says for the sea level. */
  readonly seaLevel: number;
  /** Pa at the car. */
  readonly barometer: number;
  /** K outside. */
  readonly outside: number;
}

const layouts = [
  { cylinders: 3, order: '1-2-3', banks: 1 },
  { cylinders: 4, order: '1-3-4-2', banks: 1 },
  { cylinders: 4, order: '1-3-4-2', banks: 1 },
  { cylinders: 5, order: '1-2-4-5-3', banks: 1 },
  { cylinders: 6, order: '1-5-3-6-2-4', banks: 1 },
  { cylinders: 6, order: '1-2-3-4-5-6', banks: 2 },
  { cylinders: 8, order: '1-8-4-3-6-5-7-2', banks: 2 },
] as const;

/** Draws an engine; `given` holds what a fault needs it to be. */
export function drawEngine(
  chance: Chance,
  given: Partial<Engine> = {},
  altitudes?: readonly [number, number],
): Engine {
  const twoBanks = layouts.filter(({ banks }) => banks === 2);
  const list = given.banks === 2 ? twoBanks : layouts;
  const layout = chance.oneOf(list as unknown as readonly [(typeof layouts)[number]]);
  const displacement = layout.cylinders * chance.between(0.33e-3, 0.62e-3);
  const boosted = given.boosted ?? chance.happens(0.15);
  const [low, high] = altitudes ?? (chance.happens(0.6) ? [0, 300] : [300, 3000]);
  const site = drawSite(chance, low, high);
  return {
    displacement,
    cylinders: layout.cylinders,
    firingOrder: layout.order,
    banks: layout.banks,
    ratio: boosted ? chance.between(8.5, 10.5) : chance.between(9, 12),
    fuel: chance.oneOf(['E0', 'E5', 'E10', 'E10', 'E10', 'E85']),
    metering: chance.oneOf(['air flow', 'air flow', 'manifold pressure', 'both']),
    frontSensor: chance.oneOf(['zirconia', 'zirconia', 'wideband']),
    idleControl: chance.oneOf(['valve', 'throttle']),
    recirculates: chance.happens(0.4),
    thermostat: chance.oneOf([82, 87, 88, 91]),
    idleSpeed: Math.round(chance.between(600, 850) / 10) * 10,
    filling: {
      best: chance.between(0.84, 0.98),
      at: chance.between(3400, 4800),
      falls: chance.between(0.1, 0.25),
    },
    idleAir: chance.between(1.35, 2.1),
    throttleArea: displacement * chance.between(0.5, 0.7),
    gearing: chance.between(32, 46),
    exponent: chance.between(1.15, 1.24),
    site,
    ...given,
    boosted,
  };
}

function drawSite(chance: Chance, low: number, high: number): Site {
  const altitude = chance.between(low, high);
  const seaLevel = 101325 + chance.around(700, 1800);
  return {
    altitude,
    seaLevel,
    barometer: pressureAt(altitude, seaLevel),
    outside: 273.15 + chance.between(-12, 40) - 0.0045 * altitude,
  };
}

/** How well the cylinders fill from the manifold at a speed, before the gas that is left in them is taken off. */
export function fillingAt({ filling }: Engine, rpm: number): number {
  return filling.best * (1 - filling.falls * ((rpm - filling.at) / filling.at) ** 2);
}

import type { Chance } from './chance.ts';
import type { Engine } from './engine.ts';
import type { OneFault } from './faults.ts';
import type { CarFaults } from './operation.ts';
import { orificeFlow } from './physics.ts';

/** What each sound car has of everything: parts differ. */
export function soundCar(engine: Engine, chance: Chance): CarFaults {
  const meter = chance.around(0.018, 0.04);
  const common = chance.around(0.012, 0.025);
  const injectors = [common + chance.around(0.008, 0.015), common + chance.around(0.008, 0.015)] as const;
  return {
    leak: orificeArea(engine, chance.between(0, 0.01)),
    strayGas: 0,
    strayOffIdle: 0,
    blocked: 0,
    opens: 1,
    meter,
    mapOffset: 0,
    injectors,
    starved: chance.between(0, 0.02),
    sensorBias: chance.around(0.004, 0.01),
    opensEarly: 0,
  };
}

/** The same car with one fault of its own; slips and instruments leave it sound. */
export function withFault(car: CarFaults, engine: Engine, fault: OneFault | undefined): CarFaults {
  if (fault === undefined) return car;
  const share = fault.size / 100;
  switch (fault.name) {
    case 'air leak behind the meter':
    case 'leak larger than the idle valve can make up for':
      return { ...car, leak: orificeArea(engine, share) };
    case 'weak fuel supply':
      return { ...car, starved: share };
    case 'air-flow meter reads low everywhere':
    case 'air-flow meter reads low, one load looked at':
      return { ...car, meter: car.meter - share };
    case 'injectors of one bank give too little':
    case 'a code of the other bank':
      return { ...car, injectors: [car.injectors[0], car.injectors[1] - share] };
    case 'front sensor sees lean: exhaust leak before it':
    case 'wide-range sensor shows lambda too high':
      return { ...car, sensorBias: share };
    case 'wide-range sensor shows lambda too low':
      return { ...car, sensorBias: -share };
    case 'recirculation valve opened by a vacuum that leaks to it':
      return { ...car, strayOffIdle: 0.4 * share };
    case 'throttle that opens too little at full pedal':
      return { ...car, opens: share };
    case 'recirculation valve stuck open':
    case 'recirculation valve far open, its command not read':
      return { ...car, strayGas: 0.6 * share };
    case 'exhaust blocked':
      return { ...car, blocked: share };
    case 'thermostat opens early':
      return { ...car, opensEarly: fault.size };
    case 'manifold pressure sensor off':
      return { ...car, mapOffset: 1000 * fault.size };
    default:
      return car;
  }
}

/** m² through which a choked flow of this share of the idle air goes. */
function orificeArea({ idleAir, displacement, idleSpeed, site }: Engine, share: number): number {
  const idle = (idleAir * displacement * idleSpeed) / 1000;
  const flowOfOneSquareMetre = orificeFlow(1, site.barometer, 0.3 * site.barometer, site.outside);
  return (share * idle) / flowOfOneSquareMetre;
}

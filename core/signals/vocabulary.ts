import type { Signal } from './types.ts';
import { air } from './vocabulary/air.ts';
import { boost } from './vocabulary/boost.ts';
import { cooling } from './vocabulary/cooling.ts';
import { cylinders } from './vocabulary/cylinders.ts';
import { electrical } from './vocabulary/electrical.ts';
import { engine } from './vocabulary/engine.ts';
import { evap } from './vocabulary/evap.ts';
import { exhaustGas } from './vocabulary/exhaustGas.ts';
import { fuel } from './vocabulary/fuel.ts';
import { highPressureFuel } from './vocabulary/highPressureFuel.ts';
import { hybrid } from './vocabulary/hybrid.ts';
import { ignition } from './vocabulary/ignition.ts';
import { mechanical } from './vocabulary/mechanical.ts';
import { network } from './vocabulary/network.ts';
import { oxygen } from './vocabulary/oxygen.ts';
import { particulate } from './vocabulary/particulate.ts';
import { readiness } from './vocabulary/readiness.ts';
import { recirculation } from './vocabulary/recirculation.ts';
import { temperatures } from './vocabulary/temperatures.ts';
import { throttle } from './vocabulary/throttle.ts';
import { trims } from './vocabulary/trims.ts';
import { vehicle } from './vocabulary/vehicle.ts';

/**
 * Where the vocabulary's rows are found. The command line's build puts another way in the place of this file: there the
 * rows are data beside the program, and each is read when it is asked for.
 */

/** Every signal of the vocabulary, family by family. */
export function allSignals(): readonly Signal[] {
  all ??= families.flat();
  return all;
}

/** The signal of exactly this name; case counts. */
export function signalOf(name: string): Signal | undefined {
  byName ??= new Map(allSignals().map((each) => [each.name, each]));
  return byName.get(name);
}

let all: readonly Signal[] | undefined;
let byName: ReadonlyMap<string, Signal> | undefined;

const families: readonly (readonly Signal[])[] = [
  engine,
  air,
  throttle,
  trims,
  fuel,
  highPressureFuel,
  oxygen,
  ignition,
  temperatures,
  exhaustGas,
  cylinders,
  mechanical,
  recirculation,
  boost,
  evap,
  particulate,
  electrical,
  network,
  hybrid,
  cooling,
  vehicle,
  readiness,
];

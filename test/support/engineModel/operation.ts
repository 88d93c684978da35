import { type AirFaults, type AirState, airState, type Demand } from './airPath.ts';
import type { Chance } from './chance.ts';
import type { Engine } from './engine.ts';
import { closedLoop, type FuelFaults, type Mixture, openLoop } from './fuelPath.ts';

/** The engine at one of its states: what is true, before any instrument looks. */
export interface Point {
  readonly state: StateName;
  readonly air: AirState;
  readonly mixtures: readonly [Mixture, Mixture];
  readonly isClosedLoop: boolean;
  readonly commandedGas: number;
  /** K */
  readonly coolant: number;
  readonly charge: number;
}

export type StateName = 'warm idle' | '2500 rpm no load' | 'light cruise' | 'cruise' | 'wide open throttle';

export const stateNames: readonly StateName[] = [
  'warm idle',
  '2500 rpm no load',
  'light cruise',
  'cruise',
  'wide open throttle',
];

/** What is wrong inside the car; sound when everything is 0. */
export interface CarFaults extends AirFaults, FuelFaults {
  /** K by which the thermostat opens before its rating. */
  readonly opensEarly: number;
}

/** Runs the engine through all states, one after the other: the trim that it learned driving is what it takes to full throttle. */
export function operate(engine: Engine, faults: CarFaults, chance: Chance): readonly Point[] {
  const coolant = 273.15 + engine.thermostat - faults.opensEarly + chance.between(1, 8);
  // Under the bonnet the air takes up heat, most of it when little flows.
  const under = { idle: chance.between(6, 22), driving: chance.between(2, 9) };
  let learned: readonly [number, number] = [0, 0];
  return stateNames.map((state) => {
    const moving = state !== 'warm idle' && state !== '2500 rpm no load';
    const charge = Math.min(engine.site.outside + (moving ? under.driving : under.idle), coolant - 4);
    const demand = demandOf(state, engine, chance);
    const air = airState(engine, demand, faults, charge);
    const isClosedLoop = state !== 'wide open throttle';
    const commanded = chance.between(0.84, 0.9);
    const of = (bank: 0 | 1): Mixture =>
      isClosedLoop
        ? closedLoop(engine, air, faults, bank)
        : openLoop(engine, air, faults, bank, commanded, learned[bank]);
    const mixtures = [of(0), of(1)] as const;
    if (state === 'cruise') learned = [mixtures[0].trim, mixtures[1].trim];
    const commandedGas = demand.kind === 'load' ? demand.recirculation : 0;
    return {
      state,
      air,
      mixtures,
      isClosedLoop,
      commandedGas,
      coolant: coolant + chance.around(1.5),
      charge,
    };
  });
}

function demandOf(state: StateName, engine: Engine, chance: Chance): Demand {
  const recirculation = engine.recirculates ? chance.between(0.03, 0.14) : 0;
  switch (state) {
    case 'warm idle':
      return { kind: 'idle' };
    case '2500 rpm no load':
      return { kind: 'no load', rpm: 2500 + chance.around(40) };
    case 'light cruise':
      return {
        kind: 'load',
        rpm: chance.between(1500, 2000),
        share: chance.between(0.28, 0.38),
        recirculation: 0,
      };
    case 'cruise':
      return {
        kind: 'load',
        rpm: chance.between(2000, 2800),
        share: chance.between(0.42, 0.58),
        recirculation,
      };
    case 'wide open throttle':
      return {
        kind: 'full',
        rpm: chance.between(2800, 4500),
        boost: engine.boosted ? chance.between(30000, 90000) : 0,
      };
  }
}

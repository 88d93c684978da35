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

export type StateName =
  | 'cold idle'
  | 'warm idle'
  | '2500 rpm no load'
  | 'light cruise'
  | 'cruise'
  | 'deceleration'
  | 'wide open throttle';

const stateNames: readonly StateName[] = [
  'cold idle',
  'warm idle',
  '2500 rpm no load',
  'light cruise',
  'cruise',
  'deceleration',
  'wide open throttle',
];

/** What is wrong inside the car; sound when everything is 0. */
export interface CarFaults extends AirFaults, FuelFaults {
  /** K by which the thermostat opens before its rating. */
  readonly opensEarly: number;
}

/** Runs the engine through all states, one after the other: the trim that it learned driving is what it takes where its sensor does not steer. */
export function operate(engine: Engine, faults: CarFaults, chance: Chance): readonly Point[] {
  const warm = 273.15 + engine.thermostat - faults.opensEarly + chance.between(1, 8);
  // Under the bonnet the air takes up heat, most of it when little flows.
  const under = { idle: chance.between(6, 22), driving: chance.between(2, 9) };
  let learned: readonly [number, number] = [0, 0];
  return stateNames.map((state) => {
    const isCold = state === 'cold idle';
    const coolant = isCold ? engine.site.outside + chance.between(2, 25) : warm;
    const warming = isCold ? 1 : moving.has(state) ? under.driving : under.idle;
    const charge = Math.min(engine.site.outside + warming, isCold ? coolant : coolant - 4);
    const demand = demandOf(state, engine, chance);
    const air = airState(engine, demand, faults, charge);
    const isClosedLoop = steered.has(state);
    const commanded = isCold ? 0.95 : chance.between(0.84, 0.9);
    const of = (bank: 0 | 1): Mixture => {
      if (isClosedLoop) return closedLoop(engine, air, faults, bank);
      // The injectors are shut: nothing but air comes out.
      if (state === 'deceleration') return { trim: learned[bank], lambda: airOnly, seen: airOnly };
      return openLoop(engine, air, faults, bank, commanded, learned[bank]);
    };
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

/** Lambda beyond any scale. */
const airOnly = 10;

export const moving: ReadonlySet<StateName> = new Set([
  'light cruise',
  'cruise',
  'deceleration',
  'wide open throttle',
]);
const steered: ReadonlySet<StateName> = new Set(['warm idle', '2500 rpm no load', 'light cruise', 'cruise']);

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
    case 'cold idle':
      return { kind: 'cold idle', rpm: chance.between(1000, 1400) };
    case 'deceleration':
      return { kind: 'overrun', rpm: chance.between(1500, 2200) };
    case 'wide open throttle':
      return {
        kind: 'full',
        rpm: chance.between(2800, 4500),
        boost: engine.boosted ? chance.between(30000, 90000) : 0,
      };
  }
}

import { type Engine, fillingAt } from './engine.ts';
import { density, orificeFlow, residualShare, speedDensityFlow } from './physics.ts';

/** What disturbs the way of the air. In a sound engine the throttle opens wholly and all else is zero. */
export interface AirFaults {
  /** m² of holes behind the meter and the throttle, discharge included. */
  readonly leak: number;
  /** Share of recirculated gas in the charge that nobody commanded. */
  readonly strayGas: number;
  /** The same, of a valve that vacuum from above the throttle plate opens: shut at idle and with the throttle wide open. */
  readonly strayOffIdle: number;
  /** Share of the filling that a blocked exhaust takes at an air flow of 25 g/s for each litre; grows with the flow. */
  readonly blocked: number;
  /** Share of its area that the throttle opens at full pedal. */
  readonly opens: number;
}

/** Where the driver or the idle control wants the engine. */
export type Demand =
  | { readonly kind: 'idle' }
  | { readonly kind: 'no load'; readonly rpm: number }
  /** Cold, with thick oil; or driven by the car with the throttle shut. */
  | { readonly kind: 'cold idle' | 'overrun'; readonly rpm: number }
  /** Air as a share of what an open throttle would let in at this speed. */
  | { readonly kind: 'load'; readonly rpm: number; readonly share: number; readonly recirculation: number }
  | { readonly kind: 'full'; readonly rpm: number; readonly boost: number };

/** The steady state of the air path. */
export interface AirState {
  readonly rpm: number;
  /** Pa in the manifold. */
  readonly map: number;
  /** Pa in the exhaust before the catalyst, above the barometer. */
  readonly back: number;
  /** kg/s of fresh air into the cylinders, and the part of it that came through the hole. */
  readonly air: number;
  readonly leaked: number;
  /** Share of recirculated gas in the charge, and the part of it that was commanded. */
  readonly gas: number;
  readonly commanded: number;
  /** Share of the throttle's full area that is open. */
  readonly open: number;
  /** Share of the idle valve's air that it still passes: 1 where nothing else lets air in. */
  readonly idleValve: number;
  /** K of the charge in the manifold. */
  readonly charge: number;
}

/** Air for each turn, in shares of what the warm idle needs: thick oil needs more, an engine that the car drives gets what the stop lets through. */
const shares = { idle: 1, 'no load': 0.82, 'cold idle': 1.35, overrun: 0.5 } as const;

/** Pa: what an open intake loses at the greatest flow. */
const intakeLoss = 1800;

/**
 * Finds the manifold pressure at which the engine draws what comes in.
 * At idle the control lets in what friction needs; where a hole lets in more, the speed rises until it is used up.
 */
export function airState(engine: Engine, demand: Demand, faults: AirFaults, charge: number): AirState {
  const { barometer } = engine.site;
  if (demand.kind === 'full') return fullThrottle(engine, demand, faults, charge);
  let rpm = demand.kind === 'idle' ? engine.idleSpeed : demand.rpm;
  const commanded = demand.kind === 'load' ? demand.recirculation : 0;
  const isPorted = demand.kind === 'load' || demand.kind === 'no load';
  const valve = Math.max(commanded, isPorted ? faults.strayOffIdle : 0);
  const gas = valve + faults.strayGas * (demand.kind === 'load' ? 0.5 : 1);
  const need = (speed: number): number => {
    if (demand.kind === 'load') {
      return (
        demand.share *
        speedDensityFlow(fillingAt(engine, speed), barometer, charge, engine.displacement, speed)
      );
    }
    // Friction and pumping need nearly the same air for each turn, a little less of it once the engine turns freely.
    return (shares[demand.kind] * engine.idleAir * engine.displacement * speed) / 1000;
  };
  let air = need(rpm);
  let map = manifoldFor(engine, air, rpm, gas, faults, charge);
  let leaked = orificeFlow(faults.leak, barometer, map, engine.site.outside);
  // With the throttle at its stop some air always passes.
  const least = 0.12 * air;
  if (leaked + least > air) {
    // An idle runs faster until the air is used up; at a speed that is held the throttle only closes to its stop.
    if (demand.kind === 'idle' || demand.kind === 'cold idle') rpm = (rpm * (leaked + least)) / air;
    air = need(rpm);
    map = manifoldFor(engine, air, rpm, gas, faults, charge);
    leaked = Math.min(orificeFlow(faults.leak, barometer, map, engine.site.outside), air - least);
  }
  const throttled = air - leaked;
  const full = orificeFlow(engine.throttleArea, barometer, map, engine.site.outside);
  return {
    rpm,
    map,
    back: backPressure(engine, air, faults),
    air,
    leaked,
    gas,
    commanded,
    open: throttled / full,
    idleValve: Math.max(0, (throttled - least) / (air - least)),
    charge,
  };
}

function fullThrottle(
  engine: Engine,
  { rpm, boost }: Extract<Demand, { kind: 'full' }>,
  faults: AirFaults,
  charge: number,
): AirState {
  const ahead = engine.site.barometer + boost;
  let air = 0;
  let map = ahead;
  // The flow decides the losses and the losses the flow; a few rounds settle it.
  for (let round = 0; round < 40; round++) {
    const most = speedDensityFlow(1, engine.site.barometer, charge, engine.displacement, 6000);
    const exhaust = engine.site.barometer + backPressure(engine, air, { ...faults, blocked: 0 });
    const drawn = (pressure: number): number => cylinderAir(engine, pressure, rpm, 0, exhaust, charge);
    const before = ahead - intakeLoss * Math.min(1, (air / most) ** 2) - 600;
    map = behindThrottle(engine, before, faults.opens, drawn);
    const sound = drawn(map);
    const lost = Math.min(0.9, faults.blocked * (air / (engine.displacement * 1000 * 0.025)));
    air = 0.7 * air + 0.3 * sound * (1 - lost);
  }
  const leaked = orificeFlow(faults.leak, ahead, map, engine.site.outside);
  return {
    rpm,
    map,
    back: backPressure(engine, air, faults),
    air,
    leaked,
    gas: 0,
    commanded: 0,
    open: faults.opens,
    idleValve: 1,
    charge,
  };
}

/** The pressure behind a throttle that opens this share of its area, where the cylinders draw what comes through. */
function behindThrottle(
  { throttleArea, site }: Engine,
  before: number,
  opens: number,
  drawn: (pressure: number) => number,
): number {
  if (opens === 1) return before;
  let [low, high] = [5000, before];
  for (let round = 0; round < 60; round++) {
    const middle = (low + high) / 2;
    if (drawn(middle) < orificeFlow(opens * throttleArea, before, middle, site.outside)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** A sound exhaust has about 20 kPa at 80 g/s for each litre, growing with the square of the flow; 40 kPa at 25 g/s takes a third of the filling. */
function backPressure({ displacement }: Engine, air: number, { blocked }: AirFaults): number {
  const specific = air / (displacement * 1000);
  return (20000 / 0.08 ** 2 + (blocked * 40000) / (0.33 * 0.025 ** 2)) * specific ** 2;
}

function cylinderAir(
  engine: Engine,
  map: number,
  rpm: number,
  gas: number,
  exhaust: number,
  charge: number,
): number {
  const share = Math.max(0.05, residualShare(engine.ratio, exhaust, map));
  return (1 - gas) * speedDensityFlow(fillingAt(engine, rpm) * share, map, charge, engine.displacement, rpm);
}

/** The manifold pressure at which the cylinders draw this much air: it grows with the pressure, so halving finds it. */
function manifoldFor(
  engine: Engine,
  air: number,
  rpm: number,
  gas: number,
  faults: AirFaults,
  charge: number,
): number {
  const exhaust = engine.site.barometer + backPressure(engine, air, faults);
  let [low, high] = [5000, engine.site.barometer];
  for (let round = 0; round < 60; round++) {
    const middle = (low + high) / 2;
    if (cylinderAir(engine, middle, rpm, gas, exhaust, charge) < air) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Filling referred to the manifold's density, a plain number: what a speed-density program has in its table. */
export function tabledFilling(engine: Engine, map: number, rpm: number): number {
  return (
    fillingAt(engine, rpm) * Math.max(0.05, residualShare(engine.ratio, engine.site.barometer * 1.01, map))
  );
}

/** The same computed from a flow. */
export function fillingOf(engine: Engine, air: number, map: number, rpm: number, charge: number): number {
  return (120 * air) / (density(map, charge) * engine.displacement * rpm);
}

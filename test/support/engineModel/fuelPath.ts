import { type AirState, tabledFilling } from './airPath.ts';
import type { Engine } from './engine.ts';
import { speedDensityFlow } from './physics.ts';

/** What makes the mixture other than the program expects. A sound engine has small ones. */
export interface FuelFaults {
  /** Share by which the meter shows too much (negative: too little). */
  readonly meter: number;
  /** Pa by which the manifold sensor shows too much. */
  readonly mapOffset: number;
  /** Share by which each bank's injectors give too much. */
  readonly injectors: readonly [number, number];
  /** Share of the fuel that is missing at an air flow of 25 g/s for each litre; grows with the flow. */
  readonly starved: number;
  /** Share by which the front sensors see lambda too high: a leak in the exhaust before them. */
  readonly sensorBias: number;
}

/** What fuel control comes to at one bank. */
export interface Mixture {
  /** The trim that the program needs for lambda 1 as its sensor sees it, a share. */
  readonly trim: number;
  /** Lambda in the exhaust. */
  readonly lambda: number;
  /** What the front sensor sees. */
  readonly seen: number;
}

/** Trims end here: neither hand of the program goes further. */
const most = 0.35;

/**
 * Closed loop: the trim that brings what the sensor sees to 1; what it cannot bring stays in the exhaust.
 * Metering by air flow misses the air through a hole; metering by manifold pressure counts it, and counts recirculated gas as air.
 */
export function closedLoop(engine: Engine, air: AirState, faults: FuelFaults, bank: 0 | 1): Mixture {
  const untrimmed = lambdaUntrimmed(engine, air, faults, bank);
  const wanted = untrimmed * (1 + faults.sensorBias) - 1;
  const trim = Math.max(-most, Math.min(most, wanted));
  const lambda = untrimmed / (1 + trim);
  return { trim, lambda, seen: lambda * (1 + faults.sensorBias) };
}

/** Open loop with a commanded lambda: the learned trim is carried along. */
export function openLoop(
  engine: Engine,
  air: AirState,
  faults: FuelFaults,
  bank: 0 | 1,
  commanded: number,
  learned: number,
): Mixture {
  const lambda = (commanded * lambdaUntrimmed(engine, air, faults, bank)) / (1 + learned);
  return { trim: learned, lambda, seen: lambda * (1 + faults.sensorBias) };
}

/** Lambda without any trim, when 1 is commanded: the air that is there against the air that was fuelled for. */
function lambdaUntrimmed(engine: Engine, air: AirState, faults: FuelFaults, bank: 0 | 1): number {
  const gain = (1 + faults.injectors[bank]) * (1 - starvedBy(engine, air, faults));
  return air.air / (meteredAir(engine, air, faults) * gain);
}

/** What the program takes the air flow for, kg/s. */
export function meteredAir(engine: Engine, air: AirState, faults: FuelFaults): number {
  if (engine.metering !== 'manifold pressure') return (1 + faults.meter) * (air.air - air.leaked);
  const map = Math.max(5000, air.map + faults.mapOffset);
  const filling = tabledFilling(engine, map, air.rpm);
  const all = speedDensityFlow(filling, map, air.charge, engine.displacement, air.rpm);
  // The program knows the recirculation that it commanded, and none that it did not.
  return (1 + faults.meter) * (1 - air.commanded) * all;
}

function starvedBy({ displacement }: Engine, { air }: AirState, { starved }: FuelFaults): number {
  return Math.min(0.6, starved * (air / (displacement * 1000 * 0.025)));
}

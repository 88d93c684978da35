import { type ExhaustGas, lambdaFromGas } from '../../engine/fuel/lambdaFromGas.ts';
import type { Car } from '../car.ts';
import type { Moment } from '../moments.ts';

/** The gas of a moment, where at least CO2, CO and O2 were read. */
export function gasOf({ values: { co2, co, o2_gas, hc } }: Moment): ExhaustGas | undefined {
  if (co2 === undefined || co === undefined || o2_gas === undefined) return undefined;
  return { co2: co2.si, co: co.si, o2: o2_gas.si, hc: hc?.si ?? 0, nox: 0 };
}

/** Its lambda; of E10 where the header does not say. */
export function lambdaOfGas(moment: Moment, { fuel }: Car): number | undefined {
  const gas = gasOf(moment);
  const lambda = gas === undefined ? undefined : lambdaFromGas(gas, fuel ?? 'E10');
  return typeof lambda === 'number' ? lambda : undefined;
}

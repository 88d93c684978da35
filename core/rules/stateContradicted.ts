import { diagnose } from '../diagnostics/diagnostic.ts';
import type { Car } from './car.ts';
import { failureOf } from './failedValue.ts';
import { type Measured, oddities, writtenAs } from './measured.ts';
import type { ReadingRule } from './rule.ts';

/** A reading that cannot be at the engine state that it stands under. Of one moment the first is told: the state may be what is wrong. */
export const stateContradicted: ReadingRule = {
  code: 'state-contradicted',
  odd: 'against its state',
  checkReading: (one, { car, measured }) => {
    const { reading, limits } = one;
    if (limits.ofState === undefined || !isAgainst(one, car, measured)) return undefined;
    const first = measured.find(
      (each) => each.reading.column === reading.column && isAgainst(each, car, measured),
    );
    if (first !== one) return undefined;
    const { because, next } = limits.ofState;
    const facts = {
      name: one.name,
      written: writtenAs(one),
      state: reading.state?.name ?? '',
      because,
      next,
    };
    return diagnose('state-contradicted', reading.valueSpan, facts);
  },
};

/** Whether a number that can be believed is against its state in an engine like this. */
function isAgainst(one: Measured, car: Car, measured: readonly Measured[]): boolean {
  const { odd, reading, limits } = one;
  if ((odd & oddities['against its state']) === 0 || one.isImpossible) return false;
  if (reading.from !== 'readings' || reading.value.kind !== 'one') return false;
  if (limits.ofState?.throttled === true && !car.hasThrottle) return false;
  return failureOf(one, measured) === undefined;
}

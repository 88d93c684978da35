import { diagnose } from '../diagnostics/diagnostic.ts';
import { failureOf } from './failedValue.ts';
import { writtenAs } from './measured.ts';
import type { ReadingRule } from './rule.ts';

/** A reading that cannot be at the engine state that it stands under. */
export const stateContradicted: ReadingRule = {
  code: 'state-contradicted',
  odd: 'against its state',
  checkReading: (one, { car, measured }) => {
    const { reading, limits } = one;
    const { ofState } = limits;
    if (ofState === undefined || reading.from !== 'readings' || reading.value.kind !== 'one')
      return undefined;
    if (one.isImpossible || failureOf(one, measured) !== undefined) return undefined;
    if (ofState.throttled && !car.hasThrottle) return undefined;
    const { because, next } = ofState;
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

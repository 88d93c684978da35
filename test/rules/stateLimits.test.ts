import { describe, expect, it } from 'vitest';
import { stateLimitOf, stateLimits } from '../../core/rules/stateLimits.ts';
import { isRuled } from '../../core/rules/values.ts';
import { signalOf } from '../../core/signals/lookup.ts';
import { stateOf } from '../../core/signals/states.ts';

describe('what a signal cannot be at an engine state', () => {
  it.each(stateLimits)('$signal ($because) names a signal, one of its forms and known states', (limit) => {
    const { signal, unit, states, least, most } = limit;
    expect(isRuled(signal)).toBe(true);
    expect(signalOf(signal)?.forms.map((form) => form.unit)).toContain(unit);
    expect(states.filter((state) => stateOf(state) === undefined)).toEqual([]);
    expect(least ?? most).toBeDefined();
  });

  it.each(stateLimits)('$signal ($because) is the only limit at its states', (limit) => {
    for (const state of limit.states) expect(stateLimitOf(limit.signal, limit.unit, state)).toBe(limit);
  });
});

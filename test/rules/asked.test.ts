import { describe, expect, it } from 'vitest';
import { kindNames } from '../../core/casefile/kinds/kinds.ts';
import { allRules, caseRules, looksAt } from '../../core/rules/allRules.ts';
import { isRuled, noValues } from '../../core/rules/values.ts';
import { signalOf } from '../../core/signals/lookup.ts';
import { stateOf } from '../../core/signals/states.ts';

describe('who is asked', () => {
  it('has a bit for everything that rules ask for, while there is room for one', () => {
    const looks = kindNames.flatMap((kind) => looksAt(kind).all);
    const bits = new Set([...looks, ...caseRules].map(({ bit }) => bit));
    expect(bits.size).toBeGreaterThan(10);
    expect(bits.size).toBeLessThanOrEqual(32);
    for (const bit of bits) expect(bit & (bit - 1), `${bit}`).toBe(0);
  });

  it('knows the signals and the states that rules name', () => {
    const of = allRules.flatMap((rule) => ('of' in rule ? (rule.of ?? []) : []));
    const at = allRules.flatMap((rule) => ('at' in rule ? (rule.at ?? []) : []));
    expect(of.filter((each) => signalOf(each) === undefined || !isRuled(each))).toEqual([]);
    expect(at.filter((each) => stateOf(each) === undefined)).toEqual([]);
    expect(Object.keys(noValues()).filter((each) => signalOf(each) === undefined)).toEqual([]);
  });

  it('asks every rule that looks at cells in some kind of them', () => {
    const asked = new Set(kindNames.flatMap((kind) => looksAt(kind).all));
    expect(asked.size).toBe(allRules.length - caseRules.length);
  });
});

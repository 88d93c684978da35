import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { ReadCell } from '../../core/casefile/readCase.ts';
import { allRules } from '../../core/rules/allRules.ts';
import { carOf } from '../../core/rules/car.ts';
import { takenIn } from '../../core/rules/moments.ts';
import type { CaseRule, RuledCase } from '../../core/rules/rule.ts';
import { ruledCase } from '../../core/rules/ruledCase.ts';
import { noValues, type RuledSignal } from '../../core/rules/values.ts';
import { study } from '../../core/study/study.ts';
import { faults } from '../support/engineModel/faults.ts';
import { generate } from '../support/engineModel/generate.ts';
import { buildingSeeds } from '../support/engineModel/seeds.ts';

/** Every case of every rule's specification, and cases of generated engines, sound and with each fault. */
const spec = join(import.meta.dirname, 'spec');
const texts = [
  ...readdirSync(spec).flatMap((code) =>
    ['invalid.txt', 'valid.txt'].flatMap((file) =>
      readFileSync(join(spec, code, file), 'utf8')
        .replace(/^.*\^.*\n/gm, '')
        .split(/^=====\n/m),
    ),
  ),
  ...buildingSeeds(40).map((seed) => generate(seed).text),
  ...faults.flatMap(({ name, sizes }) =>
    buildingSeeds(4).map((seed) => generate(seed, { name, size: sizes[0] }).text),
  ),
];

const rules = allRules.filter((rule): rule is CaseRule & { reads: readonly RuledSignal[] } =>
  'check' in rule ? rule.reads !== undefined : false,
);

/** The same case, whose moments tell which of their numbers are looked at, and which has nothing else. */
function watched(text: string, look: (signal: string) => void): RuledCase {
  const { memo, file } = study(text);
  const taken = memo.names.cells.map((facts) => {
    const its = takenIn(facts, () => 0);
    const moments = its.moments.map((moment) => ({
      ...moment,
      values: new Proxy(moment.values, {
        get: (values, name) => {
          look(String(name));
          return Reflect.get(values, name);
        },
        ownKeys: () => {
          throw new Error('All numbers of a moment are walked.');
        },
      }),
    }));
    return { ...its, moments };
  });
  const moments = taken.flatMap((each) => each.moments);
  const read = file.cells.map(
    ({ raw }): ReadCell => ({
      raw,
      tree: undefined,
      diagnostics: [],
      get cell(): never {
        throw new Error('A cell is looked at.');
      },
    }),
  );
  const { ruled } = ruledCase(carOf(memo.header.header), taken, moments, [], [], read, undefined);
  const nothing = (): never => {
    throw new Error('More than numbers is looked at.');
  };
  return { ...ruled, sets: nothing, isRepair: nothing };
}

describe('a rule that says which signals it reads', () => {
  it.each(rules.map((rule) => [rule.code, rule] as const))('%s reads these and nothing else', (_, rule) => {
    const seen = new Set<string>();
    for (const text of texts) rule.check(watched(text, (signal) => seen.add(signal)));
    expect([...seen].filter((each) => !rule.reads.some((signal) => signal === each)).sort()).toEqual([]);
    expect(rule.reads.filter((signal) => !seen.has(signal))).toEqual([]);
    expect((rule.of ?? []).filter((signal) => !rule.reads.includes(signal))).toEqual([]);
  });

  it('names signals that rules compare', () => {
    expect(rules.length).toBeGreaterThan(5);
    for (const { reads } of rules) for (const signal of reads) expect(noValues()).toHaveProperty(signal);
  });
});

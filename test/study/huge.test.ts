import { describe, expect, it } from 'vitest';
import { message } from '../../core/diagnostics/words.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { study } from '../../core/study/study.ts';
import type { Study } from '../../core/study/types.ts';

const lines = (count: number, line: (i: number) => string): string =>
  Array.from({ length: count }, (_, i) => line(i)).join('');

const found = (text: string): readonly string[] =>
  checkCase(text).findings.map(({ diagnostic }) => `${diagnostic.code}: ${message(diagnostic)}`);

describe('cases of thousands of mistakes', () => {
  it('names eight members of a circle of 3000 at each of them', () => {
    const ring = lines(3000, (i) => `  v${i}: v${(i + 1) % 3000} + 1\n`);
    const told = found(`diag: 1\ncase: Ring\n---\ncheck: Ring\nlet:\n${ring}`);
    expect(told.length).toBe(3000);
    expect(told[2999]).toBe(
      'cycle: `v2999` → `v0` → `v1` → `v2` → `v3` → `v4` → `v5` → `v6` → … and 2992 more → `v2999`: these are computed from each other, so none can be computed. Break the circle at one of them.',
    );
  });

  it('names eight of 500 cells that have a name', () => {
    const cells = lines(500, (i) => `---\nreadings: R\nas: r${i}\nvalues:\n  map: 13 inHg\n`);
    const asked = lines(500, (i) => `  - map > ${i} inHg\n`);
    const told = found(`diag: 1\ncase: Many\n${cells}---\ncheck: Many\nexpect:\n${asked}`);
    expect(told.length).toBe(500);
    expect(told[0]).toBe(
      'ambiguous-name: `map` is in several cells. Say which one: r0.map, r1.map, r2.map, r3.map, r4.map, r5.map, r6.map, r7.map … and 492 more.',
    );
  });

  it('tells 3000 names that nothing has, each with what it may have meant, without comparing each with each', () => {
    const known = lines(3000, (i) => `  zeta${i}: 3 V\n`);
    const asked = lines(3000, (i) => `  - r.zetta${i} > 3 V\n`);
    const bare = lines(3000, (i) => `  own${i}: zeeta${i} * 2\n`);
    const started = performance.now();
    const told = found(
      `diag: 1\ncase: Many\n---\nreadings: R\nas: r\nvalues:\n${known}---\ncheck: Many\nexpect:\n${asked}---\ncheck: More\nlet:\n${bare}`,
    ).filter((each) => !each.startsWith('unknown-signal'));
    // Comparing each with each takes half a minute and this two seconds, and the machine may be busy.
    expect(performance.now() - started).toBeLessThan(20_000);
    expect(told.length).toBe(6000);
    expect(told[1321]).toMatch(
      /^unknown-member: `r` has no `zetta1321`, and it is no signal\. Did you mean `zeta1321`.*\? It has zeta0, .* … \(3000 in all\)\.$/,
    );
    expect(told[3000]).toMatch(
      /^unknown-name: .* called `zeeta0`, and it is no signal\. Did you mean `zeta0`/,
    );
  }, 60_000);

  it('reads a value of 200 members and says where one has more', () => {
    const of = (count: number, value: (members: string) => string): readonly string[] =>
      found(
        `diag: 1\ncase: Drops\n---\nreadings: Drops\nas: r\nvalues:\n  drops: ${value(`{${lines(count, (i) => `a${i}: 1 V, `)}}`)}\n`,
      );
    const plain = (members: string): string => members;
    expect(of(200, plain)).toEqual([]);
    const told = [
      'too-many-members: `drops` has 201 members; at most 200 are read. Split it over several cells, or put long data into a capture.',
    ];
    expect(of(201, plain)).toEqual(told);
    expect(of(201, (members) => `{value: ${members}, at: engine bay}`)).toEqual(told);
  });

  const spread = (count: number, checks: string): string =>
    `diag: 1\ncase: Drops\n---\nreadings: Drops\nas: r\nvalues:\n  drops:\n${lines(count, (i) => `    a${i}: ${1000 + i} ± 0.1 mV\n`)}---\ncheck: Shares\nas: s\n${checks}`;

  it('computes 60 members with each other, and refuses 100 at the first place only', () => {
    const checks = 'let:\n  a: mean(r.drops) * r.drops\n  b: a / 2\nexpect:\n  - b > 1 V * 1 mV\n';
    expect(found(spread(60, checks))).toEqual([]);
    const checked = checkCase(spread(100, checks));
    expect(checked.findings.map(({ diagnostic }) => [diagnostic.code, message(diagnostic)])).toEqual([
      [
        'too-many-sources',
        'This would have to keep apart more than 4096 sources of uncertainty, or more than the case has room for. Take fewer members, or leave out the ± of some.',
      ],
    ]);
    expect(checked.expectations[0]?.truth).toMatchObject({
      verdict: 'cannot compute',
      why: 'it would have to keep apart too many sources of uncertainty: take fewer members, or leave out the ± of some',
    });
  });

  it('decides about 200 members with each other', () => {
    const checked = checkCase(spread(200, 'expect:\n  - r.drops within 99.5 mV of mean(r.drops)\n'));
    expect(checked.findings).toEqual([]);
    // a0 is 1000 mV, their mean 1099.5 mV, in which it is a 200th part: √(0.995² + 199 × 0.005²) × 0.1 mV.
    const { truth } = checked.expectations[0] ?? {};
    expect(truth).toMatchObject({ verdict: 'too close to call', member: 'a0' });
    expect(truth?.marginUncertainty).toBeCloseTo(1e-4 * Math.sqrt(0.995 ** 2 + 199 * 0.005 ** 2), 12);
  });

  it('has room for so many of them, and comes to the same after a change as at once', () => {
    const many = (count: number): string =>
      spread(60, `let:\n${lines(count, (i) => `  v${i}: mean(r.drops) * r.drops\n`)}  last: v${count - 1}\n`);
    expect(found(many(130))).toEqual([]);
    const refused = (study: Study): readonly string[] =>
      study.computed.filter(({ value }) => value.kind === 'absent').map((each) => each.name);
    const [few, full] = [study(many(130)), study(many(150))];
    expect(refused(few)).toEqual([]);
    expect(refused(full).length).toBeGreaterThan(10);
    for (const [from, to] of [
      [few, full],
      [full, few],
    ] as const) {
      const changed = study(to.text, from);
      expect(changed.findings).toEqual(to.findings);
      expect(changed.computed.map((each) => each.value)).toEqual(to.computed.map((each) => each.value));
    }
    const edited = full.text.replace('v3: mean(r.drops) * r.drops', 'v3: 1');
    expect(refused(study(edited, full))).toEqual(refused(study(edited)));
  });
});

import { describe, expect, it } from 'vitest';
import { message } from '../../core/diagnostics/diagnostic.ts';
import { checkCase } from '../../core/rules/checkCase.ts';

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
});

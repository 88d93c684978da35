import { describe, expect, it } from 'vitest';
import { checkCase } from '../../core/rules/checkCase.ts';

/** Synthetic readings whose pressures agree with each other; each stands in a cell of its own. */
const sound = `diag: 1
case: Pressures in four cells
engine:
  displacement: 2.4 L
  aspiration: natural
  fuel: E10
site:
  altitude: 35 ft
---
readings: Key on
state: key on engine off
values:
  map: 29.5 inHg
---
readings: Three loads
states:
  idle: warm idle
  fast: 2500 rpm no load
  open: wide open throttle
table: |
  reading  idle  fast  open  unit
  map      12.1  9.8   28.4  inHg
---
readings: Idle again
state: warm idle
values:
  rpm: 780 rpm
  maf: 4.5 g/s
  map: 12.2 inHg
---
readings: Gauge
state: warm idle
values:
  vacuum: 17.4 inHg
`;

const codesOf = (study: ReturnType<typeof checkCase>): readonly (readonly string[])[] =>
  study.cellFindings.map((cell) => cell.map(({ diagnostic }) => diagnostic.code));

describe('what cells are to each other, after one of them changed', () => {
  // What is written, what is written over it, and what then is found in the cells: the header, and the four.
  const changes: readonly [string, string, string, readonly (readonly string[])[]][] = [
    [
      'a barometer changes what other cells are held against',
      'map: 29.5 inHg',
      'map: 25 inHg',
      [[], ['barometer-unfit'], ['above-barometer'], [], ['pressure-and-vacuum']],
    ],
    [
      'a gauge that shows the same number tells on the manifold pressures',
      'vacuum: 17.4 inHg',
      'vacuum: 12.2 inHg',
      [[], [], ['vacuum-for-absolute'], ['vacuum-for-absolute'], ['unusual-value']],
    ],
    [
      'a gauge alone is held against the sound manifold pressures',
      'vacuum: 17.4 inHg',
      'vacuum: 9 inHg',
      [[], [], [], [], ['unusual-value', 'pressure-and-vacuum']],
    ],
    [
      'a column of a table is told of, and no longer compared',
      'map      12.1',
      'map      33.0',
      [[], [], ['unusual-value', 'above-barometer'], [], []],
    ],
    [
      'a manifold pressure of another cell is looked at alone',
      'map: 12.2 inHg',
      'map: 29.3 inHg',
      [[], [], [], ['unusual-value', 'manifold-at-barometer'], []],
    ],
    [
      'an air flow is held against the manifold pressure of its cell',
      'maf: 4.5 g/s',
      'maf: 45 g/s',
      [[], [], [], ['unusual-value', 'filling-unlikely'], []],
    ],
    [
      'the header moves the site for all cells',
      'altitude: 35 ft',
      'altitude: 9000 ft',
      [[], ['barometer-unfit'], [], [], ['unusual-value']],
    ],
  ];
  it.each(changes)('%s', (_, from, to, codes) => {
    const before = checkCase(sound);
    expect(sound).toContain(from);
    const text = sound.replace(from, to);
    const after = checkCase(text, before);
    expect(codesOf(after)).toEqual(codes);
    expect(after.cellFindings).toEqual(checkCase(text).cellFindings);
    expect(checkCase(sound, after).cellFindings).toEqual(before.cellFindings);
  });
});

describe('two looks with two instruments', () => {
  const withBetween = (cell: string): string => `diag: 1
case: Two looks
---
readings: One
tool: gauge
state: warm idle
values:
  fuel_pressure: 300 kPa
---
${cell}
---
readings: Two
tool: scan
state: warm idle
values:
  fuel_pressure: 420 kPa
`;

  it.each([
    ['is made', 'note: Looked at', 'repair: New regulator', []],
    ['is taken back', 'repair: New regulator', 'note: Looked at', ['instruments-differ']],
  ])('are compared anew when a repair between them %s', (_, before, after, found) => {
    const now = checkCase(withBetween(after), checkCase(withBetween(before)));
    expect(codesOf(now)[3]?.filter((code) => code !== 'unknown-tool')).toEqual(found);
  });
});

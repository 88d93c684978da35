import { describe, expect, it } from 'vitest';
import { hover } from '../../core/service/hover.ts';
import type { UnitPreference } from '../../core/service/types.ts';
import { atCursor, words } from './cursor.ts';

const gauge = `readings: Gauge at idle
as: gauged
state: warm idle
values:
  vacuum: {value: 16.4 inHg, tool: gauge, at: brake booster port, saw: steady}
`;
const idle = `readings: Idle
as: idle
state: warm idle
values:
  map: 13.1 ± 0.2 inHg
---
check: Sum
let:
  twice: 2 * idle.map
`;

/** What the hover at `$0` is about, and whether it says each of these. */
function checkHover(source: string, about: string, says: readonly string[], units?: UnitPreference): void {
  const { study, cell, offset } = atCursor(source);
  const found = hover(study, cell, offset, units);
  expect(found === undefined ? undefined : words(study, cell, found.span)).toBe(about);
  for (const each of says) expect(found?.markdown).toContain(each);
}

/** No hover says what it has nothing to say about. */
function checkSilent(source: string): void {
  const { study, cell, offset } = atCursor(source);
  expect(hover(study, cell, offset)).toBeUndefined();
}

describe('hover', () => {
  it('shows a reading in other units, with what is usual in its state and possible at all', () => {
    checkHover(idle.replace('13.1', '13.$01'), '13.1 ± 0.2 inHg', [
      '**`idle.map`** Intake manifold pressure',
      // 13.1 inHg × 3.386388640341 kPa/inHg (NIST SP 811, conventional column at 0 °C) is 44.3617 kPa.
      '13.1 ± 0.2 inHg absolute (44.36 ± 0.68 kPa) at warm idle',
      '*Usual at warm idle:*',
      '*Possible:*',
      '*Data carry:*',
      'SAE J1979',
    ]);
  });

  it('says where and with what a reading was taken', () => {
    checkHover(gauge.replace('16.4', '16$0.4'), '16.4 inHg', [
      '16.4 ± 0.2 inHg vacuum',
      'brake booster port, steady, with gauge',
    ]);
  });

  it('says what an answer in words usually means', () => {
    const source =
      'check: Charging\nlet:\n  said: charging_pattern(14.2 V)\nexpect:\n  - sa$0id is "charging"\n';
    checkHover(source, 'said', ['**`said`** = charging', 'the usual range of conventional charging']);
  });

  it('leaves out the other unit for a reader who has the one that he wants', () => {
    const { study, cell, offset } = atCursor(idle.replace('13.1', '13.$01'));
    expect(hover(study, cell, offset, 'US')?.markdown).not.toContain('kPa)');
    expect(hover(study, cell, offset, 'metric')?.markdown).toContain('(44.36 ± 0.68 kPa)');
  });

  it('shows a signal’s page at its name', () => {
    checkHover(idle.replace('map: 13', 'm$0ap: 13'), 'map', [
      '**`map`** Intake manifold pressure',
      '*Unit:* kPa, absolute',
    ]);
  });

  it('shows a computed name’s value, uncertainty and sources, where it is defined and where it is used', () => {
    // 2 × (13.1 ± 0.2): the half-width doubles with the value (JCGM 100:2008, 5.1.2).
    const says = [
      '**`twice`** = 26.2 ± 0.4 inHg absolute',
      '`2 * idle.map`',
      '- `idle.map` 13.1 ± 0.2 inHg absolute',
    ];
    checkHover(idle.replace('twice:', 'tw$0ice:'), 'twice', says);
    checkHover(`${idle}expect:\n  - tw$0ice > 1 inHg\n`, 'twice', says);
  });

  it('shows what each part of a dotted name stands for', () => {
    const used = `${idle}expect:\n  - idle.map > 1 inHg\n`;
    checkHover(used.replace('- idle', '- i$0dle'), 'idle', [
      '**`idle`** readings: Idle (cell 2)',
      '*Has:* `map`',
    ]);
    checkHover(used.replace('- idle.map', '- idle.m$0ap'), 'map', ['**`idle.map`**', '13.1 ± 0.2 inHg']);
  });

  it('shows all states of a value that was taken at several', () => {
    const several = `readings: Two loads
as: before
states:
  idle: warm idle
  fast: 2500 rpm no load
table: |
  reading   idle   fast   unit
  map       13.1   9.8    inHg
---
check: A
let:
  all: before.map
`;
    checkHover(several.replace('before.map', 'before.m$0ap'), 'map', [
      '`idle` 13.1 inHg absolute',
      '`fast` 9.8 inHg absolute',
    ]);
    checkHover(several.replace('9.8', '9$0.8'), '9.8', ['**`before.fast.map`**', 'at 2500 rpm no load']);
    checkHover(several.replace('fast   unit', 'fa$0st   unit'), 'fast', [
      'stands for the state 2500 rpm no load',
    ]);
  });

  it('shows a function’s page', () => {
    checkHover('check: A\nlet:\n  a: total$0_trim(1 %, 2 %)\n', 'total_trim', [
      'Short and long fuel trim together, as the trade adds them',
      '*Takes:*',
      '*Source:* common practice',
    ]);
  });

  it('shows a number of an expression in the other unit', () => {
    // 1 inHg is 3.386388640341 kPa (NIST SP 811, B.8).
    checkHover('check: A\nexpect:\n  - map > 1 i$0nHg\n', '1 inHg', [
      '**1 inHg** = 3.386 kPa',
      'inch of mercury at 0 °C',
    ]);
  });

  it('shows what an expression comes to at its operators, and how a suspect stands', () => {
    checkHover('check: A\nexpect:\n  - 1 + 2 $0> 5\n', '1 + 2 > 5', [
      '✗ `1 + 2 > 5`',
      '3, 2 below the limit of 5: **fails**.',
    ]);
    checkHover('check: A\nlet:\n  a: 1 $0+ 2\n', '1 + 2', ['**`a`** = 3']);
    checkHover('suspects: A\nconsider:\n  - name: a le$0ak\n    predicts:\n      - 1 > 0\n', 'a leak', [
      '**a leak**: still possible',
      'it predicts `1 > 0`, which holds',
    ]);
  });

  it('shows what a word of the language means, above what the expression comes to', () => {
    checkHover('check: A\nexpect:\n  - 1 bet$0ween 0 and 2\n', '1 between 0 and 2', [
      '**between** holds where a value lies in a range',
      '*Such as* `before.stft_b1 between',
      '✓ `1 between 0 and 2`',
    ]);
  });

  it('shows units, states, kinds, keys and tools', () => {
    const table = 'readings: A\ntable: |\n  reading   value   unit\n  map       13      inHg\n';
    checkHover(table.replace('inHg', 'in$0Hg'), 'inHg', ['inch of mercury at 0 °C', '*Source:*']);
    checkHover(gauge.replace('warm idle', 'warm$0 idle'), 'warm idle', [
      'Idle at operating temperature',
      '*Engine:* running',
    ]);
    checkHover(gauge.replace('readings', 'read$0ings'), 'readings', [
      'values measured at one engine state',
      '`values`',
    ]);
    checkHover(gauge.replace('state:', 'st$0ate:'), 'state', [
      'the engine state it was measured in',
      '*Takes* an engine state',
    ]);
    checkHover(gauge.replace('tool: gauge', 'tool: ga$0uge'), 'gauge', [
      'vacuum gauge',
      '*Accuracy:* ± 0.2 inHg',
    ]);
    checkHover('readings: A\nchart: tri$0ms\nvalues:\n  rpm: 700 rpm\n', 'trims', [
      '**`trims`**',
      '*Takes* under readings or a log its own `stft_b1`',
      'total fuel trim against air flow',
    ]);
    checkHover('readings: A\nwhen: bef$0ore\nvalues:\n  rpm: 700 rpm\n', 'before', [
      'when in the story',
      '`known good`',
    ]);
  });

  it('says why a finding is reported, under what stands there', () => {
    checkHover(idle.replace('13.1 ± 0.2', '101$0'), '101 inHg', [
      '101 inHg absolute',
      '`unit-slip` The right number in the wrong unit',
    ]);
    checkHover('readings: A\nvalues:\n  ma$0pp: 13 inHg\n', 'mapp', ['`unknown-signal`']);
  });

  it('works beside a line that is not finished', () => {
    const typing = 'readings: A\nas: a\nstate: warm idle\nvalues:\n  map: 1$03 inHg\n  re\n  ect: 80 °C\n';
    checkHover(typing, '13 inHg', ['**`a.map`**', 'at warm idle']);
    checkHover('check: A\nlet:\n  a: tot$0al_trim(1 %, \n', 'total_trim', ['Short and long fuel trim']);
  });

  it('has nothing to say about free words', () => {
    checkSilent('note: |\n  Wor$0ds.\n');
    checkSilent('test: Smoke\nfound: Sm$0oke at the gasket.\n');
  });
});

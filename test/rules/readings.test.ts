import { describe, expect, it } from 'vitest';
import { message } from '../../core/diagnostics/words.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { applyEdits } from '../../core/text/edits.ts';
import { annotated, findingsOf } from '../support/annotated.ts';

/** One reading, in a state, with what should be said about it. */
const reading = (lines: string, state = 'warm idle'): void => {
  const source = `diag: 1\ncase: One reading\n---\nreadings: One\nstate: ${state}\nvalues:\n${lines}\n`;
  const { text, marks } = annotated(source);
  expect(findingsOf(text, marks)).toEqual(marks);
};

describe('readings that cannot be', () => {
  it('offers the unit that was meant', () => {
    reading(`  map: 101 inHg
       ^^^^^^^^ unit-slip: \`map\` cannot be 101 inHg (possible: 0 .. 100.4 inHg). The same number fits in another unit: 101 kPa?`);
  });

  it('names the range when no unit helps', () => {
    reading(`  battery: 126 V
           ^^^^^ impossible-value`);
  });

  it('takes a sensor at the end of its scale for failed, unless it is that cold', () => {
    reading(
      `  ect: -40 °C
       ^^^^^^ failed-value`,
      'key on engine off',
    );
    reading('  ect: -40 °C\n  iat: -37 °C', 'cold soak');
  });

  it('says what is usual, as information', () => {
    reading(`  vacuum: 9 inHg
          ^^^^^^ unusual-value: \`vacuum\` at warm idle is usually 17 .. 22 inHg (common practice, petrol engine near sea level); here 9 inHg.`);
  });

  it('takes a manifold pressure with the engine stopped for the barometer that it is', () => {
    reading(
      `  map: 84 inHg
       ^^^^^^^ unit-slip`,
      'key on engine off',
    );
    reading('  map: 84 kPa', 'key on engine off');
  });

  it('asks about the unit when the same number would be usual in the other one', () => {
    const source = 'diag: 1\ncase: Warm\n---\nreadings: One\nstate: warm idle\nvalues:\n  ect: 90 °F\n';
    expect(findingsOf(source)).toEqual([
      expect.stringMatching(
        /^7:8-13 unusual-value: .*The same number in °C would be usual: is the unit right\?$/,
      ),
    ]);
  });

  it('does not where any small number would be usual: a blocked exhaust is no slip', () => {
    const source =
      'diag: 1\ncase: Blocked\n---\nreadings: One\nstate: 2500 rpm no load\nvalues:\n  back_pressure: 7.6 psi\n';
    expect(findingsOf(source)).toEqual([
      expect.stringMatching(/^7:18-25 unusual-value: .*; here 7\.6 psi\.$/),
    ]);
  });

  it('expects less vacuum at altitude', () => {
    const source = (altitude: string) => `diag: 1
case: On the ridge
site:
  altitude: ${altitude}
---
readings: Idle
state: warm idle
values:
  vacuum: 14.6 inHg
`;
    expect(findingsOf(source('5000 ft'))).toEqual([]);
    expect(findingsOf(source('40 ft'), ['9:11-20 unusual-value'])).toEqual(['9:11-20 unusual-value']);
    expect(findingsOf(source('5000 ft').replace('14.6', '9'))[0]).toContain('less 5 inHg for the altitude');
  });

  it('offers no parts in a million for a percentage', () => {
    reading(`  leakdown: 120 %
            ^^^^^ impossible-value`);
  });

  it('compares temperatures after a cold soak', () => {
    reading(
      `  ect: 60 °F
  iat: 62 °F
  eot: 110 °F
       ^^^^^^ cold-soak-apart: After a cold soak \`ect\` and \`iat\` agree at about 61 °F, and \`eot\` says 110 °F. Measure that sensor and its circuit.`,
      'cold soak',
    );
    reading('  ect: 60 °F\n  iat: 62 °F\n  eot: 70 °F', 'cold soak');
    reading('  ect: 60 °F\n  iat: 90 °F\n  eot: 120 °F', 'cold soak');
  });

  it.each([
    ['baro: 29.9 kPa', '29.9 inHg'],
    ['baro: 1013 kPa', '1013 mbar'],
    ['baro: 760 inHg', '760 mmHg'],
  ])('knows what was meant by %s', (line, meant) => {
    const source = `diag: 1\ncase: Barometer\n---\nreadings: One\nstate: key off\nvalues:\n  ${line}\n`;
    expect(findingsOf(source)[0]).toContain(meant);
  });

  it('leaves healthy readings alone', () => {
    reading(
      '  rpm: 720 rpm\n  map: 10.2 inHg\n  vacuum: 19.5 inHg\n  ect: 195 °F\n  stft_b1: 2 %\n  battery: 14.2 V\n  loop: closed',
    );
  });
});

describe('engine states', () => {
  it('are free words, and a slip of the hand is pointed out', () => {
    const source = `
diag: 1
case: States
---
readings: One
state: warm idel
       ^^^^^^^^^ misspelt-state: \`warm idel\` is taken as free words, of which nothing is known to be usual. Did you mean \`warm idle\`?
values:
  rpm: 720 rpm
---
readings: Two
state: after an hour on the beach road
values:
  rpm: 720 rpm
`;
    const { text, marks } = annotated(source);
    expect(findingsOf(text, marks)).toEqual(marks);
  });
});

describe('readings that do not fit their signal', () => {
  it('asks for the unit', () => {
    reading(`  map: 13.1
       ^^^^ missing-unit: \`map\` needs a unit: 13.1 could be anything. Write \`13.1 kPa\` or \`13.1 inHg\`.`);
  });

  it('refuses another dimension', () => {
    reading(`  map: 13.1 °C
       ^^^^^^^ wrong-dimension`);
  });

  it('refuses another kind', () => {
    reading(`  map: 16.4 inHg vacuum
       ^^^^^^^^^^^^^^^^ wrong-kind`);
  });

  it.each([
    ['map: 16.4 inHg vacuum', 'Record it as `vacuum`, or convert it with the barometer.', undefined],
    ['map: 8 psi gauge', 'Record it as `boost`, or convert it with the barometer.', undefined],
    ['vacuum: 34 kPa absolute', 'Record it as `map`, or convert it with the barometer.', undefined],
    ['fuel_pressure: 45 psi absolute', 'Convert it, or record it under the signal that it is.', undefined],
    // Counted from the other side an angle changes its sign.
    ['spark: 12 °ATDC', 'Write `-12 °BTDC`.', 'spark: -12 °BTDC'],
  ])('says what to do with another kind: %s', (line, says, fixed) => {
    const text = `diag: 1\ncase: A case\n---\nreadings: One\nvalues:\n  ${line}\n`;
    const checked = checkCase(text);
    const [finding] = checked.findings.filter(({ diagnostic }) => diagnostic.code === 'wrong-kind');
    if (finding === undefined) return expect.fail('nothing was found');
    expect(message(finding.diagnostic)).toContain(says);
    const [fix] = finding.diagnostic.fixes;
    const cell = checked.file.cells[finding.cell ?? 0]?.raw.text ?? '';
    expect(fix === undefined ? undefined : applyEdits(cell, fix.edits).split('\n')[2]?.trim()).toBe(fixed);
  });

  it.each([
    // 130 kg/h would fit 60 kPa; as a gauge pressure those are 161 kPa, which 130 g/s fit.
    ['turbocharged', []],
    ['natural', ['Write `kg/h`']],
  ])('offers one way out of an air flow that does not fit, of an engine that is %s', (aspiration, titles) => {
    const text = `diag: 1\ncase: A case\nengine:\n  displacement: 2.0 L\n  aspiration: ${aspiration}\n---\nreadings: Full\nstate: wide open throttle\nvalues:\n  rpm: 4000 rpm\n  map: 60 kPa\n  iat: 40 °C\n  maf: 130 g/s\n`;
    const found = checkCase(text).findings.filter(({ diagnostic }) => diagnostic.code === 'filling-unlikely');
    expect(found.map(({ diagnostic }) => diagnostic.fixes.map(({ title }) => title))).toEqual([titles]);
  });

  it('takes the air-flow meter in each of its forms', () => {
    reading('  maf: 3.5 g/s');
    reading('  maf: 1.1 V');
    reading('  maf: 2.1 kHz');
  });

  it('offers the signal that was meant', () => {
    reading(`  mpa: 13.1 inHg
  ^^^ unknown-signal`);
  });
});

import { describe, expect, it } from 'vitest';
import { message } from '../../core/diagnostics/words.ts';
import { checkCase } from '../../core/rules/checkCase.ts';

/*
 * What people type that cannot be: each gets an answer in words at its own place in the case,
 * and the rest of the case is computed all the same.
 */

/** Why `asked` has no value, as its own line and the expectation on it say. */
function why(expression: string, header = ''): string {
  const studied = checkCase(
    `diag: 1\ncase: A case\n${header}---\ncheck: What is asked\nlet:\n  asked: ${expression}\n  sound: 2 + 2\nexpect:\n  - asked > asked\n  - sound > 3\n`,
  );
  const named = (name: string) => studied.computed.find(({ fullName }) => fullName === name)?.value;
  expect(named('sound')).toMatchObject({ kind: 'one', amount: { si: 4 } });
  const [first, second] = studied.expectations;
  expect(second?.truth.verdict).toBe('holds');
  expect(first?.truth.verdict).toBe('cannot compute');
  const asked = named('asked');
  if (asked?.kind !== 'absent') expect.fail(`a value: ${asked?.kind}`);
  expect(first?.truth.why).toBe(asked.why);
  expect(asked.why).toContain(`\`${/^\w+/.exec(expression)?.[0]}\`: `);
  return asked.why;
}

describe('values that cannot be', () => {
  it('a fuel that nobody knows: the nearest names', () => {
    expect(why('stoichiometric_ratio("gasolin")')).toContain('Did you mean gasoline?');
    expect(why('lambda_from_gas(14 %, 1 %, 1 %, 100 ppm)', 'engine:\n  fuel: E1O\n')).toContain(
      'Did you mean E10?',
    );
  });

  it('no CO2 and no CO: no burnt gas was sampled', () => {
    expect(why('lambda_from_gas(0 %, 0 %, 20.9 %, 5 ppm)')).toContain(
      'CO2 and CO are both 0: no burnt gas was sampled. Check the probe, the pump and that the engine fires.',
    );
  });

  it('a negative absolute pressure', () => {
    expect(why('air_density(-3 kPa absolute, 20 °C)')).toContain(
      'An absolute pressure of -3 kPa (-0.8859 inHg) does not exist. A gauge or vacuum reading needs the barometer first.',
    );
  });

  it('an altitude outside the model', () => {
    expect(why('standard_pressure(60000 ft)')).toContain('an altitude of 18288 m (60000 ft) is outside');
    expect(why('station_pressure(30.1 inHg, 25000 ft)')).toContain(
      'computed from -500 m (-1640.4 ft) to 6000 m',
    );
  });

  it('a humidity of more than 100 %', () => {
    expect(why('air_density(101 kPa, 20 °C, 120 %)')).toContain(
      'A relative humidity of 120 % does not exist; it runs from 0 to 100 %.',
    );
  });

  it('a resistance, a voltage, a wire, a tooth that cannot be', () => {
    expect(why('divider_resistance(5.2 V, 5 V, 2.2 kΩ)')).toContain('the circuit is open');
    expect(why('beta_temperature(0 Ω, 3977 K, 10 kΩ)')).toContain('a short');
    expect(why('wire_resistance("18", 3 m)')).toContain('Write it as "18 AWG"');
    expect(why('cam_shift(1)', 'engine:\n  cam drive teeth: 2\n')).toContain('`engine: cam drive teeth`');
  });
});

describe('answers in words', () => {
  const readings = `---
readings: A cylinder
as: it
state: cranking
values:
  compression: {1: 180 psi, 2: 140 ± 6 psi, 3: 181 ± 3 psi, 4: 179 ± 3 psi}
`;
  const studiedWith = (expression: string) =>
    checkCase(`diag: 1\ncase: A case\n${readings}---\ncheck: What is it?\nlet:\n  asked: ${expression}\n`);
  const reason = (expression: string): string => {
    const value = studiedWith(expression).computed[0]?.value;
    return value?.kind === 'absent' ? value.why : `a value: ${value?.kind}`;
  };

  it('take one value; several are refused with the way out', () => {
    const findings = studiedWith('compression_pattern(it.compression, 60 psi, 140 psi, 180 psi)').findings;
    expect(findings.map(({ diagnostic }) => message(diagnostic)).join()).toContain(
      'of several take one, such as `cranked.compression[3]`',
    );
  });

  it('are too close to call where the reading’s uncertainty would change them', () => {
    expect(reason('compression_pattern(it.compression[2], 60 psi, 112 psi, 184 psi)')).toBe(
      '`compression_pattern` is too close to call: with the readings’ uncertainty it may be "seals and breathes" or "leaks"',
    );
  });

  it('compared with one of the words that it may be are too close to call, with any other decided', () => {
    const pattern = 'compression_pattern(it.compression[2], 60 psi, 112 psi, 184 psi)';
    const verdicts = studiedWith(
      `${pattern}\nexpect:\n  - asked is "leaks"\n  - ${pattern} is not "seals and breathes"\n  - asked is "cannot fill"\n  - asked is not "cannot fill"`,
    ).expectations.map(({ truth }) => truth.verdict);
    expect(verdicts).toEqual(['too close to call', 'too close to call', 'fails', 'holds']);
  });

  it('are given where only a pair that cannot be would change them: the best cylinder is its own neighbour', () => {
    const best = 'max(it.compression[3], it.compression[4])';
    for (const cylinder of [3, 4])
      expect(reason(`wet_pattern(it.compression[${cylinder}], 185 psi, ${best})`)).toBe('a value: words');
    expect(reason('puff_pattern(160 psi, 180 psi, 181 ± 3 psi)')).toBe('a value: words');
  });

  it('take the readings’ uncertainties together: neither alone reaches the line, both do', () => {
    expect(reason('compression_pattern(140 ± 3.8 psi, 60 psi, 112 psi, 181 psi)')).toBe('a value: words');
    expect(reason('compression_pattern(140 psi, 60 psi, 112 psi, 181 ± 5 psi)')).toBe('a value: words');
    expect(reason('compression_pattern(140 ± 3.8 psi, 60 psi, 112 psi, 181 ± 5 psi)')).toContain('too close');
  });

  it('say so when a reading is none', () => {
    expect(reason('leakage_pattern(42 %, "tailpip")')).toContain('Did you mean tailpipe?');
    expect(reason('sensor_circuit(2 V, -5 V)')).toContain('hang on a voltage above 0');
  });

  it('compared with what they can never be are told with the nearest', () => {
    const findings = studiedWith('1\nexpect:\n  - charging_pattern(14.2 V) is "chargin"').findings;
    expect(findings.map(({ diagnostic }) => message(diagnostic))).toEqual([
      'It can never be "chargin". Did you mean "charging"? It is one of "not charging", "low, or held low on purpose", "charging", "high, or raised on purpose", "overcharging".',
    ]);
    const [fix] = findings[0]?.diagnostic.fixes ?? [];
    expect(fix?.edits.map(({ newText }) => newText)).toEqual(['"charging"']);
  });

  it('are compared through a name, too, and a signal of words as well', () => {
    const codes = (lets: string) => studiedWith(lets).findings.map(({ diagnostic }) => diagnostic.code);
    expect(codes('leakage_pattern(42 %, "tailpipe")\nexpect:\n  - asked is not "exhaust valves"')).toEqual([
      'never-said',
    ]);
    expect(codes('leakage_pattern(42 %, "tailpipe")\nexpect:\n  - asked is "exhaust valve"')).toEqual([]);
    expect(codes('1\nexpect:\n  - loop is "closd"')).toContain('never-said');
  });

  it('so is the word among several values of an answer', () => {
    const table = `---
readings: Three loads
as: before
states:
  idle: warm idle
  fast: 2500 rpm no load
table: |
  reading   idle   fast   unit
  maf       3.4    11.5   g/s
  stft_b1   +14    +4     %
  ltft_b1   0      0      %
`;
    const found = (word: string) =>
      checkCase(
        `diag: 1\ncase: A case\nengine:\n  metering: air flow\n${table}---\ncheck: What is it?\nlet:\n  said: trim_pattern(before.stft_b1, before.maf)\nexpect:\n  - said.pattern is "${word}"\n`,
      ).findings.flatMap(({ diagnostic }) => (diagnostic.severity === 'error' ? [message(diagnostic)] : []));
    expect(found('same grams')).toEqual([]);
    expect(found('same gramms')).toEqual([expect.stringContaining('Did you mean "same grams"?')]);
  });
});

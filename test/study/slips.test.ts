import { describe, expect, it } from 'vitest';
import { message } from '../../core/diagnostics/words.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { applyEdits } from '../../core/text/edits.ts';

const caseWith = (cell: string): string =>
  `diag: 1\ncase: A van that hunts\nengine:\n  cylinders: 4\n---\n${cell}\n`;
const reading = (line: string): string => caseWith(`readings: Warm idle\nas: idle\nvalues:\n  ${line}`);
const limit = (line: string): string =>
  caseWith(`reference: Maker's figures\nas: spec\nsource: seen on the day\nvalues:\n  ${line}`);
const expectation = (line: string): string =>
  caseWith(
    `test: Smoke into the intake\nas: smoke\ndid: Half a psi of smoke.\nresult: yes\n---\ncheck: Is it tight?\nexpect:\n  - ${line}`,
  );

const errors = (text: string) => {
  const { file, findings } = checkCase(text);
  return findings
    .filter(({ diagnostic }) => diagnostic.severity === 'error')
    .map(({ cell, diagnostic }) => {
      const at = cell === undefined ? 0 : (file.stream.starts[cell] ?? 0);
      const { start, end } = diagnostic.span;
      return {
        says: `${text.slice(at + start, at + end)} | ${diagnostic.code}: ${message(diagnostic)}`,
        mended: diagnostic.fixes.map(({ edits }) =>
          applyEdits(
            text,
            edits.map(({ span, newText }) => ({
              span: { start: span.start + at, end: span.end + at },
              newText,
            })),
          ),
        ),
      };
    });
};

/** One slip is told once, at its place, and the offer (where there is one) puts it right. */
const told = (text: string, says: string, right: string | undefined): void => {
  const found = errors(text);
  expect(found.map((each) => each.says)).toEqual([says]);
  expect(found[0]?.mended[0]).toBe(right);
  if (right !== undefined) expect(errors(right)).toEqual([]);
};

describe('a flow of fuel by mass', () => {
  it('is offered as the volume that the header takes', () => {
    // 24 · 453.59237 g / 60 min / 0.745 kg/L.
    const header = 'diag: 1\ncase: A case\nengine:\n  injector flow: ';
    expect(errors(`${header}24 lb/h\n`)[0]?.mended[0]).toBe(`${header}244 cc/min\n`);
  });
});

describe('a unit that is written for another', () => {
  it('is offered as what it means there', () => {
    told(
      reading('compression: 12.3 kg/cm2'),
      '12.3 kg/cm2 | wrong-dimension: `compression` (Cranking compression, throttle open, the highest reading) is not measured as m^-2·kg (`12.3 kg/cm2`). It takes `kgf/cm²`.',
      reading('compression: 12.3 kgf/cm²'),
    );
  });
});

describe('a computed number beside a quantity', () => {
  const beside = (line: string): string =>
    caseWith(
      `readings: Warm idle\nas: idle\nvalues:\n  battery: 14 V\n  ect: 88 °C\n---\ncheck: A number\nas: own\nlet:\n  limit: 5\nexpect:\n  - ${line}`,
    );

  it('takes its unit by a product, since none can follow a name', () => {
    told(
      beside('idle.battery > limit'),
      'idle.battery > limit | dimensions-differ: `idle.battery` (voltage) and `limit` (plain number) cannot be compared: they measure different things. Write `limit * 1 V`.',
      beside('idle.battery > limit * 1 V'),
    );
  });

  it('is offered none where a product has no meaning', () => {
    told(
      beside('idle.ect > limit'),
      'idle.ect > limit | dimensions-differ: `idle.ect` (temperature) and `limit` (plain number) cannot be compared: they measure different things.',
      undefined,
    );
  });
});

describe('a list where each value has its cylinder', () => {
  it('is offered with the cylinders’ numbers', () => {
    told(
      reading('compression: [181 psi, 178 psi, not taken]'),
      '[181 psi, 178 psi, not taken] | wrong-value-shape: `compression` is written as a list, and it takes a value for each cylinder: `{1: 181 psi, 2: 178 psi, 3: not taken}`.',
      reading('compression: {1: 181 psi, 2: 178 psi, 3: not taken}'),
    );
  });

  it('is none where a signal has one value', () => {
    told(
      reading('battery: [14 V, 13 V]'),
      '[14 V, 13 V] | wrong-value-shape: `battery` is written as a list, and it takes one value with its unit.',
      undefined,
    );
  });
});

describe('a signal while the header cannot be read', () => {
  const withHeader = (title: string): string =>
    `diag: 1\ncase: ${title}\nsignals:\n  play:\n    meaning: play of the pin\n    unit: mm\n---\nreadings: Play\nas: seen\nvalues:\n  play: 3 mm`;
  const says = (study: ReturnType<typeof checkCase>) =>
    study.findings.map(({ diagnostic }) => `${diagnostic.code}: ${message(diagnostic)}`);
  const unread =
    'unknown-signal: `play` is not a signal that is known without the header, which is missing or cannot be read. Put that right first: it may declare the signal.';

  it('may be one that it declares, and is offered no other name', () => {
    const study = checkCase(withHeader('"A pin'));
    expect(says(study)).toContain(unread);
    expect(study.findings.find(({ cell }) => cell === 1)?.diagnostic.fixes).toEqual([]);
  });

  it('is looked up again once it can', () => {
    const broken = checkCase(withHeader('"A pin'));
    expect(says(checkCase(withHeader('A pin'), broken))).toEqual([]);
    expect(says(checkCase(withHeader('"A pin'), checkCase(withHeader('A pin'))))).toContain(unread);
  });
});

describe('a letter for a digit', () => {
  it('is told as what it is, and no unit is offered for it', () => {
    told(
      reading('rpm: 7O0 rpm'),
      'O0 | unknown-unit: `O0` is no unit here. A number is written in digits: is this letter an O for 0, or an l for 1?',
      undefined,
    );
  });
});

describe('a reading is one value', () => {
  it.each([
    [
      'fuel_pressure: 50-55 psi',
      '50-55 psi | range-in-reading: `50-55 psi` is no reading: a reading is one value. Write `52.5 ± 2.5 psi` for a needle that swung, or put the limits in a `reference`.',
      'fuel_pressure: 52.5 ± 2.5 psi',
    ],
    [
      'back_pressure: <1 psi',
      '<1 psi | range-in-reading: `<1 psi` is no reading: a reading is one value. Write the number that was read, or put what limits it in a `reference`.',
      undefined,
    ],
    [
      'back_pressure: 1 psi max',
      '1 psi max | range-in-reading: `1 psi max` is no reading: a reading is one value. Write the number that was read, or put what limits it in a `reference`.',
      undefined,
    ],
  ])('%s', (line, says, right) =>
    told(reading(line), says, right === undefined ? undefined : reading(right)),
  );
});

describe('a limit in other words', () => {
  it.each([
    [
      'back_pressure: 3 psi max',
      '3 psi max | range-in-other-words: `3 psi max` looks like a range. Write `at most 3 psi`.',
      'back_pressure: at most 3 psi',
    ],
    [
      'compression: 142 psi min',
      '142 psi min | range-in-other-words: `142 psi min` looks like a range. Write `at least 142 psi`.',
      'compression: at least 142 psi',
    ],
    [
      'compression: 142 psi or more',
      '142 psi or more | range-in-other-words: `142 psi or more` looks like a range. Write `at least 142 psi`.',
      'compression: at least 142 psi',
    ],
    [
      'vacuum: 17-22 inHg',
      '17-22 inHg | range-in-other-words: `17-22 inHg` looks like a range. Write `17 .. 22 inHg`.',
      'vacuum: 17 .. 22 inHg',
    ],
  ])('%s', (line, says, right) => told(limit(line), says, limit(right)));
});

describe('a unit that the signal means', () => {
  it.each([
    [
      'vacuum: 16.4 in Hg',
      'in Hg | unknown-unit: `in Hg` is no unit here. Did you mean `inHg`?',
      'vacuum: 16.4 inHg',
    ],
    ['map: 13 "Hg', '"Hg | unknown-unit: `"Hg` is no unit here. Did you mean `inHg`?', 'map: 13 inHg'],
    [
      'spark: 10 deg BTDC',
      'deg BTDC | unknown-unit: `deg BTDC` is no unit here. Did you mean `°BTDC`?',
      'spark: 10 °BTDC',
    ],
    [
      'fuel_pressure: 30 lbs',
      'lbs | unknown-unit: `lbs` is no unit here. Did you mean `psi`?',
      'fuel_pressure: 30 psi',
    ],
    [
      'fuel_pressure: 30 lb',
      '30 lb | wrong-dimension: `fuel_pressure` (Fuel pressure at the injectors of a port-injected engine, above the barometer) is not measured as mass (`30 lb`). It takes `psi`.',
      'fuel_pressure: 30 psi',
    ],
    [
      'ect: 195 F',
      '195 F | wrong-dimension: `ect` (Engine coolant temperature) is not measured as capacitance (`195 F`). It takes `°F`.',
      'ect: 195 °F',
    ],
    [
      'iat: 90F',
      '90F | wrong-dimension: `iat` (Intake air temperature) is not measured as capacitance (`90F`). It takes `°F`.',
      'iat: 90 °F',
    ],
    ['iat: 35 C', 'C | unknown-unit: `C` is no unit here. Did you mean `°C`?', 'iat: 35 °C'],
    [
      'iat: 35 degrees',
      'degrees | unknown-unit: `degrees` is no unit here. Did you mean `°C` or `°F`?',
      'iat: 35 °C',
    ],
  ])('%s', (line, says, right) => told(reading(line), says, reading(right)));
});

it('a test’s outcome alone is offered its comparison', () => {
  told(
    expectation('smoke.result'),
    'smoke.result | not-a-statement: This gives a word, not something that holds or fails. Compare it with something: `smoke.result is yes`.',
    expectation('smoke.result is yes'),
  );
});

it('a fuel without its quotes is offered them', () => {
  told(
    expectation('lambda_of(13.2, gasoline) < 1'),
    'gasoline | quote-word: `gasoline` is no name here. As a word, write `"gasoline"`.',
    expectation('lambda_of(13.2, "gasoline") < 1'),
  );
});

it('a word of comparison that is misspelt is told alone', () => {
  told(
    expectation('5 V beetween 4 V and 6 V'),
    'beetween | unexpected-text: `beetween` does not fit here. Did you mean `between`?',
    expectation('5 V between 4 V and 6 V'),
  );
});

describe('a displacement without its unit', () => {
  const engine = (displacement: string): string =>
    `diag: 1\ncase: A van that hunts\nengine:\n  displacement: ${displacement}\n`;
  it.each([
    ['2000', ['2000 cc']],
    // A moped has 2.4 inch³: 39 cc.
    ['2.4', ['2.4 L', '2.4 inch³']],
    ['12', ['12 L', '12 inch³']],
    ['0.05', ['0.05 L']],
    ['350', ['350 cc', '350 inch³']],
    // No engine has it in any unit.
    ['9000000', ['9000000 L', '9000000 cc', '9000000 inch³']],
  ])('of %s is offered what an engine can have', (written, offers) => {
    const [found, ...more] = errors(engine(written));
    expect(more).toEqual([]);
    expect(found?.says).toContain(`${written} | missing-unit: \`displacement\` needs a unit`);
    expect(found?.mended).toEqual(offers.map(engine));
  });
});

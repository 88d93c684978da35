import { describe, expect, it } from 'vitest';
import { codesOf, resultOf } from '../support/study.ts';

describe('a table', () => {
  const table = (rows: string) => `readings: Loads
as: before
states:
  idle: warm idle
  drive: cruise
table: |
  reading   idle   drive   unit
${rows}`;

  it('gives a value a state, and says what was not taken', () => {
    const { values, diagnostics } = resultOf(
      table('  map       10.4   17      inHg\n  iac       24     -       %\n'),
    );
    expect(values['before.idle.map']).toMatchObject({ value: 10.4, unit: 'inHg', kind: 'absolute' });
    expect(values['before.drive.iac']).toEqual({ value: null, status: 'not measured', why: 'not taken' });
    expect(diagnostics).toEqual([]);
  });

  it('pastes from a spreadsheet', () => {
    const { values } = resultOf(
      table('').replace(
        '  reading   idle   drive   unit',
        '  reading\tidle\tdrive\tunit\n  rpm\t700\t2200\trpm',
      ),
    );
    expect(values['before.drive.rpm']).toMatchObject({ value: 2200 });
  });

  it('is one value with a member a state when no state is named', () => {
    const { values, expectations } = resultOf(`${table('  stft_b1   8      1       %\n')}---
check: All of them
as: all
let:
  doubled: before.stft_b1 * 2
expect:
  - before.stft_b1 < 5 %
`);
    expect(values['all.doubled']).toMatchObject({ value: { idle: 16, drive: 2 }, unit: '%' });
    expect(expectations[0]).toMatchObject({ verdict: 'fails', member: 'idle', value: 8 });
  });

  // By hand: 2 % of 14 V are 0.28 V. In a row of percent they are points.
  it.each([
    ['battery   14±2%   -   V', { value: 14, unit: 'V', uncertainty: 0.28 }],
    ['battery   14 +/- 2 %   -   V', { value: 14, unit: 'V', uncertainty: 0.28 }],
    ['battery   14000 mV ± 2 %   -   V', { value: 14000, unit: 'mV', uncertainty: 280 }],
    ['stft_b1   8±2%   -   %', { value: 8, unit: '%', uncertainty: 2 }],
  ])('a share behind ± leaves the unit to its row: %s', (row, value) => {
    const { values, diagnostics } = resultOf(table(`  ${row}\n`));
    expect(diagnostics).toEqual([]);
    expect(values[`before.idle.${row.split(' ')[0]}`]).toMatchObject(value);
  });

  it('a limit has the unit of its row', () => {
    const { values, diagnostics } = resultOf(
      'reference: Manual\nas: manual\ntable: |\n  reading   value         unit\n  rail      at least 38   psi\n  return    at most 4     psi\n  pump      40±5%         psi\n',
    );
    expect(diagnostics).toEqual([]);
    expect(values['manual.rail']).toMatchObject({ value: { from: 38, to: null }, unit: 'psi' });
    expect(values['manual.return']).toMatchObject({ value: { from: null, to: 4 }, unit: 'psi' });
    expect(values['manual.pump']).toMatchObject({ value: 40, unit: 'psi', uncertainty: 2 });
  });

  it('reports an unknown unit once for its row', () => {
    expect(codesOf(resultOf(table('  map       10.4   17      inhg.\n')))).toEqual(['unknown-unit']);
  });

  it('holds one sort of value in a row: the odd one is told, and has no value', () => {
    const result = resultOf(`${table('  maf  3  1.2V  g/s\n')}---
check: Air flow
let:
  doubled: before.maf * 2
expect:
  - before.maf > 1 g/s
`);
    expect(result.diagnostics.map(({ code, message }) => [code, message])).toEqual([
      [
        'wrong-value-shape',
        '`maf` is written as `1.2V`, and it takes the same sort of value as the rest of its row.',
      ],
    ]);
    expect(result.values['before.idle.maf']).toMatchObject({ value: 3, unit: 'g/s' });
    expect(result.values['before.drive.maf']).toMatchObject({ value: null, status: 'cannot compute' });
    expect(result.values.doubled).toMatchObject({ value: { idle: 6, drive: null }, unit: 'g/s' });
    expect(result.expectations[0]).toMatchObject({ verdict: 'cannot compute', member: 'drive' });
  });

  it('reports a column that is no state', () => {
    expect(
      codesOf(resultOf(table('').replace('drive   unit', 'drvie   unit\n  rpm  700  2200  rpm'))),
    ).toEqual(['unknown-state-column']);
  });
});

describe('a table of one state', () => {
  const table = (heading: string, row: string) =>
    resultOf(
      `readings: Compression
as: cranked
state: cranking
table: |
  reading      ${heading}   unit
  compression  ${row}   psi
---
check: Seals
expect:
  - min(cranked.compression) > 150 psi
`,
      'engine:\n  cylinders: 4\n',
    );

  it('may have a column for each cylinder', () => {
    const { values, expectations, diagnostics } = table('1    2    3   4', '181  178  95  179');
    expect(values['cranked.compression']).toMatchObject({ value: { 1: 181, 2: 178, 3: 95, 4: 179 } });
    expect(expectations[0]).toMatchObject({ verdict: 'fails', value: 95 });
    expect(diagnostics.map((each) => each.code)).not.toContain('columns-without-states');
  });

  it('must say what several columns are, and no value of them is used', () => {
    const result = table('before  after', '181     178');
    expect(codesOf(result)).toContain('columns-without-states');
    expect(result.values['cranked.compression']).toMatchObject({ value: null, status: 'cannot compute' });
    expect(result.expectations[0]?.verdict).toBe('cannot compute');
  });

  it('misses a column for a state that is listed', () => {
    const cells =
      'readings: Loads\nas: before\nstates:\n  idle: warm idle\n  drive: cruise\ntable: |\n  reading  idle  unit\n  rpm      700   rpm\n';
    expect(codesOf(resultOf(cells))).toEqual(['state-without-column']);
  });
});

describe('a map by cylinder', () => {
  const cranked = (values: string, check: string) =>
    resultOf(
      `readings: Compression
as: cranked
state: cranking
values:
  compression:
${values}---
check: Balance
as: balance
let:
  low_to_high: lowest_to_highest(cranked.compression)
  weakest: lowest(cranked.compression)
expect:
  - ${check}
`,
      'engine:\n  cylinders: 4\n',
    );

  it('is compared cylinder by cylinder, and the first that fails is named', () => {
    const { expectations, values } = cranked(
      '    1: 181 psi\n    2: 178 psi\n    3: 120 psi\n    4: 179 psi\n',
      'cranked.compression > 140 psi',
    );
    expect(expectations[0]).toMatchObject({ verdict: 'fails', member: '3', value: 120, distance: -20 });
    expect(values['balance.weakest']).toEqual({ value: '3' });
    // 120 / 181 (arithmetic).
    expect(values['balance.low_to_high']).toMatchObject({ value: 66.2983425414, unit: '%' });
  });

  it('knows how many cylinders the engine has', () => {
    expect(codesOf(cranked('    1: 181 psi\n    5: 178 psi\n', 'cranked.compression > 140 psi'))).toContain(
      'unknown-cylinder',
    );
  });
});

describe('the members of a map', () => {
  const map = (line: string) =>
    codesOf(resultOf(`readings: One\nas: one\nstate: cranking\nvalues:\n  ${line}\n`));

  it('are cylinders by their numbers', () => {
    expect(map('compression: {1: 181 psi, cyl 2: 178 psi}')).toEqual(['not-a-cylinder']);
    expect(map('compression: {1: 181 psi, all: 178 psi}')).toEqual(['not-a-cylinder']);
  });

  it('are of one sort', () => {
    expect(codesOf(resultOf('reference: Mixed\nas: mixed\nvalues:\n  limits: {a: 3 V, b: 5 psi}\n'))).toEqual(
      ['wrong-value-shape'],
    );
  });
});

describe('a capture written out', () => {
  const capture = `capture: Warm-up
as: warmup
state: cold start
time: Time (min)
rows: |
  Time (min)   Coolant (°C)
  0            20
  5            60
  10           88
channels:
  ect:
    column: Coolant (°C)
---
`;

  it('is a series with the units of its headings', () => {
    const { values, expectations } = resultOf(`${capture}check: Warm enough
as: warm
let:
  last: last(warmup.ect)
  speed: rate(warmup.ect)
expect:
  - at(warmup.ect, 5 min) within 1 °C of 60 °C
`);
    expect(values['warmup.ect']).toEqual({
      series: { samples: 3, from: 0, to: 600, min: 20, max: 88, mean: 56 },
      unit: '°C',
      kind: 'point',
    });
    expect(values['warm.last']).toMatchObject({ value: 88, unit: '°C' });
    expect(expectations[0]?.verdict).toBe('holds');
  });

  const channel = (rows: string, channels: string, more = '', header = '') =>
    resultOf(
      `capture: Trace\nas: trace\nstate: warm idle\n${more}rows: |\n${rows}channels:\n${channels}`,
      header,
    );
  const rows = '  time  front\n  0     0.1\n  1     0.8\n';

  it.each([
    ['    unit: inhg\n', ['unknown-unit']],
    ['    unit: kPa gauge\n    signal: map\n', ['wrong-kind']],
    ['    unit: V\n    signal: vacuum\n', ['wrong-dimension']],
    ['    unit: V\n    signal: o2_b1s9\n', ['unknown-signal']],
    ['    unit: V\n    signal: o2_b1s1\n', []],
  ])('reads the unit as what its signal takes: %s', (lines, codes) => {
    expect(codesOf(channel(rows, `  front:\n${lines}`))).toEqual(codes);
  });

  it('refuses a time that runs backwards, at its row', () => {
    const result = channel(`${rows}  0.5   0.2\n`, '  front:\n    unit: V\n');
    expect(codesOf(result)).toEqual(['time-runs-back']);
    expect(result.values['trace.front']).toMatchObject({ value: null, status: 'cannot compute' });
  });

  it('leaves out a row without its time, at which it is told', () => {
    const result = channel(`${rows}  -   0.2\n  later   0.3\n`, '  front:\n    unit: V\n');
    expect(codesOf(result)).toEqual(['wrong-value-shape', 'quantity-expected']);
    expect(result.diagnostics[0]?.message).toBe(
      '`time` is written as `-`, and it takes the moment at which the row was taken; without it the row is left out.',
    );
    const whole = channel(rows, '  front:\n    unit: V\n');
    expect(result.values['trace.front']).toEqual(whole.values['trace.front']);
  });

  it('sees a time that runs backwards over a row without one', () => {
    const result = channel(`${rows}  -   0.2\n  0.5   0.2\n`, '  front:\n    unit: V\n');
    expect(codesOf(result)).toEqual(['wrong-value-shape', 'time-runs-back']);
  });

  it('takes its tool’s accuracy as one source', () => {
    const header = 'tools:\n  meter:\n    description: meter\n    accuracy: 0.02 V\n';
    const cells = `capture: Trace\nas: trace\nstate: warm idle\ntool: meter\nrows: |\n${rows}channels:\n  front:\n    unit: V\n---\ncheck: Swing\nas: swing\nlet:\n  last: last(trace.front)\n  up: last(trace.front) - first(trace.front)\n`;
    const { values } = resultOf(cells, header);
    expect(values['swing.last']).toMatchObject({ value: 0.8, uncertainty: 0.02 });
    expect(values['swing.up']).toMatchObject({ value: 0.7, uncertainty: 0 });
  });

  it('a sample’s own ± goes before its tool’s accuracy, and through its scale', () => {
    const header = 'tools:\n  meter:\n    description: meter\n    accuracy: 0.02 V\n';
    const lines = (more: string) =>
      `capture: Trace\nas: trace\nstate: warm idle\n${more}rows: |\n  time  front\n  0     0.1\n  -     0.2\n  1     800±50mV\nchannels:\n  front:\n    unit: V\n`;
    const check =
      '---\ncheck: Swing\nas: swing\nlet:\n  last: last(trace.front)\n  first: first(trace.front)\n  up: last(trace.front) - first(trace.front)\n';
    const { values } = resultOf(lines('tool: meter\n') + check, header);
    expect(values['swing.last']).toMatchObject({ value: 0.8, uncertainty: 0.05 });
    expect(values['swing.first']).toMatchObject({ value: 0.1, uncertainty: 0.02 });
    // One source: what is common to both samples cancels.
    expect(values['swing.up']).toMatchObject({ value: 0.7, uncertainty: 0.03 });
    const scaled = resultOf(`${lines('')}    scale: 100 A/V\n${check}`);
    expect(scaled.values['swing.last']).toMatchObject({ value: 80, unit: 'A', uncertainty: 5 });
    expect(scaled.values['swing.first']).toMatchObject({ value: 10, unit: 'A', uncertainty: 0 });
  });

  // By hand: 0.02 V × 100 A/V, whatever is added; 0.5 % of 80 A; a tool of another thing says nothing.
  it.each([
    ['0.02 V', '0 A', 2],
    ['0.02 V', '2 A', 2],
    ['0.5 %', '0 A', 0.4],
    ['1 A', '0 A', 1],
    ['3 Hz', '0 A', 0],
  ])('a tool’s %s on a probe’s volts, with an offset of %s, is ± %d A', (accuracy, offset, uncertainty) => {
    const header = `tools:\n  scope:\n    description: scope\n    accuracy: ${accuracy}\n`;
    const probe = `    unit: V\n    scale: 100 A/V\n    offset: ${offset}\n`;
    const cells = `capture: Trace\nas: trace\nstate: warm idle\ntool: scope\nrows: |\n${rows}channels:\n  front:\n${probe}---\ncheck: Last\nas: of\nlet:\n  last: last(trace.front)\n`;
    expect(resultOf(cells, header).values['of.last']).toMatchObject({ unit: 'A', uncertainty });
  });

  it('asks for a column that is there', () => {
    const misspelt = capture.replace('column: Coolant (°C)', 'column: Coolnat (°C)').replace('---\n', '');
    expect(codesOf(resultOf(misspelt))).toEqual(['unknown-column']);
  });
});

describe('tests done by hand', () => {
  it('are evidence by their outcome', () => {
    const { expectations } = resultOf(`test: Smoke
as: smoke
found: Smoke at the gasket.
result: yes
---
suspects: Lean
consider:
  - name: a leak
    predicts:
      - smoke.result is yes
      - smoke.result is not unclear
`);
    expect(expectations.map((each) => each.verdict)).toEqual(['holds', 'holds']);
  });
});

describe('a test that is not decided', () => {
  const standing = (test: string, statement: string) => {
    const { suspects, expectations, next } = resultOf(`test: Smoke
as: smoke
${test}---
suspects: Lean
consider:
  - name: a leak
    ${statement}
`);
    return [suspects[0]?.standing, expectations[0]?.verdict, next];
  };

  it.each([
    ['result: unclear\n', 'predicts: smoke.result is yes', 'too close to call', undefined],
    ['result: unclear\n', 'ruled out if: smoke.result is no', 'too close to call', undefined],
    ['did: Not yet.\n', 'predicts: smoke.result is yes', 'not measured', undefined],
  ])('%s with %s speaks neither for nor against', (test, statement, verdict, next) => {
    expect(standing(test, statement)).toEqual(['not tested', verdict, next]);
  });

  it('is told apart from one that is', () => {
    expect(standing('result: unclear\n', 'predicts: smoke.result is unclear')).toEqual([
      'still possible',
      'holds',
      undefined,
    ]);
    expect(standing('result: no\n', 'predicts: smoke.result is yes')).toEqual([
      'ruled out',
      'fails',
      undefined,
    ]);
  });
});

describe('what to measure next', () => {
  const next = (suspects: string) =>
    resultOf(`readings: Idle\nas: idle\nstate: warm idle\nvalues:\n  rpm: 700 rpm\n---\n${suspects}`).next;
  const suspect = (name: string, predicts: string) => `  - name: ${name}\n    predicts: ${predicts}\n`;

  it('is what separates suspects of one list', () => {
    const leak = suspect('a leak', 'idle.ltft_b1 > 10 %');
    expect(next(`suspects: Lean\nconsider:\n${leak}${suspect('weak fuel', 'idle.ltft_b1 < 10 %')}`)).toBe(
      'idle.ltft_b1',
    );
    expect(next(`suspects: Lean\nconsider:\n${leak}`)).toBeUndefined();
    expect(
      next(`suspects: Lean\nconsider:\n${leak}${suspect('another leak', 'idle.ltft_b1 > 10 %')}`),
    ).toBeUndefined();
    expect(
      next(
        `suspects: Lean\nconsider:\n${leak}---\nsuspects: Rough\nconsider:\n${suspect('a plug', 'idle.map > 5 inHg')}`,
      ),
    ).toBeUndefined();
  });
});

describe('values of cells without a name', () => {
  it('are kept apart by the number of the cell', () => {
    const reading = (map: string) => `readings: One\nstate: warm idle\nvalues:\n  map: ${map}\n`;
    const { values } = resultOf(`${reading('13 inHg')}---\n${reading('14 inHg')}`);
    expect(values['2.map']).toMatchObject({ value: 13 });
    expect(values['3.map']).toMatchObject({ value: 14 });
    expect(resultOf(reading('13 inHg')).values.map).toMatchObject({ value: 13 });
  });
});

describe('a check that is meant to show the fault', () => {
  const check = (limit: string) =>
    codesOf(resultOf(`check: Trim\nshows: fault\nexpect:\n  - 25 % between -${limit} and ${limit}\n`));

  it('warns when everything holds', () => {
    expect(check('30 %')).toEqual(['fault-not-shown']);
    expect(check('10 %')).toEqual([]);
  });
});

describe('the header', () => {
  it('gives functions what they lack', () => {
    const cell = `check: Load\nas: load\nlet:\n  share: absolute_load(3.5 g/s, 750 rpm)\n`;
    // SAE J1979 LOAD_ABS with 3.5 g/s, 750 rpm, four cylinders, 2.0 L: 23.649 % (arithmetic from the definition).
    const { value } =
      resultOf(cell, 'engine:\n  displacement: 2.0 L\n  cylinders: 4\n').values['load.share'] ?? {};
    expect(value).toBeCloseTo(23.649, 3);
    expect(resultOf(cell).values['load.share']).toMatchObject({ value: null, status: 'cannot compute' });
  });

  it('takes own signals, and keeps the known ones', () => {
    const own = 'signals:\n  sump:\n    meaning: oil in the sump\n    unit: °C\n    kind: point\n';
    const reading = 'readings: Oil\nstate: road test\nvalues:\n  sump: 95 °C\n';
    expect(codesOf(resultOf(reading, own))).toEqual([]);
    expect(codesOf(resultOf(reading))).toEqual(['unknown-signal']);
    expect(codesOf(resultOf(reading, own.replace('sump:', 'map:')))).toContain('shadowed-name');
  });

  it('takes a temperature of an own signal for a point on its scale, its possible range too', () => {
    const own =
      'signals:\n  sump:\n    meaning: oil in the sump\n    unit: °C\n    possible: -40 .. 150 °C\n';
    const reading = (value: string) =>
      `readings: Oil\nas: oil\nstate: road test\nvalues:\n  sump: ${value}\n`;
    expect(codesOf(resultOf(reading('95 °C'), own))).toEqual([]);
    expect(codesOf(resultOf(reading('400 °C'), own))).toEqual(['impossible-value']);
  });

  it.each([
    ['unit: furlong', ['unknown-unit']],
    ['unit: mm\n    possible: banana', ['quantity-expected']],
    ['unit: mm\n    possible: 3 V .. 5 V', ['wrong-dimension']],
    ['unit: mm\n    possible: 3 .. 5', ['missing-unit']],
    ['unit: mm\n    possible: 3 mm', ['wrong-value-shape']],
    ['unit: mm\n    kind: gauge', ['wrong-value-shape']],
    ['unit: mm\n    possible: 1 mm .. 5 mm', []],
  ])(
    'says once what is wrong with an own signal, and takes its readings all the same: %j',
    (words, codes) => {
      const own = `signals:\n  play:\n    meaning: play of the pin\n    ${words}\n`;
      const result = resultOf(
        'reference: Limit\nas: limit\nvalues:\n  play: at most 4 mm\n---\nreadings: Play\nas: seen\nvalues:\n  play: 3 mm\n---\ncheck: Play\nexpect:\n  - seen.play in limit.play\n',
        own,
      );
      expect(codesOf(result)).toEqual(codes);
      expect(result.expectations[0]?.verdict).toBe('holds');
    },
  );

  it.each([
    ['5', '`5` is no unit here.'],
    ['"5 V"', '`5 V` is no unit here. Did you mean `V`?'],
    ['V 5', '`V 5` is no unit here. Did you mean `V`?'],
    ['V or A', '`V or A` is no unit here.'],
    ['"1"', undefined],
    ['kPa gauge', undefined],
  ])(
    'says of a unit that is none what it is, and nothing of a number that nobody wrote: %s',
    (unit, says) => {
      const own = `signals:\n  x1:\n    meaning: x\n    unit: ${unit}\n`;
      const told = resultOf('note: x\n', own).diagnostics.map(({ message }) => message);
      expect(told).toEqual(says === undefined ? [] : [says]);
    },
  );

  it('says of an own signal’s kind what may stand beside its unit', () => {
    const own = (unit: string, kind: string) =>
      `signals:\n  x1:\n    meaning: x\n    unit: ${unit}\n    kind: ${kind}\n`;
    const says = (unit: string, kind: string) =>
      resultOf('note: x\n', own(unit, kind)).diagnostics.map(({ message }) => message);
    expect(says('°C', 'vacuum')).toEqual([
      '`kind` is written as `vacuum`, and it takes `point` or `difference` beside `°C`.',
    ]);
    expect(says('V', 'difference')).toEqual([
      '`kind` is written as `difference`, and it takes nothing beside `V`.',
    ]);
    for (const [unit, kind] of [
      ['kPa', 'vacuum'],
      ['°C', 'difference'],
      ['°CA', 'btdc'],
    ] as const)
      expect(says(unit, kind)).toEqual([]);
  });

  it('tells once what is wrong with both ends of a range', () => {
    const limit = (words: string) => `reference: Limit\nas: limit\nvalues:\n  vacuum: ${words}\n`;
    expect(codesOf(resultOf(limit('3 V .. 5 V')))).toEqual(['wrong-dimension']);
    expect(codesOf(resultOf(limit('3 .. 5')))).toEqual(['missing-unit']);
  });

  it('turns a tool’s percentage into a share of the reading', () => {
    const header = 'tools:\n  meter:\n    description: gas analyser\n    accuracy: 5 %\n';
    const { values } = resultOf(
      'readings: Gas\nas: gas\nstate: warm idle\ntool: meter\nvalues:\n  battery: 14 V\n',
      header,
    );
    expect(values['gas.battery']).toMatchObject({ value: 14, uncertainty: 0.7 });
  });
});

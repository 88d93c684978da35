import { describe, expect, it } from 'vitest';
import { checkCase } from '../../core/rules/checkCase.ts';
import { annotated, findingsOf } from '../support/annotated.ts';
import { resultOf } from '../support/study.ts';

/** A cell of readings with these lines as its recorded answers. */
const cell = (lines: string, more = ''): string =>
  `readings: Idle\nas: idle\nstate: warm idle\n${more}obd: |\n${lines
    .split('\n')
    .map((line) => `  ${line}\n`)
    .join('')}`;

describe('recorded answers in a cell', () => {
  it('are readings with their units, and half a step for their ±', () => {
    const { values, diagnostics } = resultOf(
      cell('41 0C 0B B8\n41 0B 2C\n41 05 7B\n41 06 90\n41 03 02 00\n41 32 FF FC\n41 0E 98'),
    );
    expect(values['idle.rpm']).toEqual({ value: 750, unit: 'rpm', uncertainty: 0.125 });
    expect(values['idle.map']).toEqual({ value: 44, unit: 'kPa', kind: 'absolute', uncertainty: 0.5 });
    expect(values['idle.ect']).toEqual({ value: 83, unit: '°C', kind: 'point', uncertainty: 0.5 });
    expect(values['idle.stft_b1']).toEqual({ value: 12.5, unit: '%', uncertainty: 0.390625 });
    expect(values['idle.tank_pressure']).toEqual({
      value: -1,
      unit: 'Pa',
      kind: 'gauge',
      uncertainty: 0.125,
    });
    expect(values['idle.spark']).toMatchObject({ value: 12, unit: '°BTDC', uncertainty: 0.25 });
    expect(values['idle.loop']).toEqual({ value: 'closed' });
    expect(values['idle.loop_b2']).toEqual({ value: null, status: 'not measured', why: 'no reading' });
    expect(diagnostics.filter(({ severity }) => severity !== 'info')).toEqual([]);
  });

  it('are computed with, and carry their step into what follows', () => {
    const { values, expectations } = resultOf(
      `${cell('41 0B 2C\n41 33 65\n41 04 80')}---
check: Vacuum
as: depth
let:
  vacuum_seen: idle.baro - idle.map
  nothing: idle.map - idle.map
expect:
  - vacuum_seen between 50 kPa and 60 kPa
  - idle.map < 44.2 kPa
`,
    );
    // 101 − 44, each ± 0.5, independent.
    expect(values['depth.vacuum_seen']).toMatchObject({
      value: 57,
      uncertainty: Number(Math.SQRT1_2.toPrecision(12)),
    });
    expect(values['depth.nothing']).toMatchObject({ value: 0, uncertainty: 0 });
    expect(expectations.map(({ verdict }) => verdict)).toEqual(['holds', 'too close to call']);
  });

  it('carry the accuracy of the instrument beside the step', () => {
    const { values } = resultOf(cell('41 05 7B', 'tool: scan\n'), 'tools:\n  scan: {accuracy: 1.2 °C}\n');
    expect(values['idle.ect']).toMatchObject({ value: 83, uncertainty: 1.3 });
  });

  it('are read from one line, from a list, and from folded lines alike', () => {
    for (const written of [
      'obd: 41 0C 0B B8',
      'obd:\n  - 41 05 7B\n  - 41 0C 0B B8',
      'obd: [41 05 7B, 41 0C 0B B8]',
      'obd: "41 0C 0B B8"',
      'obd: >\n  41 05 7B\n  41 0C 0B B8',
      'obd: 41 05 7B\n  41 0C 0B B8',
      'obd: "41 05 7B\n  41 0C 0B B8"',
      'obd: |\n  7E8 10 08 41 0C 0B B8 0D 32\n  7E8 21 05 7B',
    ]) {
      const { values, diagnostics } = resultOf(`readings: Idle\nas: idle\n${written}\n`);
      expect(values['idle.rpm'], written).toMatchObject({ value: 750 });
      expect(diagnostics, written).toEqual([]);
    }
  });

  it('give misfires by cylinder and exhaust temperatures by place', () => {
    const { values } = resultOf(
      cell('46 A2 0C 24 00 05 00 00 FF FF A4 0C 24 00 00 00 00 FF FF\n41 78 03 0F A0 07 D0 00 00 00 00'),
    );
    expect(values['idle.misfires']).toEqual({
      value: { 1: 5, 3: 0 },
      unit: '1',
      uncertainty: { 1: 0, 3: 0 },
    });
    expect(values['idle.egt']).toMatchObject({
      value: { 'bank 1 sensor 1': 360, 'bank 1 sensor 2': 160 },
      unit: '°C',
    });
  });

  it('say which monitors are ready', () => {
    const { values } = resultOf(cell('7E8 06 41 01 81 07 65 04'));
    expect(values['idle.mil']).toEqual({ value: 'on' });
    expect(values['idle.dtc_count']).toEqual({ value: 1, unit: '1', uncertainty: 0 });
    expect(values['idle.evap_monitor']).toEqual({ value: 'incomplete' });
    expect(values['idle.air_monitor']).toEqual({ value: null, status: 'not measured', why: 'not supported' });
    expect(values['idle.monitors_left']).toMatchObject({ value: 1 });
  });

  it('are no slip of the unit, and within what they carry, whatever they say', () => {
    const codes = (lines: string) => resultOf(cell(lines)).diagnostics.map(({ code }) => code);
    // 300 kPa over a full scale of 400 kPa; −40 °C is an open circuit, told as such.
    expect(codes('41 4F 00 00 00 28\n41 0B BF')).not.toContain('beyond-sensor');
    expect(codes('41 05 00')).toEqual(['failed-value']);
    expect(codes('41 42 FF 00')).toEqual(['impossible-value']);
  });
});

describe('what is told about recorded answers', () => {
  it.each([
    [
      'at its place in the cell',
      `
diag: 1
case: A case
---
readings: Idle
obd: |
  41 05 7B
  41 0C 1A F
           ^ obd-odd-length: \`F\` has 1 digit, and a byte is two. A digit is missing or one too many; copy the line again.
  41 OC 1A F8
     ^^ obd-not-hex: \`OC\` is no hexadecimal number: only 0 to 9 and A to F stand in one. Look whether a letter was taken for a digit, such as O for 0 or l for 1; a remark goes behind \` #\`.
  SEARCHING...
  ^^^^^^^^^^^^ obd-noise: One line holds no data and is passed over: \`SEARCHING...\`.
  7E8 10 14 49 02 01 31 31 31
      ^^^^^^^^^^^^^^^^^^^^^^^ obd-unfinished: The message of 7E8 announces 20 bytes and stops after 6. Copy the lines that follow, or record it again: an interface without flow control gets only the first frame.
`,
    ],
    [
      'in a list',
      `
diag: 1
case: A case
---
readings: Idle
obd:
  - 41 05 7B
  - 41 0C 1A
       ^^^^^ obd-short-answer: Engine speed (0C): 2 bytes are due, and only 1 is here. Copy the whole line, or record it again.
`,
    ],
    [
      'when controllers differ, and not when they agree or count for themselves',
      `
diag: 1
case: A case
---
readings: Idle
obd: |
  7E9 03 41 05 3C
  7E8 03 41 05 7B
               ^^ obd-controllers-differ: \`ect\` is 83.0 ± 0.5 °C from 7E8, and 20.0 ± 0.5 °C from 7E9. The value of 7E8 is taken. Find out which module measures and which one is told.
  7E8 03 41 0D 32
  7E9 03 41 0D 33
  # An engine that idles turns a little faster a moment later.
  7E8 04 41 0C 0B B8
  7E9 04 41 0C 0B C0
  7E8 06 41 01 00 07 65 00
  7E9 06 41 01 00 04 00 00
`,
    ],
    [
      'when a value was answered several times',
      `
diag: 1
case: A case
---
readings: Idle
obd: |
  41 0C 0B B8
  41 0C 0C 80
  41 0C 0C 1C
        ^^^^^ obd-answered-often: \`rpm\` was answered 3 times, from 750.00 ± 0.13 rpm to 800.00 ± 0.13 rpm. The last one counts: 775.00 ± 0.13 rpm. A value over time belongs in a capture.
  41 05 7B
  41 05 7B
`,
    ],
    [
      'when a typed value is another',
      `
diag: 1
case: A case
---
readings: Idle
values:
  map: 34 kPa
  rpm: 750 rpm
  ect: 181 °F
  battery: 14.1 V
obd: |
  41 0B 2C
        ^^ obd-typed-differs: \`map\` is typed as 34 kPa absolute, and the bytes give 44 kPa absolute. The typed value counts; put right the one that is a slip.
  41 0C 0B B8
  41 05 7B
  41 42 37 28
`,
    ],
    [
      'when a freeze frame stands among current data',
      `
diag: 1
case: A case
---
readings: Idle
obd: |
  41 0C 0B B8
  42 05 00 7B
     ^^^^^^^^ obd-freeze-frame: This answer is of service 02, a freeze frame, and the cell does not say so. It is left out; put it in a cell with \`when: freeze frame\`.
---
readings: When the code was stored
when: freeze frame
obd: |
  42 0C 00 1A F8
  41 05 7B
     ^^^^^ obd-freeze-frame: The cell says \`when: freeze frame\`, and this answer is of service 01, current data. It is left out; put it in a cell of its own.
---
readings: Two frames
when: freeze frame
obd: |
  42 05 00 7B
  42 05 01 50
     ^^^^^^^^ obd-freeze-frame: This answer is of freeze frame 1, another moment than frame 0 above. It is left out; put it in a cell of its own.
`,
    ],
    [
      'when the cell has several states',
      `
diag: 1
case: A case
---
readings: Two loads
as: loads
states:
  idle: warm idle
  drive: cruise
obd: 41 0B 2C
^^^ obd-several-states: The cell has 2 states, and nothing says in which of them this was recorded. Give each state a cell of its own with \`state\` and \`obd\`.
`,
    ],
    [
      'when the vehicle gives other codes than the header lists',
      `
diag: 1
case: A case
codes:
  - P0171
  - {code: P0507, status: pending}
           ^^^^^ obd-code-not-stored: The header lists P0507, and the recorded answers with codes do not have it. Was it cleared before, or read from another module?
  - {code: P0420, status: permanent}
---
readings: Codes
obd: |
  7E8 06 43 02 01 71 03 00
                     ^^^^^ obd-code-not-listed: The controller gives P0300 as stored, and the header’s \`codes\` do not list it. Add \`- {code: P0300, status: stored}\`.
  7E8 02 47 00
---
readings: Codes again
when: after
obd: 7E8 04 43 01 01 74
`,
    ],
  ])('%s', (_, source) => {
    const { text, marks } = annotated(source);
    expect(findingsOf(text, marks)).toEqual(marks);
  });
});

describe('a freeze frame', () => {
  it('is the reading of a cell that says so, with the code that stored it', () => {
    const { values, diagnostics } = resultOf(
      'readings: When the code was stored\nas: frozen\nwhen: freeze frame\nobd: |\n  7E8 05 42 02 00 01 71\n  7E8 05 42 0C 00 1A F8\n  7E8 04 42 05 00 7B\n',
    );
    expect(values['frozen.freeze_dtc']).toEqual({ value: 'P0171' });
    expect(values['frozen.rpm']).toMatchObject({ value: 1726 });
    expect(values['frozen.ect']).toMatchObject({ value: 83 });
    expect(diagnostics).toEqual([]);
  });
});

it('names no code where no freeze frame is stored: 00 00 (SAE J2012)', () => {
  const { values } = resultOf('readings: None\nas: none\nwhen: freeze frame\nobd: 42 02 00 00 00\n');
  expect(values['none.freeze_dtc']).toEqual({ value: 'none' });
});

describe('a case that is studied again', () => {
  it('comes to the same as one that is studied anew', () => {
    const head = 'diag: 1\ncase: A case\ncodes:\n  - P0171\n---\n';
    const one = `${head}${cell('41 0C 0B B8\n41 0B 2C\n43 01 71 00 00 00 00')}`;
    const two = one.replace('0B B8', '1A F8');
    const again = checkCase(two, checkCase(one));
    const anew = checkCase(two);
    expect(again.findings).toEqual(anew.findings);
    expect(again.readings).toEqual(anew.readings);
  });
});

describe('hostile cells', () => {
  it('are read in time: a text of the longest length', () => {
    const start = performance.now();
    const lines = '  41 0C 1A F8\n'.repeat(18_000);
    const { values } = resultOf(`readings: Long\nas: long\nobd: |\n${lines}`);
    expect(values['long.rpm']).toMatchObject({ value: 1726 });
    expect(performance.now() - start).toBeLessThan(5000);
  });

  it('say what is no text where it stands', () => {
    const { diagnostics } = resultOf('readings: Odd\nobd: {a: 1}\n');
    expect(diagnostics.map(({ severity }) => severity)).toContain('error');
  });
});

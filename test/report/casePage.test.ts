import { describe, expect, it } from 'vitest';
import type { Block, CasePage, Section, Table } from '../../core/report/blocks.ts';
import { casePage } from '../../core/report/casePage.ts';
import { writeReport } from '../../core/report/html/report.ts';
import { writeMarkdown } from '../../core/report/markdown/report.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { samples } from '../support/samples.ts';

const gif = Uint8Array.from('GIF89a', (letter) => letter.charCodeAt(0));
const pictures = (file: string): Uint8Array | undefined => (file === 'pictures/gasket.gif' ? gif : undefined);

const head = `diag: 1
case: Hunts at idle after the intake was off
vehicle:
  description: island rental fleet, van 14
  odometer: 128400 km
engine:
  displacement: 2.4 L
  cylinders: 4
tools:
  gauge: {description: vacuum gauge, accuracy: 0.2 inHg}
customer says: Idle swings at the lights.
codes:
  - P0171
  - {code: P0507, status: pending}
outcome: solved
cause: plenum gasket folded at one corner
`;

const pageOf = (cells: string): CasePage =>
  casePage({ study: checkCase(`${head}---\n${cells}`), file: 'van14.diag', pictures });

const lastSection = (cells: string): Section => {
  const { sections } = pageOf(cells);
  const last = sections[sections.length - 1];
  if (last === undefined) throw new Error('No section.');
  return last;
};

const blocksOf = <K extends Block['kind']>(section: Section, kind: K): Extract<Block, { kind: K }>[] =>
  section.blocks.filter((block): block is Extract<Block, { kind: K }> => block.kind === kind);

/** A table row on one line: name | figures | unit | the other system | remarks. */
const lines = (table: Table | undefined): string[] =>
  (table?.rows ?? []).map(({ name, key, figures, unit, other, remarks }) => {
    const figure = (of: Table['rows'][number]['figures'][number]): string =>
      of.number === undefined
        ? (of.words ?? '')
        : of.plusMinus === undefined
          ? of.number
          : `${of.number} ± ${of.plusMinus}`;
    const said = remarks.map((runs) =>
      runs.map((run) => (typeof run === 'string' ? run : JSON.stringify(run))).join(''),
    );
    return [
      key ?? name,
      figures.map(figure).join(' '),
      unit,
      other === undefined ? '' : `${other.figures.map(figure).join(' ')} ${other.unit}`,
      said.join('; '),
    ].join(' | ');
  });

describe('the header', () => {
  it('stands as facts, and the summary says vehicle, outcome and verdicts', () => {
    const page = pageOf('check: Trim\nexpect:\n  - 8 % < 10 %\n');
    expect(page.title).toBe('Hunts at idle after the intake was off');
    expect(page.summary).toEqual([
      'Island rental fleet, van 14. Solved: plenum gasket folded at one corner.',
      'Of 1 expectation 1 holds.',
    ]);
    const [facts] = page.sections[0] === undefined ? [] : blocksOf(page.sections[0], 'facts');
    expect(facts?.rows.map(({ name, runs }) => [name, ...runs])).toEqual([
      ['Customer says', 'Idle swings at the lights.'],
      ['Vehicle', 'island rental fleet, van 14; odometer 128400 km'],
      ['Engine', 'displacement 2.4 L; cylinders 4'],
      ['Codes', 'P0171; P0507 (pending)'],
      ['Tools', { code: 'gauge' }, ' vacuum gauge, ± 0.2 inHg'],
      ['Cause', 'plenum gasket folded at one corner'],
    ]);
  });
});

describe('readings', () => {
  it('stand in a table with the other system beside, digits as they were written', () => {
    const section = lastSection(
      'readings: Gauge\nas: gauged\nwhen: before\nstate: warm idle\nvalues:\n  vacuum: {value: 19.4 inHg, tool: gauge, at: brake booster port, saw: steady}\n  o2_b1s1: 0.10 V\n  ect: 194 °F\n  loop: closed\n  iac: not taken\n',
    );
    expect(section.margin).toEqual(['Readings', 'before', 'warm idle']);
    expect(section.as).toBe('gauged');
    // 19.4 inHg = 65.70 kPa (NIST SP 811: 3.386389 kPa an inHg at 0 °C), 194 °F = 90 °C.
    expect(lines(blocksOf(section, 'table')[0])).toEqual([
      'vacuum | 19.4 ± 0.2 | inHg vacuum | 65.70 ± 0.68 kPa | at brake booster port; steady; with gauge',
      'o2_b1s1 | 0.10 | V |  | ',
      'ect | 194 | °F | 90 °C | ',
      'loop | closed |  |  | ',
      'iac | not taken |  |  | ',
    ]);
  });

  it('at several states stand side by side', () => {
    const section = lastSection(
      'readings: Loads\nas: before\nstates:\n  idle: warm idle\n  drive: {state: cruise, gear: 4}\ntable: |\n  reading  idle  drive  unit\n  map      10.1  17.0   inHg\n  stft_b1  -8    -      %\n',
    );
    const [table] = blocksOf(section, 'table');
    expect(table?.columns).toEqual(['idle', 'drive']);
    // 10.1 inHg = 34.20 kPa, 17.0 inHg = 57.57 kPa.
    expect(lines(table)).toEqual([
      'map | 10.1 17.0 | inHg absolute | 34.2 57.6 kPa | ',
      'stft_b1 | -8 not taken | % |  | ',
    ]);
    expect(blocksOf(section, 'paragraph')[0]?.runs).toEqual(['idle: warm idle; drive: cruise, gear 4.']);
  });

  it('by cylinder stand side by side, by label below each other', () => {
    const section = lastSection(
      'readings: Maps\nvalues:\n  compression: {1: 181 psi, 2: 178 psi}\n  drops: {post to stud: 0.35 V, body to post: 0.05 V}\n',
    );
    const [byCylinder, byLabel] = blocksOf(section, 'table');
    expect(byCylinder?.columns).toEqual(['cyl. 1', 'cyl. 2']);
    // 181 psi = 1247.95 kPa, 178 psi = 1227.27 kPa (NIST SP 811: 6.894757 kPa a psi).
    expect(lines(byCylinder)).toEqual(['compression | 181 178 | psi gauge | 1248 1227 kPa | ']);
    expect(lines(byLabel)).toEqual(['post to stud | 0.35 | V |  | ', 'body to post | 0.05 | V |  | ']);
  });

  it('outside what is usual are drawn and said, and not found again', () => {
    const section = lastSection(
      'readings: Idle\nstate: warm idle\nvalues:\n  vacuum: 14.5 ± 0.2 inHg\n  ect: 90 °C\n',
    );
    const [low, usual] = blocksOf(section, 'table')[0]?.rows ?? [];
    expect(low?.strips).toHaveLength(1);
    expect(low?.strips[0]).toMatchObject({ plusMinus: expect.closeTo(0.2, 9) });
    expect(low?.strips[0]?.low).toBeCloseTo(17, 9);
    expect(low?.strips[0]?.high).toBeCloseTo(22, 9);
    expect(low?.strips[0]?.value).toBeCloseTo(14.5, 9);
    expect(low?.strips[0]?.says).toBe(
      'usual at warm idle: 17 .. 22 inHg (common practice, petrol engine near sea level)',
    );
    expect(usual?.strips).toEqual([]);
    expect(blocksOf(section, 'finding')).toEqual([]);
  });
});

describe('an unusual reading whose unit may be a slip', () => {
  it('is asked about beside its drawing', () => {
    const section = lastSection('readings: Warm\nstate: warm idle\nvalues:\n  ect: 90 °F\n');
    const [row] = blocksOf(section, 'table')[0]?.rows ?? [];
    expect(row?.strips.map(({ says }) => says)).toEqual([
      expect.stringMatching(
        /^usual at warm idle: .*\. The same number in °C would be usual: is the unit right\?$/,
      ),
    ]);
  });
});

describe('a reference', () => {
  it('has its limits and curves in tables, and its source', () => {
    const section = lastSection(
      'reference: Figures\nas: spec\nsource: service information\nvalues:\n  vacuum: 17 .. 21 inHg\n  back_pressure: at most 1.5 psi\n  maf_curve: [[0.4 V, 2 g/s], [1.1 V, 9 g/s]]\n',
    );
    const [limits, curve] = blocksOf(section, 'table');
    expect(lines(limits)).toEqual([
      'vacuum | 17 .. 21 | inHg vacuum | 58 .. 71 kPa | ',
      'back_pressure | at most 1.5 | psi gauge | at most 10.3 kPa | ',
    ]);
    expect(lines(curve)).toEqual(['0.4 V | 2 | g/s |  | ', '1.1 V | 9 | g/s |  | ']);
    expect(blocksOf(section, 'paragraph')).toEqual([
      { kind: 'paragraph', lead: 'Source', runs: ['service information'] },
    ]);
  });
});

describe('verdicts', () => {
  const verdict = (expression: string): string => {
    const line = blocksOf(lastSection(`check: One\nexpect:\n  - ${expression}\n`), 'verdict')[0];
    return `${line?.sign} ${line?.measured}${line?.measured === '' ? '' : ': '}${line?.word}`;
  };

  it.each([
    ['19.8 ± 0.2 inHg < 20.3 inHg', '✓ 19.8 ± 0.2 inHg, 0.5 inHg below the limit of 20.3 inHg: holds'],
    ['19.8 ± 0.2 inHg > 20.3 inHg', '✗ 19.8 ± 0.2 inHg, 0.5 inHg below the limit of 20.3 inHg: fails'],
    [
      '19.8 ± 0.2 inHg < 19.9 inHg',
      '≈ 19.8 ± 0.2 inHg, 0.1 inHg below the limit of 19.9 inHg: too close to call',
    ],
    ['25 % between -10 % and 10 %', '✗ 25 %, 15 % outside -10 .. 10 %: fails'],
    ['25 % not between -10 % and 10 %', '✓ 25 %, 15 % outside -10 .. 10 %: holds'],
    ['4 % not between -10 % and 10 %', '✗ 4 %, 6 % inside -10 .. 10 %: fails'],
    ['29.5 inHg within 0.5 inHg of 29.6 inHg', '✓ 29.5 inHg, 0.4 inHg inside 0.5 inHg of 29.6 inHg: holds'],
    ['10 % <= 10 %', '✓ 10 %, at the limit of 10 %: holds'],
    ['2 V < 1 V', '✗ 2 V, 1 V above the limit of 1 V: fails'],
    ['200 °F within 3 °C of 92 °C', '✓ 200 °F, 1.67 °C inside 3 °C of 92 °C: holds'],
    ['67.3 kPa within 2 % of 20 inHg', '✓ 67.3 kPa, 0.274 inHg inside 2 % of 20 inHg: holds'],
    ['67.3 kPa within 0.5 inHg of 20 inHg', '✓ 67.3 kPa, 0.374 inHg inside 0.5 inHg of 20 inHg: holds'],
    ['1 V < 500 mV', '✗ 1 V, 500 mV above the limit of 500 mV: fails'],
    ['true', '✓ holds'],
    ['1 V < 2 V and 3 V < 2 V', '✗ fails'],
  ])('%s', (expression, says) => {
    expect(verdict(expression)).toBe(says);
  });

  it('name the cylinder that decides', () => {
    const section = lastSection(
      'readings: C\nas: c\nvalues:\n  compression: {1: 181 psi, 2: 120 psi}\n---\ncheck: All\nif fails: Oil into it.\nexpect:\n  - c.compression > 140 psi\n',
    );
    expect(blocksOf(section, 'verdict')[0]).toMatchObject({
      measured: 'cylinder 2: 120 psi, 20 psi below the limit of 140 psi',
      word: 'fails',
      ifFails: 'Oil into it.',
      from: [],
    });
  });

  it('say when a repair is not proven, and when a failure is meant', () => {
    const repair = lastSection('repair: Gasket\ndone: Replaced.\nverify:\n  - 12 % < 10 %\n');
    expect(blocksOf(repair, 'verdict')[0]?.remark).toBe('so the repair is not proven');
    const check = lastSection('check: Trim\nshows: fault\nexpect:\n  - 12 % < 10 %\n');
    expect(blocksOf(check, 'verdict')[0]?.remark).toBe('and shows the fault as the author means it to');
    expect(check.margin).toEqual(['Check', 'shows the fault']);
  });
});

describe('suspects', () => {
  it('are sentences for, against and missing, and what to measure next', () => {
    const section = lastSection(
      'test: Smoke\nas: smoke\nresult: yes\n---\nsuspects: Lean\nconsider:\n  - name: leak\n    because: It hunts.\n    predicts:\n      - smoke.result is yes\n  - name: weak pump\n    predicts:\n      - smoke.result is no\n  - name: worn cam\n    predicts:\n      - vacuum < 15 inHg\n',
    );
    expect(
      blocksOf(section, 'suspect').map(({ sign, name, standing }) => `${sign} ${name}: ${standing}`),
    ).toEqual(['≈ leak: still possible', '✗ weak pump: ruled out', '– worn cam: not tested']);
    expect(blocksOf(section, 'suspect')[1]?.against).toEqual([
      ['it predicts ', { code: 'smoke.result is no' }, ', which fails (it is yes)'],
    ]);
    expect(blocksOf(section, 'paragraph').map(({ lead }) => lead)).toEqual(['Because', 'Next']);
  });
});

describe('cautions', () => {
  const titles = (cells: string): string[][] =>
    pageOf(cells).sections.map((section) => blocksOf(section, 'caution').map(({ title }) => title));

  it('come with the first cell that needs them, and once', () => {
    const fuel = (title: string): string => `readings: ${title}\nvalues:\n  fuel_pressure: 50 psi\n`;
    expect(titles(`${fuel('One')}---\n${fuel('Two')}`)).toEqual([[], ['Fuel under pressure'], []]);
  });

  it('are pointed back to where a later step is as dangerous itself', () => {
    const page = pageOf(
      'readings: One\nstate: warm idle\nvalues:\n  fuel_pressure: 50 psi\n---\nreadings: Two\nstate: warm idle\nvalues:\n  ect: 194 °F\n---\ntest: Rail\ndid: Lifted the rail with its injectors.\nresult: yes\n',
    );
    const told = page.sections.map((section) =>
      blocksOf(section, 'paragraph').filter(({ lead }) => lead === 'Caution, as before'),
    );
    expect(told).toEqual([
      [],
      [],
      [],
      [
        {
          kind: 'paragraph',
          lead: 'Caution, as before',
          runs: ['', { strong: 'Fuel under pressure' }, ' (see “One”)', '.'],
        },
      ],
    ]);
  });

  it('do not come with what the computer stored by itself', () => {
    expect(
      titles('readings: Stored\nwhen: freeze frame\nstate: warm idle\nvalues:\n  rpm: 710 rpm\n'),
    ).toEqual([[], []]);
  });

  it('do not come with what is only known beforehand', () => {
    expect(titles('reference: R\nas: r\nvalues:\n  fuel_pressure: 45 .. 55 psi\n')).toEqual([[], []]);
  });

  it('come from the author too', () => {
    expect(titles('caution: Mind the dog.\n')).toEqual([[], ['from the author']]);
  });
});

describe('questions', () => {
  it('stand without their answers, which come at the end', () => {
    const page = pageOf(
      'question: Why?\nask: What is it?\nchoices:\n  - {choice: a leak, right: yes, because: It hunts.}\n  - weak fuel\nhints:\n  - Look at the trims.\npoints: 2\n',
    );
    const [, question] = page.sections;
    expect(question?.margin).toEqual(['Question', '2 points']);
    expect(question?.blocks).toEqual([
      { kind: 'paragraph', runs: ['What is it?'] },
      { kind: 'bullets', style: 'letter', items: [['a leak'], ['weak fuel']] },
    ]);
    expect(page.answers).toEqual([
      {
        number: 2,
        title: 'Why?',
        blocks: [
          { kind: 'bullets', lead: 'Hints', style: 'bullet', items: [['Look at the trims.']] },
          { kind: 'paragraph', lead: 'Right', runs: [{ strong: 'a' }, ', a leak. It hunts.'] },
        ],
      },
    ]);
  });
});

describe('a teaching case', () => {
  const cells =
    'question: Why?\nask: What is it?\nanswer: 2 V\n---\npicture: The folded gasket\nfile: pictures/gasket.gif\nalt: a gasket\nfor: after answer\n---\nnote: Ask about the booster hose too.\nfor: teacher\n---\nnote: Look closely.\nfor: student\n';
  const study = checkCase(`${head}repair: new gasket\nteaching: yes\n---\n${cells}`);
  const shown = { study, file: 'van14.diag', pictures };
  const page = casePage(shown);

  it('does not begin with its cause, neither in the contents nor in the header', () => {
    expect(page.summary[0]).toBe('Island rental fleet, van 14. Solved.');
    expect(JSON.stringify(page.sections)).not.toMatch(/folded|new gasket/);
  });

  it('tells at its end what the cause was, and what its author kept back', () => {
    expect(page.after.map(({ number, title, audience }) => [number, title, audience])).toEqual([
      [1, 'What it was', undefined],
      [3, 'The folded gasket', 'after the answer'],
      [4, '', 'for the teacher'],
    ]);
    expect(JSON.stringify(page.after[0]?.blocks)).toContain('plenum gasket folded at one corner');
    expect(JSON.stringify(page.after[0]?.blocks)).toContain('new gasket');
  });

  it('leaves a line in each place, in order, that leads there and back', () => {
    expect(page.sections.map(({ number, title, keptBack }) => [number, title, keptBack])).toEqual([
      [1, '', false],
      [2, 'Why?', false],
      [3, '', true],
      [4, '', true],
      [5, '', false],
    ]);
    const html = writeReport([shown]);
    for (const [from, to] of [
      ['case-1-cell-3', 'case-1-after-3'],
      ['case-1-after-3', 'case-1-cell-3'],
      ['case-1-after-1', 'case-1-cell-1'],
    ]) {
      const place = html.slice(html.indexOf(`id="${from}"`));
      expect(place.slice(0, place.indexOf('</section>'))).toContain(`href="#${to}"`);
    }
    expect(html.indexOf('folded')).toBeGreaterThan(html.indexOf('id="case-1-answers"'));
    const markdown = writeMarkdown(shown);
    expect(markdown.indexOf('folded')).toBeGreaterThan(markdown.indexOf('## Answers'));
    expect(markdown).toContain('After the answers, at the end.');
  });

  it('that is none, tells its cause at once and keeps nothing back', () => {
    const told = pageOf(cells);
    expect(told.after).toEqual([]);
    expect(told.summary[0]).toContain('plenum gasket folded');
    expect(told.sections[2]?.title).toBe('The folded gasket');
  });
});

describe('other cells', () => {
  it('set names between backquotes apart', () => {
    const section = lastSection('check: C\nexpect:\n  - 1 V < 2 V\nbecause: So `a` is less than `b`.\n');
    expect(blocksOf(section, 'paragraph')[0]?.runs).toEqual([
      'So ',
      { code: 'a' },
      ' is less than ',
      { code: 'b' },
      '.',
    ]);
  });

  it('say whom they are for', () => {
    expect(lastSection('note: For you.\nfor: teacher\n').audience).toBe('for the teacher');
    expect(lastSection('note: For you.\nfor: student\n').audience).toBe('for students');
    expect(lastSection('note: For you.\nfor: after answer\n').audience).toBe('after the answer');
    expect(lastSection('note: For all.\n').audience).toBeUndefined();
  });

  it('embed a picture that is there, and name one that is not', () => {
    const picture = (file: string): unknown =>
      blocksOf(lastSection(`picture: P\nfile: ${file}\nalt: A folded gasket.\n`), 'picture')[0];
    expect(picture('pictures/gasket.gif')).toMatchObject({ dataUri: 'data:image/gif;base64,R0lGODlh' });
    expect(picture('pictures/gone.png')).toMatchObject({
      dataUri: undefined,
      missing: 'The file could not be read.',
    });
  });

  it('that cannot be read show their text, and what is wrong with it', () => {
    const section = lastSection('found: ] smoke\n');
    expect(section.title).toBe('A cell that could not be read');
    expect(blocksOf(section, 'source')[0]?.text).toContain('found: ] smoke');
    expect(blocksOf(section, 'finding')[0]?.line).toBe(head.split('\n').length + 1);
  });

  it('show a finding with the file’s own line', () => {
    const section = lastSection('readings: R\nvalues:\n  battery: 126 V\n');
    const [finding] = blocksOf(section, 'finding');
    expect(finding).toMatchObject({ severity: 'error', code: 'impossible-value', column: 12 });
    expect(finding?.frame).toEqual({ before: '  battery: ', marked: '126 V', after: '' });
  });
});

describe('every sample', () => {
  it.each([...samples])('%s becomes a page of each kind', (file, text) => {
    const shown = { study: checkCase(text), file, pictures };
    const html = writeReport([shown]);
    expect(html).not.toMatch(/undefined|NaN|\[object|Infinity/);
    const levels = [...html.matchAll(/<h([1-6])/g)].map((match) => Number(match[1]));
    expect(levels[0]).toBe(1);
    for (const [at, level] of levels.entries()) expect(level - (levels[at - 1] ?? 0)).toBeLessThanOrEqual(1);
    const markdown = writeMarkdown(shown);
    expect(markdown).not.toMatch(/undefined|NaN|\[object|Infinity/);
    expect(markdown.startsWith('# ')).toBe(true);
    // Both say every verdict.
    const verdicts = shown.study.expectations.filter(
      (each) => each.part === 'expect' || each.part === 'verify',
    );
    expect(html.match(/<div class="verdict/g)?.length ?? 0).toBe(verdicts.length);
  });
});

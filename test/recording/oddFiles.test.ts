import { describe, expect, it } from 'vitest';
import { inMemory } from '../../core/recording/files.ts';
import { noFormat } from '../../core/recording/layout.ts';
import { captureFromFile } from '../../core/service/captureFromFile.ts';
import { said, samplesOf, studied, timesOf } from './caseFiles.ts';

/** Twelve rows, as a recorder would go on writing them. */
const rows = (of: (i: number) => string, count = 12): string =>
  Array.from({ length: count }, (_, i) => `${of(i)}\n`).join('');

const upTo = (count: number, of: (i: number) => number): number[] =>
  Array.from({ length: count }, (_, i) => of(i));

const rounded = (numbers: readonly number[] | undefined): number[] | undefined =>
  numbers?.map((each) => Math.round(each * 1e6) / 1e6);

function imported(log: string | Uint8Array): string {
  const bytes = typeof log === 'string' ? new TextEncoder().encode(log) : log;
  const content = inMemory(bytes);
  const made = captureFromFile({
    file: 'log.csv',
    content,
    format: noFormat,
    taken: new Set(),
    at: undefined,
  });
  return 'why' in made ? made.why : (made.cells[0] ?? '');
}

/** Text in an encoding of one byte a character. */
const inBytes = (text: string, special: Readonly<Record<string, number>>): Uint8Array =>
  Uint8Array.from(text, (each) => special[each] ?? each.charCodeAt(0));

describe('numbers as locales write them', () => {
  it.each([
    ['French, a narrow no-break space', '1\u202f200,5', 1200.5],
    ['French, a no-break space', '1\u00a0200,5', 1200.5],
    ['French, a space', '1 200,5', 1200.5],
    ['Swiss, an apostrophe', "1'200,5", 1200.5],
    ['German, a point', '1.200,5', 1200.5],
    ['a unit at each number', '12,5 V', 12.5],
  ])('%s', (_, text, value) => {
    const study = studied(`Zeit (s);v (V)\n${rows((i) => `${i},0;${text}`)}`);
    expect(samplesOf(study, 'log.v')).toEqual(upTo(12, () => value));
  });

  it('as the C libraries print a NaN', () => {
    const nan = ['-nan', '-nan(ind)', '1.#QNAN', '1.#IND'];
    const study = studied(`Time (s),v (V)\n${nan.map((each, i) => `${i},${each}\n`).join('')}4,0.5\n`);
    expect(samplesOf(study, 'log.v')).toEqual([Number.NaN, Number.NaN, Number.NaN, Number.NaN, 0.5]);
    expect(said(study)).toEqual([]);
  });

  it('beyond the range: not silently nothing', () => {
    const study = studied(`Time (s),v (V)\n0,0.1\n1,∞\n2,OVL\n3,0.2\n4,0.3\n`);
    expect(said(study)).toEqual([
      'capture-lines-refused: In `log.csv` 2 values were not read; 5 rows were. Line 3: `∞` under `v (V)` is no number. Line 4: `OVL` under `v (V)` is no number.',
    ]);
  });

  it('columns beyond the names of the heading have numbers, where the author says that commas part them', () => {
    const so = studied(
      `Zeit (s),U (V)\n${rows((i) => `${i},5,12,${i}`)}`,
      'format: {delimiter: comma, decimal: point}\n',
    );
    expect(samplesOf(so, 'log.column_4')).toEqual(upTo(12, (i) => i));
  });
});

describe('units in headings', () => {
  it.each([
    ['in brackets', 't (ms)', 'n [1/min]'],
    ['below a stroke', 't / ms', 'n / min-1'],
    ['behind in', 't in ms', 'n in 1/min'],
    ['behind a colon', 't : ms', 'n : RPM'],
  ])('%s', (_, time, speed) => {
    const study = studied(`${time};${speed}\n${rows((i) => `${i};${780 + i}`)}`);
    expect(timesOf(study, study.readings[0]?.fullName ?? '')?.[1]).toBe(0.001);
    const [reading] = study.readings;
    expect(reading?.fullName).toBe('log.n');
    expect(reading?.type.kind === 'series' ? reading.type.quantity.unit.symbol : undefined).toBe('rpm');
  });
});

describe('times as tools write them', () => {
  it.each([
    ['milliseconds since 1970', (i: number) => `${1_772_360_430_500 + i * 100}`, (i: number) => i / 10],
    ['seconds since 1970', (i: number) => (1_772_360_430 + i / 10).toFixed(3), (i: number) => i / 10],
    ['microseconds since 1970', (i: number) => `${1_772_360_430_500_000 + i * 10}`, (i: number) => i / 1e5],
  ])('%s count from the first sample, and that is shown', (_, time, due) => {
    const study = studied(`timestamp,rpm\n${rows((i) => `${time(i)},780`)}`);
    expect(rounded(timesOf(study, 'log.rpm'))).toEqual(rounded(upTo(12, due)));
    expect(said(study)[0]).toContain(
      'since 1970, as its numbers are that large, counted from its first sample',
    );
  });

  it.each([
    ['ISO 8601, basic', (i: number) => `20260301T1020${30 + i}Z`, (i: number) => i],
    ['ISO 8601, a comma', (i: number) => `2026-03-01T10:20:${30 + i},5+01:00`, (i: number) => i],
    [
      'minutes and seconds',
      (i: number) => `${58 + Math.floor(i / 60)}:${String(i).padStart(2, '0')}.5`,
      (i: number) => i,
    ],
    ['minutes beyond a day’s hours', (i: number) => `75:${10 + i}`, (i: number) => i],
    [
      'a date with points',
      (i: number) => `0${1 + (i % 2)}.03.2026 10:20:30`,
      (i: number) => (i % 2) * 86_400,
    ],
  ])('%s', (_, time, due) => {
    const study = studied(`Time;rpm\n${rows((i) => `${time(i)};780`, 2)}`);
    expect(timesOf(study, 'log.rpm')).toEqual(upTo(2, due));
  });

  it('a clock whose zone is set forward goes on', () => {
    const log = 'Time,rpm\n2026-03-29T01:59:59+01:00,780\n2026-03-29T03:00:01+02:00,790\n';
    expect(timesOf(studied(log), 'log.rpm')).toEqual([0, 2]);
  });

  it('minutes and seconds go on over the hour', () => {
    const study = studied('Time,rpm\n59:59.5,780\n00:00.5,790\n');
    expect(timesOf(study, 'log.rpm')).toEqual([0, 1]);
  });

  it('days are counted where the order of the date is seen', () => {
    const german = 'Time;rpm\n01.03.2026 23:59:58;1\n02.03.2026 00:00:01;2\n04.03.2026 00:00:01;3\n';
    expect(timesOf(studied(german), 'log.rpm')).toEqual([0, 3, 172_803]);
    const american = 'Time,rpm\n3/30/2026 23:59:58,1\n4/2/2026 23:59:58,2\n';
    expect(timesOf(studied(american), 'log.rpm')).toEqual([0, 3 * 86_400]);
  });

  it('where it is not seen, a day is never lost in silence', () => {
    const log = 'Time,rpm\n3/1/2026 23:59:58,1\n3/2/2026 00:00:01,2\n3/4/2026 00:00:01,3\n';
    const study = studied(log);
    expect(timesOf(study, 'log.rpm')).toEqual([0, 3]);
    expect(said(study)).toEqual([
      'capture-lines-refused: In `log.csv` 1 line was not read; 2 rows were. Line 4 has no time: `3/4/2026 00:00:01,3`.',
    ]);
  });

  it('a clock without a date among those with one is none of them', () => {
    const study = studied('Time,v (V)\n01.03.2026 10:20:30,0.1\n10:20:31,0.2\n01.03.2026 10:20:32,0.3\n');
    expect(timesOf(study, 'log.v')).toEqual([0, 2]);
    expect(said(study)).toEqual([
      'capture-lines-refused: In `log.csv` 1 line was not read; 2 rows were. Line 3 has no time: `10:20:31,0.2`.',
    ]);
  });

  it('a plain number among clock times is none of them', () => {
    const log =
      'Time,v (V)\n10:20:30,0.1\n7,0.2\n10:20:31,0.3\n8,0.4\n9,0.5\n10:20:32,0.6\n# a remark\n10,0.7\n';
    const study = studied(log);
    expect(timesOf(study, 'log.v')).toEqual([0, 1, 2]);
    expect(samplesOf(study, 'log.v')).toEqual([0.1, 0.3, 0.6]);
    expect(said(study)).toEqual([
      'capture-lines-refused: In `log.csv` 4 lines were not read; 3 rows were. Line 3 has a plain number under `Time`, which is a clock. Line 5 has a plain number under `Time`, which is a clock. The others are like these or different.',
    ]);
  });

  it('two groups may be hours or minutes: the author is asked', () => {
    const log = 'Elapsed,rpm\n00:00,780\n00:05,785\n00:10,790\n';
    const study = studied(log);
    expect(said(study)).toEqual([
      'capture-clock-unclear: `00:00` under `Elapsed` may be hours and minutes or minutes and seconds. Say which: `unit: hh:mm` or `unit: mm:ss`.',
    ]);
    expect(study.findings[0]?.diagnostic.fixes.map((each) => each.title)).toEqual([
      'Write `time: {column: "Elapsed", unit: mm:ss}`',
      'Write `time: {column: "Elapsed", unit: hh:mm}`',
    ]);
    const seconds = studied(log, 'time: {column: Elapsed, unit: mm:ss}\n');
    expect(timesOf(seconds, 'log.rpm')).toEqual([0, 5, 10]);
    expect(said(seconds)).toEqual([]);
    expect(timesOf(studied(log, 'time: {column: Elapsed, unit: hh:mm}\n'), 'log.rpm')).toEqual([0, 300, 600]);
    expect(timesOf(studied(log.replace('Elapsed', 'Elapsed (mm:ss)')), 'log.rpm')).toEqual([0, 5, 10]);
    expect(imported(log)).toContain(
      'time: Elapsed   # say what 00:00 is: {column: "Elapsed", unit: mm:ss} or unit: hh:mm',
    );
  });
});

describe('what stands around the samples', () => {
  it.each([
    [
      'thirty lines of facts, names and units below them',
      `${rows((i) => `Key ${i}: value`, 10)}${rows((i) => `Param${i},${i * 1.5}`, 20)}\nTime,A,B\n(ms),(mV),(V)\n\n`,
    ],
    [
      'facts padded to the samples’ width',
      'Record Length,1.2e+01,\nTrigger,0,\nUnits,V,\n,,\nTime,A,B\n(ms),(mV),(V)\n',
    ],
    ['a line of nothing but delimiters below the units', 'Time,A,B\n(ms),(mV),(V)\n,,\n'],
    ['names in quotes that run over two lines', '"Time\n(ms)","A\n(mV)","B\n(V)"\n'],
    ['more delimiters behind the names than behind the samples', 'Time,A,B,,\n(ms),(mV),(V),,\n'],
  ])('%s', (_, above) => {
    const study = studied(`${above}${rows((i) => `${i},${i * 2},0.${i}`)}`);
    expect(rounded(timesOf(study, 'log.A'))).toEqual(rounded(upTo(12, (i) => i / 1000)));
    expect(rounded(samplesOf(study, 'log.A'))).toEqual(upTo(12, (i) => i * 2));
  });

  it('columns of fixed width with names of two words', () => {
    const log = `  Time     Engine Speed   Volt\n   (s)        (rpm)        (V)\n${rows((i) => `   ${i}.00        ${780 + i}         0.${i}`)}`;
    expect(rounded(samplesOf(studied(log), 'log.Engine_Speed'))).toEqual(upTo(12, (i) => 780 + i));
  });

  it('names that are numbers, as cylinders have', () => {
    const study = studied(`Time (s),1,2,3\n${rows((i) => `${i},0.1,0.2,0.${i}`)}`);
    expect(samplesOf(study, 'log.column_2')).toEqual(upTo(12, () => 0.2));
  });

  it('mostly words: what numbers there are is read', () => {
    const log = `Time (s),Fan,Loop,Gear,RPM\n${rows((i) => `${i},${i % 2 ? 'ON' : 'OFF'},Closed loop,P,${780 + i}`)}`;
    expect(rounded(samplesOf(studied(log), 'log.RPM'))).toEqual(upTo(12, (i) => 780 + i));
    expect(imported(log)).toContain('  # left out, since it holds no numbers: Loop');
  });

  it('five rows of which most are broken: each is told, and the heading is the heading', () => {
    const study = studied('Time (s),rpm,v (V)\n0,780\n1,bad,ERR\n2,800,31\n3\n4,xx,yy\n');
    expect(samplesOf(study, 'log.v')).toEqual([Number.NaN, 31, Number.NaN]);
    expect(said(study)).toEqual([
      'capture-lines-refused: In `log.csv` 2 lines and 4 values were not read; 3 rows were. Line 2 has 2 columns and the heading 3: `0,780`. Line 3: `bad` under `rpm` is no number. Line 3: `ERR` under `v (V)` is no number. Line 5 has 1 column and the heading 3: `3`. Line 6: `xx` under `rpm` is no number. The others are like these or different.',
    ]);
  });

  it('rows that end early keep the heading', () => {
    const study = studied(
      `Time (s),a (V),b (V)\n${rows((i) => (i % 3 === 0 ? `${i},0.1,0.5` : `${i},0.1`))}`,
    );
    expect(samplesOf(study, 'log.b')).toEqual([0.5, 0.5, 0.5, 0.5]);
    expect(said(study)[0]).toContain(
      '8 lines were not read; 4 rows were. Line 3 has 2 columns and the heading 3',
    );
  });

  it('the heading again in the middle, a summary at the end: told, not read', () => {
    const log = `Time (s),v (V)\n${rows((i) => `${i},0.${i}`, 5)}Time (s),v (V)\n5,0.5\nMin,0.0\nSamples: 6\n`;
    const study = studied(log);
    expect(samplesOf(study, 'log.v')).toEqual([0, 0.1, 0.2, 0.3, 0.4, 0.5]);
    expect(said(study)).toEqual([
      'capture-lines-refused: In `log.csv` 3 lines were not read; 6 rows were. Line 7 has no time: `Time (s),v (V)`. Line 9 has no time: `Min,0.0`. Line 10 has 1 column and the heading 2: `Samples: 6`.',
    ]);
  });

  it.each([
    ['upright strokes', 'Time (s)|v (V)\n', '|'],
    ['upright strokes, named in the first line', 'sep=|\nTime (s)|v (V)\n', '|'],
    ['tabs with empty fields', 'Time (s)\tx (V)\tv (V)\n', '\t\t'],
  ])('%s', (_, above, between) => {
    expect(
      samplesOf(studied(`${above}${rows((i) => `${i}${between}0.${i}`)}`), 'log.v')?.slice(0, 3),
    ).toEqual([0, 0.1, 0.2]);
  });

  it.each([
    ['zeros, as a recorder leaves them behind that lost its power', '\0'.repeat(200)],
    ['the mark of old systems', '\u001a'],
  ])('behind the end: %s', (_, behind) => {
    const study = studied(`Time (s),v (V)\n0,0.5\n1,0.6\n${behind}`);
    expect(samplesOf(study, 'log.v')).toEqual([0.5, 0.6]);
    expect(said(study)).toEqual([]);
  });
});

describe('channels that take turns in one column', () => {
  const turns = `time (s),channel,value\n${rows((i) => `${i},${i % 2 ? 'rpm' : 'map'},${780 + i}`)}`;

  it('are warned of', () => {
    expect(said(studied(turns))).toEqual([
      'capture-channels-in-rows: The rows of `log.csv` seem to hold one channel each, named under `channel`: `map`, `rpm` … Their values stand in one column and are read as one channel. Export the file with a column for each channel.',
    ]);
  });

  it.each([
    ['the same name in every row', turns.replaceAll('map', 'rpm')],
    ['words under another heading', turns.replace('channel', 'Fan')],
    ['more than one value', `time (s),sensor,a,b\n${rows((i) => `${i},${i % 2 ? 'on' : 'off'},0.1,0.${i}`)}`],
  ])('not of %s', (_, log) => {
    expect(said(studied(log)).filter((each) => each.startsWith('capture-'))).toEqual([]);
  });
});

describe('files that are no delimited text', () => {
  it.each([
    [
      '[{"t":0,"rpm":780},\n{"t":1,"rpm":781}]\n',
      'it is JSON. Export it from the tool as delimited text (CSV)',
    ],
    [
      '<html><table>\n<tr><td>0</td></tr></table></html>\n',
      'it is a page of HTML or XML. Export it from the tool as delimited text (CSV)',
    ],
    [
      'PK\u0003\u0004\u0014\u0000',
      'it is a workbook or an archive. Open it and save the sheet as delimited text (CSV)',
    ],
  ])('%s', (log, why) => {
    expect(said(studied(log))).toEqual([`capture-no-samples: No samples were found in \`log.csv\`: ${why}.`]);
    expect(imported(log)).toBe(why);
  });

  it('text in UTF-32', () => {
    const text = '\ufeffTime (s),v (V)\n0,1\n';
    const bytes = new Uint8Array(
      [...text].flatMap((each) => [each.charCodeAt(0) & 255, each.charCodeAt(0) >> 8, 0, 0]),
    );
    expect(imported(bytes)).toBe('it is text in UTF-32. Save it as UTF-8');
  });

  it('a single column has no time', () => {
    expect(said(studied('Voltage (V)\n0.1\n0.2\n0.3\n')).at(-1)).toBe(
      'capture-no-time: The only column is `Voltage (V)`, and there is no time. Export the file with its time.',
    );
  });
});

describe('encodings', () => {
  it('Windows-1252 with characters that ISO 8859-1 does not have', () => {
    const log = 'Time (s),Trim – bank 1 (%)\n0,0.5\n1,1.5\n';
    const study = studied(inBytes(log, { '–': 0x96 }));
    expect(study.memo.names.cells[1]?.readAs?.[0]).toContain('characters in Windows-1252');
    expect(imported(inBytes(log, { '–': 0x96 }))).toContain('"Trim – bank 1 (%)"');
  });

  it('UTF-16 without a mark that begins in another script', () => {
    const log = '時間 (s),v (V)\n0,0.5\n1,0.6\n';
    const bytes = new Uint8Array(
      [...log].flatMap((each) => [each.charCodeAt(0) & 255, each.charCodeAt(0) >> 8]),
    );
    expect(samplesOf(studied(bytes, 'time: 時間 (s)\n'), 'log.v')).toEqual([0.5, 0.6]);
  });
});

describe('a heading that stands twice', () => {
  const log = `Time (s),O2 (V),O2 (V)\n${rows((i) => `${i},0.1,0.${i}`, 9)}`;

  it('is asked about, and told apart by number', () => {
    const study = studied(log, 'channels:\n  rear: O2 (V)\n');
    expect(said(study)).toEqual([
      'column-stands-twice: 2 columns are headed `O2 (V)`. Say which by its number, counted from the left: `O2 (V) #1` or `O2 (V) #2`.',
    ]);
    expect(study.findings[0]?.diagnostic.fixes.map((each) => each.edits[0]?.newText)).toEqual([
      '"O2 (V) #1"',
      '"O2 (V) #2"',
    ]);
    const rear = studied(log, 'channels:\n  rear: "O2 (V) #2"\n');
    expect(samplesOf(rear, 'log.rear')).toEqual(upTo(9, (i) => i / 10));
  });

  it('is imported as two channels of two columns', () => {
    const cell = imported(log);
    expect(cell).toContain('  o2_b1s1: "O2 (V) #1"');
    expect(cell).toContain('  o2_b1s1_2: {column: "O2 (V) #2", signal: o2_b1s1}');
  });

  it('and a column without a heading has its number', () => {
    expect(
      samplesOf(studied(`Time (s),,v (V)\n${rows((i) => `${i},${i * 2},0.1`, 3)}`), 'log.column_2'),
    ).toEqual([0, 2, 4]);
  });
});

import { describe, expect, it } from 'vitest';
import { halfWidth } from '../../core/quantity/amount.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { caseWith, filesOf, said, samplesOf, studied, timesOf } from './caseFiles.ts';

const { NaN: gone } = Number;

/** How a file was read, as the info and the cell's page say it. */
const readAs = (study: ReturnType<typeof studied>): string =>
  (study.memo.names.cells[1]?.readAs ?? []).join('; ');

describe('delimited text as tools write it', () => {
  it('semicolons and a decimal comma, units in a second row, a byte-order mark, Windows line ends', () => {
    const study = studied('\ufeffZeit;Drehzahl;Lambdasonde\r\ns;1/min;V\r\n0,0;780;0,12\r\n0,1;790;0,85\r\n');
    expect(timesOf(study, 'log.Drehzahl')).toEqual([0, 0.1]);
    expect(samplesOf(study, 'log.Lambdasonde')).toEqual([0.12, 0.85]);
    expect(said(study)).toEqual([
      'capture-recognised: `log.csv` was read so: columns parted by semicolons, decimal comma, names and units in 2 heading rows.',
    ]);
    expect(study.findings[0]?.diagnostic.fixes.map((each) => each.title)).toEqual([
      'Write `format: {delimiter: semicolon, decimal: comma, heading rows: 2}`',
    ]);
    expect(readAs(study)).toBe(
      'columns parted by semicolons, decimal comma, names and units in 2 heading rows; time from `Zeit`, in s',
    );
  });

  it('says nothing more once the cell says how it is written', () => {
    const format = 'format: {delimiter: semicolon, decimal: comma, heading rows: 2}\n';
    const study = studied('Zeit;Drehzahl\ns;1/min\n0,0;780\n0,1;790\n', format);
    expect(said(study)).toEqual([]);
    expect(samplesOf(study, 'log.Drehzahl')).toEqual([780, 790]);
  });

  it('tabs, quoted headings with a comma and a quote in them', () => {
    const study = studied('"Time (ms)"\t"O2 ""front"", B1 [V]"\n0\t0.1\n20\t0.8\n');
    expect(timesOf(study, 'log.O2_front_B1')).toEqual([0, 0.02]);
    expect(samplesOf(study, 'log.O2_front_B1')).toEqual([0.1, 0.8]);
  });

  it('two lines of names, the upper one over a group', () => {
    const log = ',Bank 1,,Bank 2,\nTime (s),STFT,LTFT,STFT,LTFT\n0,1,2,3,4\n1,1.5,2,3,4\n';
    const study = studied(log, 'channels:\n  stft_b2: {column: Bank 2 STFT, unit: "%"}\n');
    expect(samplesOf(study, 'log.stft_b2')).toEqual([3, 3]);
    expect(timesOf(study, 'log.stft_b2')).toEqual([0, 1]);
    expect(readAs(study)).toContain('names in 2 heading rows');
  });

  it('a preamble, remarks between the samples, blank lines, a delimiter at each line’s end', () => {
    const log =
      'Generic recorder\nVehicle: van 14\n\ntime (s),rpm (rpm),\n0,780,\n# a remark of the tool\n1,790,\n\n2,800,\n// another\n3,810,\n';
    const study = studied(log);
    expect(samplesOf(study, 'log.rpm')).toEqual([780, 790, 800, 810]);
    expect(readAs(study)).toContain('3 lines before it passed over');
  });

  it('a heading in the last remark, columns parted by spaces', () => {
    const study = studied('# made by a logger\n# t v\n0   0.5\n0.1 0.6\n 0.2  0.7\n');
    expect(samplesOf(study, 'log.v')).toEqual([0.5, 0.6, 0.7]);
    expect(timesOf(study, 'log.v')).toEqual([0, 0.1, 0.2]);
  });

  it('cells that hold nothing: empty, dashes, N/A, NaN', () => {
    const study = studied('Time (s),v (V)\n0,---\n1,0.5\n2,\n3,N/A\n4,NaN\n5,0.6\n');
    expect(samplesOf(study, 'log.v')).toEqual([gone, 0.5, gone, gone, gone, 0.6]);
    expect(said(study)).toEqual([]);
  });

  it('channels of different rates, with blanks between', () => {
    const study = studied('Time (s),fast (V),slow (°C)\n0,0.1,80\n0.1,0.2,\n0.2,0.3,\n0.3,0.4,81\n');
    expect(samplesOf(study, 'log.fast')).toEqual([0.1, 0.2, 0.3, 0.4]);
    expect(samplesOf(study, 'log.slow')?.map((each) => Math.round(each * 1e9) / 1e9)).toEqual([
      80,
      gone,
      gone,
      81,
    ]);
  });

  it('a unit at every number', () => {
    const study = studied('Time,Voltage\n0 ms,12.5 V\n10 ms,9800 mV\n20 ms,12.4 V\n');
    expect(timesOf(study, 'log.Voltage')).toEqual([0, 0.01, 0.02]);
    expect(samplesOf(study, 'log.Voltage')).toEqual([12.5, 9.8, 12.4]);
  });

  it('irregular and duplicated times stay as they are', () => {
    const study = studied('Time (s),v (V)\n0,1\n0.5,2\n0.5,3\n4,4\n');
    expect(timesOf(study, 'log.v')).toEqual([0, 0.5, 0.5, 4]);
  });

  it('a clock over midnight counts seconds since its first sample', () => {
    const study = studied('Clock,rpm\n23:59:59.500,800\n23:59:59.750,810\n00:00:00.250,790\n');
    expect(timesOf(study, 'log.rpm')).toEqual([0, 0.25, 0.75]);
    expect(readAs(study)).toContain('time from `Clock`, a clock, in seconds since its first sample');
  });

  it.each([
    ['2024-02-28 23:59:58,1\n2024-02-29 00:00:01,2\n2024-03-01 00:00:01,3\n', [0, 3, 86403]],
    ['2024-03-05T10:20:30.125Z,1\n2024-03-05T10:20:31Z,2\n', [0, 0.875]],
    ['05.03.2024 10:20:30,1\n05.03.2024 10:20:31,2\n', [0, 1]],
    ['11:59:59 AM,1\n12:00:01 PM,2\n1:00:00 PM,3\n', [0, 2, 3601]],
  ])('a clock with a date, or of twelve hours: %s', (rows, times) => {
    expect(timesOf(studied(`Time,v (V)\n${rows}`), 'log.v')).toEqual(times);
  });

  it('a time without a unit is in seconds, and that is shown', () => {
    const study = studied('Time,v (V)\n0,1\n1,2\n');
    expect(timesOf(study, 'log.v')).toEqual([0, 1]);
    expect(readAs(study)).toContain('time from `Time`, in seconds, since no unit is given');
    expect(said(study)).toEqual([
      'capture-recognised: `log.csv` was read so: time from `Time`, in seconds, since no unit is given.',
    ]);
    expect(study.findings[0]?.diagnostic.fixes.map((each) => each.title)).toEqual([
      'Write `time: {column: "Time", unit: s}`',
    ]);
  });

  it('the author may say the time’s column and unit', () => {
    const study = studied('n,v (V)\n0,1\n5,2\n', 'time: {column: n, unit: ms}\n');
    expect(timesOf(study, 'log.v')).toEqual([0, 0.005]);
  });

  it.each([
    ['UTF-16 little-endian, with its mark', [0xff, 0xfe], 0],
    ['UTF-16 little-endian, without', [], 0],
    ['UTF-16 big-endian, with its mark', [0xfe, 0xff], 1],
    ['UTF-16 big-endian, without', [], 1],
  ])('%s', (_, mark, high) => {
    const text = 'Time (s),ect (°C)\n0,80.5\n1,81\n';
    const bytes = new Uint8Array([
      ...mark,
      ...[...text].flatMap((each) => (high === 0 ? [each.charCodeAt(0), 0] : [0, each.charCodeAt(0)])),
    ]);
    const study = studied(bytes);
    expect(samplesOf(study, 'log.ect')?.map((each) => Math.round(each * 1e9) / 1e9)).toEqual([80.5, 81]);
    expect(readAs(study)).toContain(`characters in UTF-16 ${high === 0 ? 'little' : 'big'}-endian`);
  });

  it('Windows-1252, as tools write a degree sign that is no UTF-8', () => {
    const text = 'Time (s),ect (°C)\n0,80\n1,81\n';
    const study = studied(Uint8Array.from(text, (each) => each.charCodeAt(0)));
    expect(samplesOf(study, 'log.ect')).toHaveLength(2);
    expect(readAs(study)).toContain('characters in Windows-1252');
  });

  it('old Macintosh line ends, and a last line without an end', () => {
    const study = studied('Time (s),v (V)\r0,1\r1,2');
    expect(samplesOf(study, 'log.v')).toEqual([1, 2]);
  });

  it('a first line that names the delimiter', () => {
    const study = studied('sep=;\nTime (s);v (V)\n0;1,5\n1;2,5\n');
    expect(samplesOf(study, 'log.v')).toEqual([1.5, 2.5]);
  });

  it('no heading: columns are numbered', () => {
    const study = studied(
      '0.0,780.5\n0.1,790.5\n',
      'time: column 1\nchannels:\n  rpm: {column: column 2, unit: rpm}\n',
    );
    expect(samplesOf(study, 'log.rpm')?.map((each) => Math.round(each * 10) / 10)).toEqual([780.5, 790.5]);
  });

  it('a scale and an offset, as a probe and a transducer have them', () => {
    const lines =
      'channels:\n  starter: {column: "A (V)", scale: 100 A/V}\n  pressure: {column: "B (V)", scale: 500 psi/V, offset: -250 psi, signal: fuel_pressure}\n';
    const study = studied('Time (s),A (V),B (V)\n0,1.5,0.5\n1,2,0.62\n', lines);
    expect(said(study)).toEqual([]);
    expect(samplesOf(study, 'log.starter')).toEqual([150, 200]);
    expect(samplesOf(study, 'log.pressure')?.map((each) => Math.round(each * 1e9) / 1e9)).toEqual([0, 60]);
  });

  it('how surely a scale and an offset are known goes into what is read', () => {
    const text =
      'diag: 1\ncase: A\ntools:\n  probe: {accuracy: 1 A}\n---\ncapture: Starter\nas: log\ntool: probe\nfile: log.csv\nchannels:\n  starter: {column: "A (V)", scale: 100 ± 2 A/V, offset: 1 ± 0.5 A}\n---\ncheck: Peak\nlet:\n  most: max(log.starter)\n  swing: max(log.starter) - min(log.starter)\n';
    const study = checkCase(text, undefined, filesOf({ 'log.csv': 'Time (s),A (V)\n0,1.5\n1,2\n' }));
    expect(said(study)).toEqual([]);
    const [most, swing] = study.computed.map(({ value }) =>
      value.kind === 'one' ? value.amount : undefined,
    );
    if (most === undefined || swing === undefined) expect.fail('no values');
    // 2 V · (100 ± 2) A/V + (1 ± 0.5) A, and the probe's 1 A, in quadrature; what is common cancels in the swing.
    expect(most.si).toBe(201);
    expect(halfWidth(most)).toBeCloseTo(Math.hypot(4, 0.5, 1), 12);
    expect(swing.si).toBe(50);
    expect(halfWidth(swing)).toBeCloseTo(1, 12);
  });

  it('a known-good capture in a reference', () => {
    const text =
      'diag: 1\ncase: A\n---\nreference: Known good\nas: good\nsource: own measurement on van 15\nfile: log.csv\n---\ncheck: Swing\nas: swing\nlet:\n  high: max(good.front)\n';
    const study = checkCase(text, undefined, filesOf({ 'log.csv': 'Time (s),front (V)\n0,0.1\n1,0.8\n' }));
    expect(said(study)).toEqual([]);
    expect(samplesOf(study, 'good.front')).toEqual([0.1, 0.8]);
    expect(study.computed[0]?.value).toMatchObject({ amount: { si: 0.8 } });
  });
});

describe('a file that can be read in two ways', () => {
  it('is shown in both, and the author is asked', () => {
    const study = studied('1,5\n2,5\n3,7\n');
    expect(said(study)).toEqual([
      'capture-two-readings: The line `1,5` of `log.csv` can be read in two ways: (1) one column, decimal comma: `1.5`; (2) 2 columns, parted by commas, decimal point: `1`, `5`. Say which with `format`.',
    ]);
    const titles = study.findings[0]?.diagnostic.fixes.map((each) => each.title);
    expect(titles).toEqual([
      'Write `format: {delimiter: semicolon, decimal: comma, heading rows: 0}`',
      'Write `format: {delimiter: comma, decimal: point, heading rows: 0}`',
    ]);
  });

  it('is read as the author says', () => {
    const lines = 'format: {delimiter: comma, decimal: point, heading rows: 0}\ntime: column 1\n';
    expect(samplesOf(studied('1,5\n2,5\n3,7\n', lines), 'log.column_2')).toEqual([5, 5, 7]);
  });

  it('may have thousands or decimals behind its commas', () => {
    const study = studied('Time (s)\trpm\n1\t1,234\n2\t1,240\n');
    expect(said(study)).toEqual([
      'capture-two-readings: The line `1\t1,234` of `log.csv` can be read in two ways: (1) 2 columns, parted by tabs, decimal point: `1`, `1234`; (2) 2 columns, parted by tabs, decimal comma: `1`, `1.234`. Say which with `format`.',
    ]);
  });

  it('is not one where the heading tells the columns', () => {
    const study = studied(
      'time,rpm\n0,780\n1,790\n',
      'time: {column: time, unit: s}\nchannels:\n  rpm: {column: rpm}\n',
    );
    expect(said(study)).toEqual([]);
    expect(samplesOf(study, 'log.rpm')).toEqual([780, 790]);
  });

  it('is one where commas part more columns than have names, and may be decimal marks', () => {
    const torn = 'Time (s),v (V)\n0,1,0,12\n0,2,0,80\n';
    const study = studied(torn);
    expect(said(study)).toEqual([
      'capture-names-run-out: The line `0,1,0,12` of `log.csv` has 4 columns, and its heading names 2. If its commas are decimal marks, they cannot part the columns, too: export it with semicolons, with tabs or with decimal points. If commas do part the columns, say so: `format: {delimiter: comma}`.',
    ]);
    expect(study.findings[0]?.diagnostic.fixes.map((each) => each.title)).toEqual([
      'Write `format: {delimiter: comma, decimal: point, heading rows: 1}`',
    ]);
    expect(samplesOf(studied(torn, 'format: {delimiter: comma}\n'), 'log.v')).toEqual([1, 2]);
    expect(said(studied('Time (s),v (V)\n0,1,5\n0,2,6\n'))).toEqual([
      expect.stringMatching(/^capture-names-run-out: .* has 3 columns, and its heading names 2\./),
    ]);
  });

  it.each([
    ['a decimal point says that commas part', 'Time (s),v (V)\n0.1,1,5\n0.2,2,6\n'],
    ['names may be left empty', 'Time (s),v (V),,\n0,1,0,12\n0,2,0,80\n'],
    ['more are unnamed than could be decimals', 'Time (s),v (V)\n0,1,0,12,4\n1,2,0,80,4\n'],
    ['each line ends with a comma', 'Time (s),v (V),\n0,1,\n1,2,\n'],
    ['the file says itself what parts', 'sep=,\nTime (s),v (V)\n0,1,5\n1,2,6\n'],
  ])('is not one where %s', (_, file) => {
    expect(said(studied(file)).filter((each) => each.startsWith('capture-names-run-out'))).toEqual([]);
  });

  it('takes the fix as it is offered', () => {
    const text = caseWith('', '');
    const files = filesOf({ 'log.csv': 'Zeit;v\ns;V\n0;1,5\n1;2,5\n' });
    const study = checkCase(text, undefined, files);
    const { diagnostic } = study.findings[0] ?? {};
    const [edit] = diagnostic?.fixes[0]?.edits ?? [];
    const start = study.file.stream.starts[1] ?? 0;
    if (edit === undefined) throw new Error('No fix is offered.');
    const fixed = text.slice(0, start + edit.span.start) + edit.newText + text.slice(start + edit.span.end);
    const again = checkCase(fixed, undefined, files);
    expect(said(again)).toEqual([]);
    expect(samplesOf(again, 'log.v')).toEqual([1.5, 2.5]);
  });
});

import { describe, expect, it } from 'vitest';
import { checkCharts } from '../../core/chart/checkCharts.ts';
import { allCodes } from '../../core/diagnostics/pages.ts';
import { catalogue } from '../../core/diagnostics/rows.ts';
import { message } from '../../core/diagnostics/words.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { caseWith, exampleCharts, rows } from './exampleCharts.ts';

const sensors = `capture: Sensors
as: o2
state: warm idle
rows: |
${rows(
  ['time', 'front', 'map'],
  ['s', 'V', 'kPa'],
  20,
  0.1,
  (t) => Math.sin(t),
  (t) => 30 + t,
)}
channels:
  front: {column: front, signal: o2_b1s1}
  map: {column: map}
`;

const readings = `readings: Warm
as: warm
state: warm idle
values:
  rpm: 780 rpm
  compression: {1: 181 psi, 2: 178 psi, 3: 180 psi, 4: 179 psi}
  running_compression: {1: 60 psi, 2: not taken, 3: 61 psi, 4: 59 psi}
`;

/** What is found in the last cell: the code, the text that it stands at, and what is said. */
function found(...cells: readonly string[]): string[] {
  const study = checkCharts(checkCase(caseWith(...cells)));
  const last = study.file.cells.length - 1;
  const text = study.file.cells[last]?.raw.text ?? '';
  return (study.cellFindings[last] ?? []).map(({ diagnostic }) => {
    const { code, span } = diagnostic;
    return `${code} at “${text.slice(span.start, span.end)}”: ${message(diagnostic)}`;
  });
}

describe('a chart that cannot be drawn says why', () => {
  it('names the nearest kind', () => {
    expect(found(sensors.replace('rows:', 'chart: swiching\nrows:'))).toEqual([
      expect.stringMatching(/^unknown-word at “swiching”: .*Did you mean `switching`/),
    ]);
  });

  it('has nothing to draw', () => {
    expect(found(readings.replace('values:', 'chart: trims\nvalues:'))).toEqual([
      'nothing-to-plot at “trims”: Nothing here can be drawn as `trims`. It needs a short-term and a long-term trim (`stft_b1`, `ltft_b1`) in the same state or log, with the air flow (`maf`).',
    ]);
  });

  it.each(['trims', 'switching', 'trace', 'crank', 'scatter', 'curve', 'compare'])(
    'as %s, where the values are of another sort',
    (kind) => {
      expect(
        found(readings.replace('values:', `chart: ${kind}\nvalues:`).replace(': not taken', ': 58 psi')),
      ).toEqual([expect.stringMatching(new RegExp(`^nothing-to-plot at “${kind}”: .* It needs .`))]);
    },
  );

  it('stays silent while its values are still to be measured', () => {
    const blank = `readings: Two loads
chart: trims
states:
  idle: warm idle
  drive: cruise
table: |
  reading  idle  drive  unit
  maf      -     -      g/s
  stft_b1  -     -      %
  ltft_b1  -     -      %
`;
    expect(found(blank)).toEqual([]);
  });

  it('says what could not be computed, where nothing else does', () => {
    const pressure = `capture: Half a turn
as: one
chart: crank
rows: |
${rows(['time', 'pressure'], ['s', 'kPa'], 40, 0.001, (t) => 100 + t)}
channels:
  pressure: {column: pressure, unit: kPa gauge}
`;
    expect(found(pressure)).toEqual([
      expect.stringMatching(
        /^chart-not-computed at “crank”: There is no chart, since `crank_angle\(one\.pressure\)` cannot be computed: fewer than two compression towers/,
      ),
    ]);
  });

  it('tells once what stood in for a barometer, however many events are ticked', () => {
    const example = exampleCharts().find(({ name }) => name === 'crank');
    const { findings } = checkCase(example?.text ?? '');
    const codes = findings.map(({ diagnostic }) => diagnostic.code);
    expect(codes).toEqual(['standard-barometer']);
  });

  it('names a channel that is not there, with the nearest', () => {
    expect(found(sensors, 'chart: Front\nkind: trace\nplot:\n  - o2.frnt\n')).toEqual([
      expect.stringMatching(/“(o2\.)?frnt”: .*front/),
    ]);
  });

  it('is told once where an entry is of the wrong sort', () => {
    expect(
      found(sensors, readings, 'chart: Front\nkind: trace\nplot:\n  - o2.front\n  - warm.rpm\n'),
    ).toEqual([
      'not-plotted at “warm.rpm”: `warm.rpm` is a single value in rpm (rotational speed), and `trace` draws the samples of a capture. Take it out, or give it a chart of its own.',
    ]);
  });

  it.each([
    ['compare', 'o2.front', 'o2.map'],
    ['cylinders', 'warm.compression', 'warm.rpm'],
  ])('does not mix units: %s', (kind, first, second) => {
    const texts = found(
      sensors,
      readings,
      `chart: Both\nkind: ${kind}\nplot:\n  - ${first}\n  - ${second}\n`,
    );
    expect(texts).toEqual([expect.stringMatching(/^(mixed-units|not-plotted) at “(o2\.map|warm\.rpm)”/)]);
  });

  it('tells a mark that has no place on the axes', () => {
    expect(
      found(sensors, 'chart: Front\nkind: trace\nplot:\n  - o2.front\nmark:\n  - 14.7 psi gauge\n'),
    ).toEqual([
      "mark-not-on-chart at “14.7 psi gauge”: The mark `14.7 psi gauge` is in psi gauge (gauge pressure), and the chart's axes are in V (voltage) and s (time). Write it in one of these units.",
    ]);
  });

  it('tells a limit that is upside down where it stands', () => {
    expect(
      found(sensors, 'chart: Front\nkind: trace\nplot:\n  - o2.front\nmark:\n  - 0.8 .. 0.2 V\n'),
    ).toEqual([expect.stringMatching(/^range-upside-down at “0\.8 \.\. 0\.2 V”/)]);
  });

  it('asks for the kind where it cannot be seen', () => {
    expect(found(readings, 'chart: Speed\nplot:\n  - warm.rpm\n')).toEqual([
      expect.stringMatching(/^chart-kind-missing at “Speed”/),
    ]);
  });

  it.each([
    ['a series', 'o2.front', 'trace'],
    ['values by cylinder', 'warm.compression', 'cylinders'],
  ])('needs no kind for %s', (_, plot) => {
    expect(found(sensors, readings, `chart: One\nplot:\n  - ${plot}\n`)).toEqual([]);
  });
});

describe('findings of charts', () => {
  it('stay the very same list while nothing of the chart changes', () => {
    const cells = [sensors, readings, 'chart: Speed\nkind: trace\nplot:\n  - warm.rpm\n'];
    const before = checkCharts(checkCase(caseWith(...cells)));
    const now = checkCharts(checkCase(caseWith(...cells).replace('Charts of', 'Chart of'), before));
    const last = cells.length;
    expect(before.cellFindings[last]).toHaveLength(1);
    expect(now.cellFindings[last]).toBe(before.cellFindings[last]);
  });

  it('leave a case without charts as it is', () => {
    const study = checkCase(caseWith(readings));
    expect(checkCharts(study)).toBe(study);
  });

  it.each([
    'nothing-to-plot',
    'chart-not-computed',
    'chart-kind-missing',
    'not-plotted',
    'mixed-units',
    'mark-not-on-chart',
  ] as const)('%s has a page', (code) => {
    expect(allCodes()).toContain(code);
    expect(catalogue[code].why).not.toBe('');
  });
});

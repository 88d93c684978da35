import { describe, expect, it } from 'vitest';
import { inMemory } from '../../core/recording/files.ts';
import { noFormat } from '../../core/recording/layout.ts';
import { captureFromFile } from '../../core/service/captureFromFile.ts';
import { resultOf, said, samplesOf, studied, timesOf } from './caseFiles.ts';

/** Two sensors, each with its own time: the front at ten samples a second, the rear at four and for half as long. */
const front = Array.from(
  { length: 40 },
  (_, i) => [i / 10, Math.round((0.45 + 0.4 * Math.sin(i)) * 100) / 100] as const,
);
const rear = Array.from({ length: 8 }, (_, i) => [0.05 + i / 4, 0.6 + i / 100] as const);
const heading = 'front time (s),front (V),rear time (s),rear (V)\n';
const log = heading + front.map(([t, v], i) => `${t},${v},${rear[i]?.join(',') ?? ','}\n`).join('');
const channels =
  'time: front time (s)\nchannels:\n  front: front (V)\n  rear: {column: "rear (V)", time: "rear time (s)"}\n';

const times = (of: readonly (readonly [number, number])[]): number[] => of.map(([t]) => t);
const values = (of: readonly (readonly [number, number])[]): number[] => of.map(([, v]) => v);

describe('channels with a time each', () => {
  it('are read by their own time, in full', () => {
    const study = studied(log, channels);
    expect(said(study)).toEqual([]);
    expect(timesOf(study, 'log.front')).toEqual(times(front));
    expect(timesOf(study, 'log.rear')).toEqual(times(rear));
    expect(samplesOf(study, 'log.rear')).toEqual(values(rear));
    expect(study.memo.names.cells[1]?.readAs?.slice(1)).toEqual([
      'time from `front time (s)`, in s',
      '`rear`: time from `rear time (s)`, in s',
    ]);
  });

  it('are cut by time, picked by a condition, and brought together by resampling', () => {
    const more =
      '---\ncheck: Both\nas: both\nlet:\n' +
      '  cut: mean(log.rear from 0.3 s to 1 s)\n' +
      '  high: count(log.rear where (log.rear > 0.62 V))\n' +
      '  beside: max(log.rear where (resample(log.front, log.rear) > 0.45 V))\n' +
      '  apart: mean(log.rear - resample(log.front, log.rear))\n';
    const study = studied(log, channels, more);
    expect(said(study)).toEqual([]);
    const at = (t: number): number => {
      const i = Math.floor(t * 10 + 1e-9);
      const [a, b] = [front[i]?.[1] ?? Number.NaN, front[i + 1]?.[1] ?? Number.NaN];
      return a + (b - a) * (t * 10 - i);
    };
    const mean = (of: readonly number[]): number => of.reduce((sum, each) => sum + each, 0) / of.length;
    const si = (name: string): unknown => {
      const value = resultOf(study).values[name];
      return value !== undefined && 'value' in value ? value.value : undefined;
    };
    expect(si('both.cut')).toBeCloseTo(mean(values(rear.filter(([t]) => t >= 0.3 && t <= 1))), 9);
    expect(si('both.high')).toBe(rear.filter(([, v]) => v > 0.62 + 1e-9).length);
    expect(si('both.beside')).toBeCloseTo(Math.max(...values(rear.filter(([t]) => at(t) > 0.45))), 9);
    expect(si('both.apart')).toBeCloseTo(mean(rear.map(([t, v]) => v - at(t))), 9);
  });

  it('do not pair sample by sample', () => {
    const more = '---\ncheck: Both\nlet:\n  apart: log.rear - log.front\n';
    expect(said(studied(log, channels, more))).toEqual([
      'unlike-captures: These samples were taken at different moments, those of `log, rear time (s)` and those of `log`. Bring one to the other’s times with `resample(x, like)` first.',
    ]);
  });

  it('pair where their times are the same all along', () => {
    const same = `t1 (s),a (V),t2 (s),b (V)\n${front.map(([t, v]) => `${t},${v},${t},${t}\n`).join('')}`;
    const lines = 'time: t1 (s)\nchannels:\n  a: a (V)\n  b: {column: b (V), time: t2 (s)}\n';
    const study = studied(same, lines, '---\ncheck: Both\nas: both\nlet:\n  sum: max(log.a + log.b)\n');
    expect(said(study)).toEqual([]);
    const sum = resultOf(study).values['both.sum'];
    expect(sum !== undefined && 'value' in sum ? sum.value : sum).toBeCloseTo(
      Math.max(...front.map(([t, v]) => v + t)),
      12,
    );
  });

  it('are recognised where the cell names no channels, and that is shown', () => {
    const study = studied(log);
    expect(said(study)).toEqual([
      'capture-recognised: `log.csv` was read so: each channel by the time in front of it: `rear (V)` by `rear time (s)`.',
    ]);
    expect(timesOf(study, 'log.rear')).toEqual(times(rear));
    expect(study.readings.map((each) => each.fullName)).toEqual(['log.front', 'log.rear']);
  });

  it('are warned of where a channel is read by another’s time, with the way out', () => {
    const study = studied(log, 'time: front time (s)\nchannels:\n  rear: rear (V)\n');
    expect(said(study)).toEqual([
      'channel-by-other-time: `rear` stands behind `rear time (s)` in the file and is read by `front time (s)`, whose moments are other ones. Say whose they are: `time: rear time (s)` with the channel, or `time: front time (s)` if that is meant.',
    ]);
    expect(study.findings[0]?.diagnostic.fixes[0]?.edits[0]?.newText).toBe(
      '{column: "rear (V)", time: "rear time (s)"}',
    );
    const meant = studied(log, 'channels:\n  rear: {column: rear (V), time: front time (s)}\n');
    expect(said(meant)).toEqual([]);
  });

  it('are proposed by the import', () => {
    const content = inMemory(new TextEncoder().encode(log));
    const made = captureFromFile({
      file: 'log.csv',
      content,
      format: noFormat,
      taken: new Set(),
      at: undefined,
    });
    if ('why' in made) throw new Error(made.why);
    expect(made.cells[0]).toContain(
      'time: front time (s)\nchannels:\n  front: front (V)\n  rear: {column: "rear (V)", time: "rear time (s)"}',
    );
  });

  it('may have clocks: all of them count from the first of all', () => {
    const clocks = 'time a,a (V),time b,b (V)\n23:59:59.9,1,00:00:00.15,3\n00:00:00.4,2,00:00:00.65,4\n';
    const study = studied(clocks);
    expect(timesOf(study, 'log.a')).toEqual([0, 0.5]);
    expect(timesOf(study, 'log.b')).toEqual([0.25, 0.75]);
    const behind = studied(
      clocks,
      'channels:\n  b: {column: b (V), time: time b}\n  a: {column: a (V), time: time a}\n',
    );
    expect(timesOf(behind, 'log.b')).toEqual([0.25, 0.75]);
  });

  it('may all have their own: no time of the capture is missed', () => {
    const odd = log.replace('front time (s)', 'x1').replace('rear time (s)', 'x2');
    const lines =
      'channels:\n  front: {column: front (V), time: {column: x1, unit: s}}\n  rear: {column: rear (V), time: {column: x2, unit: ms}}\n';
    const study = studied(odd, lines);
    expect(said(study)).toEqual([]);
    expect(timesOf(study, 'log.rear')?.[1]).toBeCloseTo(0.0003, 12);
  });

  it('tell what is broken in each, once', () => {
    const broken = `${heading}0,0.1,0.05,0.6\n0.1,0.2,,0.7\n0.2,ERR,0.3,0.8\n0.3,0.4\n0.4,0.5,,\n`;
    expect(said(studied(broken, channels))).toEqual([
      'capture-lines-refused: In `log.csv` 1 line and 2 values were not read; 4 rows were. Line 4: `ERR` under `front (V)` is no number. Line 5 has 2 columns and the heading 4: `0.3,0.4`. Line 3 has no time under `rear time (s)`.',
    ]);
  });

  it('tell of a time of their own that runs backwards; the others stay', () => {
    const back = `${heading}0,0.1,0.5,0.6\n0.1,0.2,0.4,0.7\n`;
    const study = studied(back, channels);
    expect(said(study)).toEqual([
      'time-runs-back: In line 3 of `log.csv` the time goes back to 0.4. Put the rows in order, or cut the capture where its clock was set.',
    ]);
    expect(samplesOf(study, 'log.front')).toEqual([0.1, 0.2]);
    expect(samplesOf(study, 'log.rear')).toBeUndefined();
  });

  it('may stand in the case itself', () => {
    const rows =
      'rows: |\n  ta   a    tb   b\n  0 s  1 V  0.1 s  3 V\n  1 s  2 V  -  -\ntime: ta\nchannels:\n  a: a\n  b: {column: b, time: tb}\n';
    const study = studied('', '', `---\ncapture: By hand\nas: hand\n${rows}`);
    expect(timesOf(study, 'hand.a')).toEqual([0, 1]);
    expect(timesOf(study, 'hand.b')).toEqual([0.1]);
  });

  it('a counter of seconds is no channel’s time', () => {
    const counted = `Time (s),rpm,Time since start (s),ect (°C)\n0,780,100,80\n1,790,101,80.5\n2,785,102,81\n`;
    const study = studied(counted);
    expect(said(study)).toEqual([]);
    expect(timesOf(study, 'log.ect')).toEqual([0, 1, 2]);
  });
});

import { describe, expect, it } from 'vitest';
import { chartOf } from '../../core/chart/chartOf.ts';
import { toVegaLite } from '../../core/chart/draw.ts';
import type { Drawing } from '../../core/chart/drawing.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { filesOf, said } from '../recording/caseFiles.ts';

/** A front sensor at a thousand samples a second for a minute, and a rear one at ten for half of it, each with its time. */
const log = ['front time (s),front (V),rear time (s),rear (V)'];
for (let i = 0; i < 60_000; i++) {
  const rear = i < 300 ? `${(i / 10).toFixed(1)},${(0.65 + 0.01 * Math.sin(i)).toFixed(4)}` : ',';
  log.push(
    `${(i / 1000).toFixed(3)},${i === 31_416 ? 1.05 : (0.45 + 0.4 * Math.sin(i / 300)).toFixed(4)},${rear}`,
  );
}
const files = filesOf({ 'log.csv': `${log.join('\n')}\n` });

function drawn(chart: string): Drawing {
  const text = `diag: 1\ncase: A\n---\ncapture: Log\nas: log\nstate: cruise\nfile: log.csv\ntime: front time (s)\nchannels:\n  front: {column: front (V), signal: o2_b1s1}\n  rear: {column: rear (V), time: rear time (s), signal: o2_b1s2}\n---\nchart: C\n${chart}`;
  const study = checkCase(text, undefined, files);
  expect(said(study)).toEqual([]);
  const asked = chartOf(study, 2);
  if (asked === undefined || 'unclear' in asked) throw new Error('No chart is asked for.');
  const { drawing, diagnostics } = toVegaLite(asked.chart, asked.data);
  expect(diagnostics).toEqual([]);
  if (drawing === undefined) throw new Error('Nothing is drawn.');
  return drawing;
}

/** The first and the last moment, and the greatest value, of each line. */
const lines = ({ frames }: Drawing) =>
  frames.flatMap(({ layers }) =>
    layers.flatMap((each) => {
      if (each.kind !== 'line') return [];
      const there = [...each.x].filter((_, i) => !Number.isNaN(each.y[i] ?? Number.NaN));
      const top = Math.max(...each.y.filter((y) => !Number.isNaN(y)));
      return [{ points: there.length, from: Math.min(...there), to: Math.max(...there), top }];
    }),
  );

describe('channels with a time each, drawn', () => {
  it.each(['trace', 'switching'])('%s: each at its own moments, decimated with its extremes', (kind) => {
    const [front, rear] = lines(drawn(`kind: ${kind}\nplot:\n  - log.front\n  - log.rear\n`));
    expect(front).toMatchObject({ from: 0, to: 59.999, top: 1.05 });
    expect(front?.points).toBeLessThan(10_000);
    expect(rear).toMatchObject({ from: 0, to: 29.9 });
    expect(rear?.points).toBeLessThanOrEqual(300);
  });

  it('compare: both lines over the time that both have', () => {
    const [front, rear, more] = lines(drawn('kind: compare\nplot:\n  - log.front\n  - log.rear\n'));
    expect(more).toBeUndefined();
    for (const line of [front, rear]) {
      expect(line?.points).toBeGreaterThan(100);
      expect(line?.to).toBeLessThanOrEqual(30);
    }
  });
});

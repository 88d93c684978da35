import { describe, expect, it } from 'vitest';
import { chartKindNames } from '../../core/casefile/kinds/chartKinds.ts';
import type { Drawing, Layer } from '../../core/chart/drawing.ts';
import { writeMarkup } from '../../core/report/html/markup.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { caseResult, type ValueResult } from '../../core/study/results.ts';
import { drawChart } from '../../extension/charts/drawChart.ts';
import { askedIn, drawnIn, type Whole, wholeIn } from './drawExample.ts';
import { exampleCharts } from './exampleCharts.ts';

const examples = exampleCharts();

const example = (name: string): Whole => {
  const found = examples.find((each) => each.name === name);
  if (found === undefined) throw new Error(`There is no example ${name}.`);
  return wholeIn(found.text, found.cell);
};

const layers = <K extends Layer['kind']>(
  { frames }: Drawing,
  kind: K,
  frame = 0,
): Extract<Layer, { kind: K }>[] =>
  (frames[frame]?.layers ?? []).filter((each): each is Extract<Layer, { kind: K }> => each.kind === kind);

describe('an example of every kind', () => {
  it('is there', () => {
    const kinds = new Set(examples.map(({ text, cell }) => askedIn(text, cell).chart.kind));
    expect([...kinds].sort()).toEqual([...chartKindNames].sort());
  });

  it.each(examples)('$name is drawn, and nothing is wrong with it', ({ text, cell }) => {
    const { drawing, diagnostics } = drawnIn(text, cell);
    expect(diagnostics).toEqual([]);
    expect(drawing?.summary.length).toBeGreaterThan(0);
    expect(drawing?.table.rows.length).toBeGreaterThan(0);
    for (const { figures } of drawing?.table.rows ?? []) {
      expect(figures.length).toBe(drawing?.table.columns.length);
    }
  });

  it.each(examples)('$name is the same specification as was kept', async ({ name, text, cell }) => {
    const { spec } = wholeIn(text, cell);
    await expect(`${JSON.stringify(spec.spec, undefined, 1)}\n`).toMatchFileSnapshot(
      `kept/${name.replace(/\W+/g, '-')}.json`,
    );
  });

  it.each(examples)('$name is the same drawing as was kept', async ({ name, text, cell }) => {
    const { spec } = wholeIn(text, cell);
    const drawn = writeMarkup(drawChart(spec)).replace(/></g, '>\n<');
    expect(drawn).toBe(writeMarkup(drawChart(spec)).replace(/></g, '>\n<'));
    await expect(`${drawn}\n`).toMatchFileSnapshot(`kept/${name.replace(/\W+/g, '-')}.svg`);
  });

  it.each(examples)('$name has no colour of its own: only the page’s variables', ({ text, cell }) => {
    const drawn = writeMarkup(drawChart(wholeIn(text, cell).spec));
    const paints = [...drawn.matchAll(/(?:fill|stroke)="([^"]*)"/g)].map(([, paint]) => paint);
    expect(paints.length).toBeGreaterThan(10);
    expect(paints.filter((paint) => !/^(none|var\(--chart-[a-z]+\))$/.test(paint ?? ''))).toEqual([]);
  });
});

describe('trims', () => {
  const { drawing } = example('trims');

  it('stand against the air flow, both banks in one frame', () => {
    expect([drawing.x.name, drawing.x.unit, drawing.frames.length]).toEqual(['air flow', 'g/s', 1]);
    expect(layers(drawing, 'dots').map(({ dots }) => dots.map(({ x, y }) => [x, round(y)]))).toEqual([
      [
        [4.4, 25],
        [12, 8],
        [22.4, 4],
      ],
      [
        [4.4, 21],
        [12, 6],
        [22.4, 3],
      ],
    ]);
  });

  it('are the sums that a check computes, with their uncertainty', () => {
    const found = examples.find(({ name }) => name === 'trims');
    const text = `${found?.text}---
check: Total trim
let:
  idle: total_trim(before.idle.stft_b1, before.idle.ltft_b1)
`;
    const { values } = caseResult(checkCase(text), 'a.diag');
    const dot = layers(drawing, 'dots')[0]?.dots[0];
    expect(values.idle?.value).toBe(round(dot?.y));
    expect(values.idle?.uncertainty).toBeCloseTo(dot?.plusMinus ?? Number.NaN, 9);
  });

  it('say what is usual and that it is common practice, and where they were taken', () => {
    expect(layers(drawing, 'band').map(({ from, to, says }) => [round(from), round(to), says])).toEqual([
      [-10, 10, 'usual: -10 .. 10 % (common practice)'],
    ]);
    expect(drawing.taken).toBe('before');
    expect(drawing.summary[0]).toBe(
      'Bank 1: 25.0 ± 1.4 % at 4.4 g/s (idle), 8 % at 12 g/s (fast), 4 % at 22.4 g/s (drive).',
    );
  });

  it('of a log are a cloud', () => {
    const { drawing: log } = wholeIn(logOfTrims);
    const [cloud] = layers(log, 'dots');
    expect(cloud?.shape).toBe('cloud');
    expect(cloud?.dots.map(({ x, y }) => [x, round(y)])).toEqual([
      [4, 25],
      [8, 14],
      [16, 7],
    ]);
  });
});

const logOfTrims = `diag: 1
case: A log
---
capture: Drive
as: log
chart: trims
rows: |
  time  maf  stft_b1  ltft_b1
  s     g/s  %        %
  0     4    8        17
  1     8    4        10
  2     16   2        5
channels:
  maf: {column: maf}
  stft_b1: {column: stft_b1}
  ltft_b1: {column: ltft_b1}
`;

describe('switching', () => {
  const found = examples.find(({ name }) => name === 'switching');
  const { drawing } = example('switching');

  it('shows the same figures that checks compute', () => {
    const text = `${found?.text}---
check: Front
let:
  rich: time_rich(o2.front)
  switches: crossings(o2.front, 0.45 V, 0.3 V)
  rate: switch_rate(o2.front, 0.45 V, 0.3 V)
`;
    const { values } = caseResult(checkCase(text), 'a.diag');
    const row = (name: string): string | undefined =>
      drawing.table.rows.find((each) => each.name === name)?.figures[0]?.number;
    const number = (of: ValueResult | undefined): number =>
      typeof of?.value === 'number' ? of.value : Number.NaN;
    expect(Number(row('time rich'))).toBeCloseTo(number(values.rich), 2);
    expect(Number(row('time lean'))).toBeCloseTo(100 - number(values.rich), 2);
    expect(Number(row('switches'))).toBe(number(values.switches));
    expect(Number(row('switches a second'))).toBeCloseTo(number(values.rate), 3);
    expect(layers(drawing, 'marks')[0]?.at.length).toBe(number(values.switches));
  });

  it('marks the level with its number, and both shares beside it', () => {
    expect(layers(drawing, 'rule').map(({ at, says }) => [at, says])).toEqual([[0.45, '0.45 V']]);
    expect(layers(drawing, 'note').map(({ says }) => says)).toEqual(['rich 51.3 %', 'lean 48.7 %']);
  });

  it('sets a limit where each frame has it, in volts and in millivolts', () => {
    const text = `diag: 1
case: Two recorders
---
capture: Front
as: a
rows: |
  time  front
  s     V
  0     0.1
  1     0.8
  2     0.2
channels:
  front: {signal: o2_b1s1}
---
capture: Rear
as: b
rows: |
  time  rear
  s     mV
  0     150
  1     700
  2     250
channels:
  rear: {signal: o2_b1s2}
---
chart: Both
kind: switching
plot:
  - a.front
  - b.rear
mark:
  - {mark: 300 .. 600 mV, label: usual}
`;
    const { drawing } = wholeIn(text);
    const bands = [0, 1].flatMap((frame) => layers(drawing, 'band', frame)).map(({ from, to }) => [from, to]);
    expect(bands).toEqual([
      [expect.closeTo(0.3, 12), expect.closeTo(0.6, 12)],
      [expect.closeTo(300, 9), expect.closeTo(600, 9)],
    ]);
    const least = drawing.table.rows.find(({ name }) => name === 'least');
    expect(least?.figures.map(({ number }) => number)).toEqual(['0.1', '0.15']);
    expect(least?.unit).toBe('V');
  });

  it('sets the rear sensor below the front one, on a scale of its own', () => {
    expect(drawing.frames.map(({ y }) => y.name)).toEqual([
      'Oxygen sensor 1 of bank 1',
      'Oxygen sensor 2 of bank 1',
    ]);
    expect(layers(drawing, 'marks', 1)).toEqual([]);
  });
});

describe('trace', () => {
  it('gives each unit a frame, one under the other over one time', () => {
    const { drawing, spec } = example('trace');
    expect(drawing.frames.map(({ y }) => `${y.name}, ${y.unit}`)).toEqual([
      'Engine speed, rpm',
      'Intake manifold pressure, kPa absolute',
      'Oxygen sensor 1 of bank 1, V',
      'Throttle position, %',
    ]);
    expect(drawing.x).toEqual({ name: 'time', unit: 's', from: 0, to: 59.75 });
    expect(Object.keys(spec.data)).toHaveLength(4);
  });

  it('lays channels of one unit into one frame, told apart by dash and label', () => {
    const { drawing, spec } = example('trace in one frame');
    expect(drawing.frames).toHaveLength(1);
    expect(layers(drawing, 'line').map(({ says, tone }) => [says, tone])).toEqual([
      ['before the catalyst', 'ink'],
      ['behind the catalyst', 'second'],
    ]);
    const dashed = JSON.stringify(spec.spec).match(/"strokeDash":\[[^\]]*\]/g);
    expect(dashed).toEqual(['"strokeDash":[7,3]']);
  });

  it('draws limits as bands with their numbers, and a moment across the frame', () => {
    const { drawing } = example('trace in one frame');
    expect(layers(drawing, 'band').map(({ from, to, says }) => [from, to, says])).toEqual([
      [0.2, 0.8, 'usual swing: 0.2 .. 0.8 V'],
    ]);
    expect(layers(drawing, 'rule').map(({ along, at, says }) => [along, at, says])).toEqual([
      ['x', 3, 'throttle opened: 3 s'],
    ]);
  });
});

describe('cylinders', () => {
  it('stand in firing order as dots with their uncertainty', () => {
    const { drawing } = example('cylinders');
    expect(drawing.x.ticks?.map(({ says }) => says)).toEqual(['1', '3', '4', '2']);
    expect(
      layers(drawing, 'dots')[0]?.dots.map(({ x, y, plusMinus }) => [x, round(y), round(plusMinus)]),
    ).toEqual([
      [1, 181, 3],
      [2, 129, 3],
      [3, 179, 3],
      [4, 178, 3],
    ]);
    expect(drawing.summary).toEqual([
      'Cranking compression: lowest 129 ± 3 psi gauge in cylinder 3, highest 181 ± 3 psi gauge in cylinder 1.',
    ]);
  });

  it('stand by number where the header does not say the order', () => {
    const found = examples.find(({ name }) => name === 'cylinders');
    const { drawing } = wholeIn((found?.text ?? '').replace('  firing order: 1-3-4-2\n', ''), found?.cell);
    expect([drawing.x.name, drawing.x.ticks?.map(({ says }) => says)]).toEqual([
      'cylinder, by number',
      ['1', '2', '3', '4'],
    ]);
  });
});

describe('crank', () => {
  const { drawing } = example('crank');
  const marked = example('crank with marks of its own').drawing;

  it('names the four strokes beneath and ticks the events alone', () => {
    expect(drawing.beneath.map(({ says }) => says)).toEqual([
      'expansion',
      'exhaust',
      'intake',
      'compression',
    ]);
    // 0 is the firing top dead centre: exhaust opens at 180 − 50, intake closes at 540 + 48 (references section 9).
    expect(marked.x.ticks?.map(({ at, says }) => [round(at), says])).toEqual([
      [130, 'exhaust opens'],
      [346, 'intake opens'],
      [372, 'exhaust closes'],
      [588, 'intake closes'],
    ]);
  });

  it('reads angles and events of a capture by itself, as its functions do', () => {
    const text = `${examples.find(({ name }) => name === 'crank')?.text}---
check: Events
let:
  events: valve_events(one.pressure)
  opens: events.evo
`;
    const value = caseResult(checkCase(text), 'a.diag').values.opens?.value;
    const opens = typeof value === 'number' ? value : Number.NaN;
    expect(drawing.x.ticks?.map(({ says }) => says)).toEqual(['EVO', 'IVO', 'EVC', 'IVC']);
    expect(drawing.x.ticks?.[0]?.at).toBeCloseTo(180 - opens, 9);
    const row = drawing.table.rows.find(({ name }) => name === 'exhaust opens');
    expect(Number(row?.figures[0]?.number)).toBeCloseTo(opens, 2);
    expect(row?.unit).toBe('°BBDC');
  });

  it('has a table of the events', () => {
    expect(marked.table.rows.map(({ name, figures, unit }) => [name, figures[0]?.number, unit])).toEqual([
      ['exhaust opens', '50', '°BBDC'],
      ['intake opens', '14', '°BTDC'],
      ['exhaust closes', '12', '°ATDC'],
      ['intake closes', '48', '°ABDC'],
    ]);
    expect(layers(marked, 'band').map(({ says }) => says)).toEqual(['back pressure: at most 3 kPa']);
  });

  it('says whose the events are, where two cylinders are drawn', () => {
    const found = examples.find(({ name }) => name === 'crank');
    const capture = /---\n(capture: [\s\S]*)$/.exec(found?.text ?? '')?.[1] ?? '';
    const both = (marks: string): string =>
      `${found?.text}---\n${capture.replace('as: one', 'as: two')}---\ncheck: Events\nas: valves\nlet:\n  own: valve_events(one.pressure)\n  other: valve_events(two.pressure)\n---\nchart: Both\nkind: crank\nplot:\n  - {plot: one.pressure, against: crank_angle(one.pressure), label: cylinder 1}\n  - {plot: two.pressure, against: crank_angle(two.pressure), label: cylinder 3}\nmark:\n${marks}`;
    const drawn = (marks: string): Drawing =>
      wholeIn(both(marks), both(marks).split('\n---\n').length - 1).drawing;
    const one = drawn('  - valves.other.evo\n  - valves.other.ivc\n');
    expect(one.x.name).toBe('events of cylinder 3; crank angle from the firing top dead centre');
    expect(one.x.ticks?.map(({ says }) => says)).toEqual(['EVO', 'IVC']);
    expect(one.table.rows.map(({ name }) => name)).toEqual(['evo, cylinder 3', 'ivc, cylinder 3']);
    const two = drawn('  - valves.own.evo\n  - valves.other.ivc\n');
    expect(two.x.name).toBe('crank angle from the firing top dead centre');
    expect(two.x.ticks?.map(({ says }) => says)).toEqual(['EVO, cylinder 1', 'IVC, cylinder 3']);
    expect(two.summary.at(-1)).toMatch(/^ivc, cylinder 3: [\d.]+ °ABDC, in compression\.$/);
  });

  it('lays the turns over each other from one top dead centre to the next', () => {
    const [line] = layers(drawing, 'line');
    const x = [...(line?.x ?? [])];
    const breaks = [...(line?.y ?? [])].filter((y) => Number.isNaN(y)).length;
    expect(breaks).toBe(2);
    expect(Math.min(...x)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...x)).toBeLessThanOrEqual(720);
  });
});

describe('compare', () => {
  it('lays captures so that their first rise stands at 0', () => {
    const { drawing } = example('compare');
    const [good, suspect] = layers(drawing, 'line');
    const firstRise = (line: typeof good): number => {
      const at = [...(line?.y ?? [])].findIndex((y) => y > 240);
      return line?.x[at] ?? Number.NaN;
    };
    // The captures begin 0.31 s and 0.44 s before their starters take current, a sample every 5 ms.
    expect(Math.abs(firstRise(good) - firstRise(suspect))).toBeLessThanOrEqual(0.005);
    expect(Math.abs(firstRise(good))).toBeLessThanOrEqual(0.005);
    expect([good?.says, suspect?.says]).toEqual(['known good', 'suspect']);
  });
});

describe('scatter and curve', () => {
  it('sets each sample against the one of the same moment', () => {
    const { drawing } = example('scatter');
    const dots = layers(drawing, 'dots')[0]?.dots ?? [];
    const opened = dots.filter(({ x }) => x > 60);
    expect(dots.length).toBeGreaterThan(100);
    expect(opened.length).toBeGreaterThan(5);
    expect(opened.every(({ y }) => y > 75)).toBe(true);
    // Both axes are called by what their signals mean.
    expect([drawing.x.name, drawing.frames[0]?.y.name]).toEqual([
      'Throttle position',
      'Intake manifold pressure',
    ]);
  });

  it('draws a curve straight between its points, with a reading on it', () => {
    const { drawing } = example('curve');
    expect([...(layers(drawing, 'line')[0]?.x ?? [])].map((each) => round(each))).toEqual([
      0, 20, 40, 60, 80, 100,
    ]);
    const reading = layers(drawing, 'dots').find(({ shape }) => shape === 'open')?.dots[0];
    expect(reading).toMatchObject({ says: 'measured' });
    expect([round(reading?.x), round(reading?.y), round(reading?.plusMinusX)]).toEqual([63, 0.93, 2]);
    expect([drawing.x.unit, drawing.frames[0]?.y.unit]).toEqual(['°C', 'kΩ']);
  });
});

function round(value: number | undefined, digits = 9): number {
  return Number((value ?? Number.NaN).toPrecision(digits));
}

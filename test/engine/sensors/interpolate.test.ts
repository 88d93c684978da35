import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { curveAt } from '../../../core/engine/sensors/curve.ts';
import { interpolate } from '../../../core/engine/sensors/interpolate.ts';
import type { Absent, Curve, One, Series, Value } from '../../../core/expression/value.ts';
import { halfWidth, measured } from '../../../core/quantity/amount.ts';
import type { Amount, Kind, QuantityType } from '../../../core/quantity/types.ts';
import { unitOf } from '../../../core/quantity/unit.ts';

function type(symbol: string, kind: Kind = 'none'): QuantityType {
  const unit = unitOf(symbol);
  if (unit === undefined) expect.fail(`no unit ${symbol}`);
  return { dimension: unit.dimension, kind, unit };
}

function one(si: number, of: QuantityType, plusMinus = 0): One {
  return { kind: 'one', type: of, amount: measured(si, 'meter', plusMinus) };
}

function why(value: Value): string {
  if (value.kind !== 'absent') expect.fail(`a value where none was expected: ${value.kind}`);
  return value.why;
}

const volts = type('V');
/** Volts to grams a second, an invented curve. */
const mafCurve: Curve = {
  kind: 'curve',
  xType: volts,
  yType: type('g/s'),
  x: [0.4, 1.1, 2.6],
  y: [0.002, 0.009, 0.055],
};

describe('a place on a curve', () => {
  const points = fc
    .uniqueArray(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 2, maxLength: 12 })
    .map((x) => x.sort((a, b) => a - b))
    .chain((x) =>
      fc.record({
        x: fc.constant(x),
        y: fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), {
          minLength: x.length,
          maxLength: x.length,
        }),
      }),
    );

  it('meets every point exactly and stays between its neighbours', () => {
    fc.assert(
      fc.property(points, fc.double({ min: 0, max: 1, noNaN: true }), (curve, share) => {
        // Neighbours so close that their slope overflows are no curve that anyone measured.
        fc.pre(curve.x.every((x, at) => at === 0 || x - (curve.x[at - 1] ?? 0) > 1e-9));
        for (const [at, x] of curve.x.entries()) {
          expect(curveAt(curve, x)?.y === curve.y[at]).toBe(true);
          const next = curve.x[at + 1];
          if (next === undefined) continue;
          const [low = 0, high = 0] = [curve.y[at] ?? 0, curve.y[at + 1] ?? 0].sort((a, b) => a - b);
          // Rounding must not carry the place past the next point, which may be the curve's end.
          const between = curveAt(curve, Math.min(next, x + share * (next - x)))?.y ?? Number.NaN;
          const rounding = 1e-9 * Math.max(Math.abs(low), Math.abs(high));
          expect(between).toBeGreaterThanOrEqual(low - rounding);
          expect(between).toBeLessThanOrEqual(high + rounding);
        }
      }),
    );
  });

  it('is nowhere outside, for no number, or on a curve without length', () => {
    expect(curveAt(mafCurve, 0.39)).toBeUndefined();
    expect(curveAt(mafCurve, 2.61)).toBeUndefined();
    expect(curveAt(mafCurve, Number.NaN)).toBeUndefined();
    expect(curveAt({ x: [1], y: [1] }, 1)).toBeUndefined();
    expect(curveAt({ x: [], y: [] }, 1)).toBeUndefined();
    expect(curveAt({ x: [1, 1], y: [1, 2] }, 1)).toBeUndefined();
  });

  it('has the steeper slope where two stretches meet', () => {
    expect(curveAt(mafCurve, 1.1)?.slope).toBeCloseTo(0.046 / 1.5, 12);
    expect(curveAt(mafCurve, 0.4)?.slope).toBeCloseTo(0.01, 12);
    expect(curveAt(mafCurve, 2.6)?.slope).toBeCloseTo(0.046 / 1.5, 12);
  });
});

describe('interpolate', () => {
  it('turns volts into grams a second, the half-width by the slope (arithmetic: halfway from 9 to 55 is 32)', () => {
    const flow = interpolate(mafCurve, one(1.85, volts, 0.01));
    if (flow.kind !== 'one') expect.fail(flow.kind);
    expect(flow.type).toBe(mafCurve.yType);
    expect(flow.amount.si).toBeCloseTo(0.032, 15);
    expect(flow.amount.spread.map((each) => each.source)).toEqual(['meter']);
    expect(halfWidth(flow.amount)).toBeCloseTo((0.01 * 0.046) / 1.5, 15);
  });

  it('takes a map member by member, and says why for those outside', () => {
    const flow = interpolate(mafCurve, {
      kind: 'members',
      by: 'state',
      type: volts,
      members: new Map<string, Amount | Absent>([
        ['idle', measured(0.4, 'a', 0)],
        ['drive', measured(3, 'b', 0)],
        ['fast', { kind: 'absent', status: 'not measured', why: 'not taken' }],
      ]),
    });
    if (flow.kind !== 'members') expect.fail(flow.kind);
    expect(flow.by).toBe('state');
    expect([...flow.members.keys()]).toEqual(['idle', 'drive', 'fast']);
    expect(flow.members.get('idle')).toMatchObject({ si: 0.002 });
    expect(flow.members.get('drive')).toMatchObject({ status: 'cannot compute' });
    expect(flow.members.get('fast')).toMatchObject({ status: 'not measured', why: 'not taken' });
  });

  const log = (samples: number[]): Series => ({
    kind: 'series',
    type: volts,
    capture: 'log',
    time: Float64Array.from(samples, (_, at) => at / 10),
    samples: Float64Array.from(samples),
    spread: [{ source: 'log', by: 0.02 }],
  });

  it('takes a series sample by sample; a missing sample stays missing', () => {
    const flow = interpolate(mafCurve, log([0.4, Number.NaN, 1.85, 0.75]));
    if (flow.kind !== 'series') expect.fail(flow.kind);
    expect(flow.capture).toBe('log');
    expect([...flow.samples].map((each) => Number(each.toPrecision(12)))).toEqual([
      0.002,
      Number.NaN,
      0.032,
      0.0055,
    ]);
    const by = flow.spread[0]?.by;
    if (by === undefined || typeof by === 'number') expect.fail('one half-width a sample');
    expect(by[3]).toBeCloseTo(0.0002, 12);
    expect(by[2]).toBeCloseTo((0.02 * 0.046) / 1.5, 12);
  });

  it('names the first sample outside', () => {
    expect(why(interpolate(mafCurve, log([0.5, 0.6, 0.1, 9])))).toBe(
      'At 0.2 s, 0.1 V is outside the curve, which runs from 0.4 V to 2.6 V; beyond its ends nothing is known. Keep the samples inside with `where`.',
    );
  });

  it('names the curve’s ends in its own unit', () => {
    const ect: Curve = {
      kind: 'curve',
      xType: type('°C', 'point'),
      yType: type('kΩ'),
      x: [273.15, 373.15],
      y: [32650, 678],
    };
    expect(why(interpolate(ect, one(393.15, type('°F', 'point'))))).toBe(
      '120 °C is outside the curve, which runs from 0 °C to 100 °C; beyond its ends nothing is known.',
    );
  });

  it('refuses another quantity or kind than the curve is entered with', () => {
    expect(why(interpolate(mafCurve, one(2, type('Hz'))))).toBe(
      'The curve is entered with voltage (V), and the value is frequency (Hz).',
    );
    const boost: Curve = {
      kind: 'curve',
      xType: type('kPa', 'absolute'),
      yType: volts,
      x: [1e4, 2.5e5],
      y: [0.2, 4.8],
    };
    expect(why(interpolate(boost, one(5e4, type('psi', 'gauge'))))).toBe(
      'The curve is entered with absolute values, and this one is gauge.',
    );
    expect(interpolate(boost, one(5e4, type('psi', 'open'))).kind).toBe('one');
  });

  it('passes on why a value is not there, and refuses what is no curve', () => {
    const missing: Value = { kind: 'absent', status: 'not measured', why: 'not taken' };
    expect(interpolate(mafCurve, missing)).toBe(missing);
    expect(interpolate(missing, one(1, volts))).toBe(missing);
    expect(why(interpolate(one(1, volts), one(1, volts)))).toContain('no curve');
    expect(why(interpolate(mafCurve, { kind: 'words', text: 'open' }))).toContain('number');
    expect(why(interpolate(mafCurve, undefined))).toContain('needed');
    expect(why(interpolate({ ...mafCurve, x: [1], y: [1] }, one(1, volts)))).toBe(
      'The curve needs at least two points.',
    );
  });
});

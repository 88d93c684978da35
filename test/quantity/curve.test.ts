import { describe, expect, it } from 'vitest';
import { type CurvePointText, parseCurve } from '../../core/quantity/parseCurve.ts';

const points = (...pairs: [string, string][]): CurvePointText[] => pairs.map(([x, y]) => ({ x, y }));

describe('curves', () => {
  it('are read in SI units, whatever the points’ order and units', () => {
    const { value, problems } = parseCurve(
      points(['1.1 V', '9 g/s'], ['400 mV', '2 g/s'], ['2.6 V', '0.055 kg/s']),
    );
    expect(problems).toEqual([]);
    expect(value?.x).toEqual([0.4, 1.1, 2.6]);
    expect(value?.y).toEqual([0.002, expect.closeTo(0.009, 15), 0.055]);
    expect(value?.xType.unit.symbol).toBe('V');
    expect(value?.yType.unit.symbol).toBe('g/s');
  });
  it('of temperature against resistance have points on the scale', () => {
    const { value } = parseCurve(points(['2.5 kohm', '20 °C'], ['300 ohm', '80 °C']));
    expect(value?.x).toEqual([300, 2500]);
    expect(value?.y).toEqual([353.15, 293.15]);
    expect(value?.yType.kind).toBe('point');
  });
  it.each([
    [points(['0.4 V', '2 ± 0.1 g/s'], ['1.1 V', '9 g/s']), 0, 'y', '2 g/s'],
    [points(['0.4 V', '2 g/s'], ['1.1 V', ' 9 g/s ± 5 %']), 1, 'y', '9 g/s'],
    [points(['0.4 V ± 20 mV', '2 g/s'], ['1.1 V', '9 g/s']), 0, 'x', '0.4 V'],
    [points(['0.4 V', '5 ± 2 %'], ['1.1 V', '9 %']), 0, 'y', '5 %'],
    [points(['0.4 +/- 0.02 V', '2 g/s'], ['1.1 V', '9 g/s']), 0, 'x', '0.4 V'],
  ] as const)('%j has a ± that is not used, and says so', (of, point, side, offer) => {
    const { value, problems } = parseCurve(of);
    expect(value?.x).toEqual([0.4, 1.1]);
    expect(problems.map((each) => [each.point, each.side, each.diagnostic.code])).toEqual([
      [point, side, 'curve-point-uncertain'],
    ]);
    const [edit] = problems[0]?.diagnostic.fixes[0]?.edits ?? [];
    const text = of[point]?.[side] ?? '';
    expect(edit && text.slice(0, edit.span.start) + edit.newText + text.slice(edit.span.end)).toBe(
      text.replace(text.trim(), offer),
    );
  });
  it.each([
    [points(), 0, 'x', 'curve-too-short'],
    [points(['1 V', '2 g/s']), 0, 'x', 'curve-too-short'],
    [points(['1 V', '2 g/s'], ['2 Hz', '3 g/s']), 1, 'x', 'curve-units-differ'],
    [points(['1 V', '2 g/s'], ['2 V', '3']), 1, 'y', 'curve-units-differ'],
    [points(['1 psi gauge', '2 V'], ['2 psi absolute', '3 V']), 1, 'x', 'curve-units-differ'],
    [points(['1 V', '2 g/s'], ['1000 mV', '3 g/s']), 1, 'x', 'curve-point-twice'],
    [points(['1,5 V', '2 g/s'], ['2 V', '3 g/s']), 0, 'x', 'decimal-comma'],
    [points(['1 V', 'lots'], ['2 V', '3 g/s']), 0, 'y', 'quantity-expected'],
  ] as const)('%j is refused', (of, point, side, code) => {
    const { value, problems } = parseCurve(of);
    expect(value).toBeUndefined();
    expect(problems.map((each) => [each.point, each.side, each.diagnostic.code])).toEqual([
      [point, side, code],
    ]);
  });
});

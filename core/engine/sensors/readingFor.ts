import { cannotCompute } from '../../expression/absent.ts';
import type { Curve, Value } from '../../expression/value.ts';
import { interpolate } from './interpolate.ts';

/**
 * A transfer curve read backwards: the volts, hertz or ohms that a meter should show for a flow, a temperature or a pressure.
 * The curve must go one way, else a value has more than one reading. Straight between its points; shapes, uncertainty and
 * errors are those of `interpolate`.
 */
export function readingFor(curve: Value | undefined, value: Value | undefined): Value {
  if (curve?.kind !== 'curve') return interpolate(curve, value);
  const turned = turnedCurve(curve);
  return turned === undefined
    ? cannotCompute(
        '`reading_for`: the curve turns back, so that one value has several readings. Check its rows.',
      )
    : interpolate(turned, value);
}

function turnedCurve({ xType, yType, x, y }: Curve): Curve | undefined {
  const falls = (y[1] ?? 0) < (y[0] ?? 0);
  const turnsBack = y.some((each, at) => {
    const before = y[at - 1];
    return before !== undefined && (falls ? each >= before : each <= before);
  });
  if (turnsBack) return undefined;
  const turned = { kind: 'curve', xType: yType, yType: xType } as const;
  return falls ? { ...turned, x: y.toReversed(), y: x.toReversed() } : { ...turned, x: y, y: x };
}

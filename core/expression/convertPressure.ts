import { add, scale, subtract } from '../quantity/amount.ts';
import { pressureChange } from '../quantity/convert.ts';
import { formatQuantity } from '../quantity/format.ts';
import type { Amount, Kind, QuantityType } from '../quantity/types.ts';
import { cannotCompute } from './absent.ts';
import { mapAmounts } from './combine.ts';
import type { Absent, Members, One, Series, Value } from './value.ts';

/** The barometer of what is converted, or of one of its states; or why there is none. */
export type BarometerOf = (state: string | undefined) => One | Absent;

/** A pressure counted from another zero, through the barometer; asked for only where it is needed. */
export function convertPressure(value: Value, from: Kind, to: QuantityType, barometer: BarometerOf): Value {
  const change = pressureChange(from, to.kind);
  const down = pressureChange(from, 'absolute');
  if (value.kind === 'absent') return value;
  if (change === undefined || down === undefined)
    return cannotCompute('the kind of the pressure is not known');
  const needed = change.barometer !== 0 || down.barometer !== 0;
  if (needed && value.kind === 'members' && value.by === 'state')
    return convertStates(value, from, to, barometer);
  const baro = needed ? barometer(undefined) : undefined;
  if (baro?.kind === 'absent') return baro;
  const zero = baro?.amount ?? nothing;
  const converted = mapAmounts(
    value,
    to,
    (of) => {
      if (down.own * of.si + down.barometer * zero.si < 0) return belowNothing(of, from, to, baro);
      const own = change.own === 1 ? of : scale(of, -1);
      if (change.barometer === 0) return own;
      return change.barometer === 1 ? add(own, zero) : subtract(own, zero);
    },
    () => change.own,
  );
  return converted.kind === 'series' ? withBarometer(converted, change.barometer, zero) : converted;
}

/** Each state's value through the barometer of that state. */
function convertStates(value: Members, from: Kind, to: QuantityType, barometer: BarometerOf): Value {
  const members = new Map<string, Amount | Absent>();
  let none: Absent | undefined;
  let some = false;
  for (const [state, amount] of value.members) {
    if (!('si' in amount)) {
      members.set(state, amount);
      continue;
    }
    const baro = barometer(state);
    if (baro.kind === 'absent') none ??= baro;
    else some = true;
    const one = convertPressure({ kind: 'one', type: value.type, amount }, from, to, () => baro);
    members.set(state, one.kind === 'one' ? one.amount : asAbsent(one));
  }
  // Where no state has a barometer, there is one reason for all of them.
  if (none !== undefined && !some) return none;
  return { ...value, type: to, members };
}

function asAbsent(value: Value): Absent {
  return value.kind === 'absent' ? value : cannotCompute('it is no number');
}

const nothing: Amount = { si: 0, spread: [] };

function belowNothing(of: Amount, from: Kind, to: QuantityType, baro: One | undefined): Absent {
  const pressure = formatQuantity(of.si, { ...to, kind: from });
  const barometer =
    baro === undefined ? '' : `, with a barometer of ${formatQuantity(baro.amount.si, baro.type)}`;
  return cannotCompute(`${pressure} ${from}${barometer} would be less than no pressure at all`);
}

/** The barometer's own uncertainty is common to all samples. */
function withBarometer(series: Series, sign: number, barometer: Amount): Series {
  if (sign === 0 || barometer.spread.length === 0) return series;
  const spread = new Map(series.spread.map(({ source, by }) => [source, by]));
  for (const { source, by } of barometer.spread) {
    const known = spread.get(source) ?? 0;
    spread.set(source, typeof known === 'number' ? known + sign * by : known.map((own) => own + sign * by));
  }
  const sorted = [...spread].sort(([a], [b]) => (a < b ? -1 : 1)).map(([source, by]) => ({ source, by }));
  return { ...series, spread: sorted };
}

import { fromSi } from '../quantity/convert.ts';
import { formatRange } from '../quantity/format.ts';
import { type Car, carOf } from '../rules/car.ts';
import { isOutside, measuredIn } from '../rules/measured.ts';
import { usualRange } from '../rules/usualRange.ts';
import type { Header } from '../study/header.ts';
import type { Reading, Study } from '../study/types.ts';
import type { Strip } from './blocks.ts';

/**
 * A reading's numbers that the rule found unusual for their state, drawn and said.
 * Empty where the rule said nothing: an impossible or a failed value is another matter and has its own finding.
 */
export function unusual(study: Study, reading: Reading): readonly Strip[] {
  const { cell, valueSpan } = reading;
  const spoken = (study.cellFindings[cell] ?? []).flatMap(({ diagnostic }) =>
    diagnostic.code === 'unusual-value' && diagnostic.span.start === valueSpan.start
      ? [diagnostic.facts]
      : [],
  );
  if (spoken.length === 0) return [];
  const car = carIn(study.memo.header.header);
  const beside = measuredIn(study.memo.names.cells[cell]?.readings ?? []);
  return measuredIn([reading]).flatMap((one) => {
    const usual = usualRange(one, car, beside);
    if (usual === undefined || !isOutside(one.si, one.halfWidth, usual.range)) return [];
    const { type } = one;
    const read = (si: number): number | undefined =>
      Number.isFinite(si) ? fromSi(si, type.unit, type.kind) : undefined;
    const { low, high } = usual.range;
    const meant = spoken.find((each) => each.name === one.name)?.meant;
    const ask = meant === undefined ? '' : `. The same number in ${meant} would be usual: is the unit right?`;
    const who = reading.value.kind === 'members' ? `${one.name}: ` : '';
    return [
      {
        low: read(low),
        high: read(high),
        value: fromSi(one.si, type.unit, type.kind),
        plusMinus: one.halfWidth / Math.abs(type.unit.factor),
        says: `${who}usual at ${usual.state}: ${formatRange(finite(low), finite(high), type)} (${usual.source})${ask}`,
      },
    ];
  });
}

/** What the header says of the car, read once for all readings of a case. */
function carIn(header: Header): Car {
  let car = cars.get(header);
  if (car === undefined) {
    car = carOf(header);
    cars.set(header, car);
  }
  return car;
}

const cars = new WeakMap<Header, Car>();

const finite = (si: number): number | undefined => (Number.isFinite(si) ? si : undefined);

import { diagnose } from '../../diagnostics/diagnostic.ts';
import { fromSi, toSi } from '../../quantity/convert.ts';
import { formatQuantity } from '../../quantity/format.ts';
import { scanQuantity } from '../../quantity/scan.ts';
import type { QuantityType, Unit } from '../../quantity/types.ts';
import type { Header } from '../../study/header.ts';
import type { Finding } from '../../study/types.ts';
import type { Span } from '../../text/span.ts';
import type { CaseRule, RuledCase } from '../rule.ts';

/** An odometer that shows less after the repair than before it. */
export const odometerRunsBack: CaseRule = {
  code: 'odometer-runs-back',
  check: (ruled) => {
    const shown = shownIn(ruled);
    if (!shown.some(({ isAfter }) => isAfter)) return [];
    const noted = notedIn(ruled.car.header);
    const found: Finding[] = [];
    for (const one of shown) {
      const before = one.isAfter ? firstFurther(one, noted, shown) : undefined;
      if (before === undefined) continue;
      const facts = { written: one.written, ...before };
      found.push({ cell: one.cell, diagnostic: diagnose('odometer-runs-back', one.span, facts) });
    }
    return found;
  },
};

/** What shows more before the repair: the header, or else the first cell that does. */
function firstFurther(one: Shown, noted: Noted | undefined, shown: readonly Shown[]) {
  if (noted !== undefined && isFurther(noted, one))
    return { before: formatQuantity(noted.metres, noted.type), where: 'in the header' };
  const more = shown.find((each) => !each.isAfter && isFurther(each, one));
  return more === undefined ? undefined : { before: more.written, where: `in cell ${more.cell + 1}` };
}

interface Noted extends Distance {
  readonly type: QuantityType;
}

/** The header's figure. */
function notedIn({ values }: Header): Noted | undefined {
  const value = values.get('vehicle.odometer')?.value;
  if (value?.kind !== 'one') return undefined;
  return { ...distanceOf(value.amount.si, value.type.unit), type: value.type };
}

/** m: a figure in whole miles or kilometres. */
const rounding = 1700;

const isFurther = (one: Distance, other: Distance): boolean =>
  one.metres - one.roundedBy > other.metres + other.roundedBy + rounding;

interface Distance {
  readonly metres: number;
  /** Half the place that a round figure may be rounded to: 129000 km is written of 128600 km, too. */
  readonly roundedBy: number;
}

interface Shown extends Distance {
  readonly cell: number;
  readonly written: string;
  readonly isAfter: boolean;
  readonly span: Span;
}

/** What cells of readings show, cell by cell. */
function shownIn({ moments, read }: RuledCase): readonly Shown[] {
  const shown: Shown[] = [];
  let last = -1;
  for (const { cell, when } of moments) {
    if (cell === last) continue;
    last = cell;
    const of = read(cell)?.cell;
    if (of?.kind !== 'readings' || of.odometer === undefined) continue;
    const { text, span } = of.odometer;
    const quantity = scanQuantity(text, 0)?.quantity;
    if (quantity === undefined || (when !== 'before' && when !== 'after')) continue;
    const metres = toSi(quantity.value, quantity.unit, 'none');
    shown.push({
      cell,
      ...distanceOf(metres, quantity.unit),
      written: text,
      isAfter: when === 'after',
      span,
    });
  }
  return shown;
}

function distanceOf(metres: number, unit: Unit): Distance {
  const figure = Math.round(fromSi(metres, unit, 'none'));
  let place = 1;
  while (place < roundest && figure !== 0 && figure % (10 * place) === 0) place *= 10;
  return { metres, roundedBy: place === 1 ? 0 : toSi(place / 2, unit, 'none') };
}

/** Nobody rounds further. */
const roundest = 1000;

import { diagnose } from '../../diagnostics/diagnostic.ts';
import { toSi } from '../../quantity/convert.ts';
import { formatQuantity } from '../../quantity/format.ts';
import { scanQuantity } from '../../quantity/scan.ts';
import type { Quantity } from '../../quantity/types.ts';
import type { Finding } from '../../study/types.ts';
import type { Span } from '../../text/span.ts';
import { eachCell, type KeptCells } from '../eachCell.ts';
import type { Moment } from '../moments.ts';
import type { CaseRule, RuledCase } from '../rule.ts';

/** An odometer that shows less after the repair than before it. */
export const odometerRunsBack: CaseRule = {
  code: 'odometer-runs-back',
  check: (ruled) => {
    const shown: Shown[] = [];
    for (const cell of ruled.once(readShown)) if (cell?.made !== undefined) shown.push(cell.made);
    if (!shown.some(({ isAfter }) => isAfter)) return [];
    const header = ruled.car.header.values.get('vehicle.odometer');
    const first: Shown[] =
      header?.value.kind === 'one'
        ? [
            {
              cell: -1,
              metres: header.value.amount.si,
              written: formatQuantity(header.value.amount.si, header.value.type),
              isAfter: false,
              span: header.valueSpan,
            },
          ]
        : [];
    const before = [...first, ...shown.filter(({ isAfter }) => !isAfter)];
    return shown.flatMap((one): Finding[] => {
      const more = one.isAfter ? before.find(({ metres }) => metres > one.metres + rounding) : undefined;
      if (more === undefined) return [];
      const where = more.cell < 0 ? 'in the header' : `in cell ${more.cell + 1}`;
      const facts = { written: one.written, before: more.written, where };
      return [{ cell: one.cell, diagnostic: diagnose('odometer-runs-back', one.span, facts) }];
    });
  },
};

/** m: a figure in whole miles or kilometres. */
const rounding = 1700;

interface Shown {
  readonly cell: number;
  readonly metres: number;
  readonly written: string;
  readonly isAfter: boolean;
  readonly span: Span;
}

function readShown(
  ruled: RuledCase,
  before: KeptCells<Shown | undefined> | undefined,
): KeptCells<Shown | undefined> {
  return eachCell(
    ruled.moments,
    ruled,
    before,
    () => readShown,
    (moments) => shownIn(moments, ruled),
  );
}

function shownIn([first]: readonly Moment[], { read }: RuledCase): Shown | undefined {
  if (first === undefined) return undefined;
  const { cell, when } = first;
  const of = read(cell)?.cell;
  if (of?.kind !== 'readings' || of.odometer === undefined) return undefined;
  const { text, span } = of.odometer;
  const quantity = scanQuantity(text, 0)?.quantity;
  if (quantity === undefined || (when !== 'before' && when !== 'after')) return undefined;
  return { cell, metres: metresOf(quantity), written: text, isAfter: when === 'after', span };
}

const metresOf = ({ value, unit }: Quantity): number => toSi(value, unit, 'none');

import { diagnose } from '../../diagnostics/diagnostic.ts';
import type { Finding } from '../../study/types.ts';
import { writtenAs } from '../measured.ts';
import { fullNameOf, type Moment, stateName } from '../moments.ts';
import type { CaseRule } from '../rule.ts';
import { type Filling, fillingOf, isUnlikely } from './filling.ts';

/** Air flow against speed, displacement and pressure: the volumetric efficiency must be one that an engine can have. */
export const fillingUnlikely: CaseRule = {
  code: 'filling-unlikely',
  check: (ruled) => {
    const cells = new Map<number, Told>();
    for (const moment of ruled.moments) {
      const filling = moment.values.has('maf') ? fillingOf(moment, ruled) : undefined;
      if (filling === undefined || !isUnlikely(filling)) continue;
      const told = cells.get(moment.cell);
      if (told === undefined) cells.set(moment.cell, { moment, filling, more: [] });
      else told.more.push(moment.column ?? '');
    }
    return [...cells.values()].map(findingOf);
  },
};

/** A row of air flows is told once, at the first that cannot be. */
interface Told {
  readonly moment: Moment;
  readonly filling: Filling;
  readonly more: string[];
}

function findingOf({ moment, filling, more }: Told): Finding {
  const { maf, share, low, high, from } = filling;
  const facts = {
    name: fullNameOf(maf),
    written: writtenAs(maf),
    percent: Math.round(100 * share),
    low: Math.round(100 * low),
    high: Math.round(100 * high),
    state: moment.state?.name ?? '',
    isFull: stateName(moment) === 'wide open throttle',
    from,
    more,
  };
  return { cell: moment.cell, diagnostic: diagnose('filling-unlikely', maf.reading.valueSpan, facts) };
}

import { diagnose } from '../../diagnostics/diagnostic.ts';
import { fromSi } from '../../quantity/convert.ts';
import { formatNumber } from '../../quantity/format.ts';
import { inForm, type Measured, writtenAs } from '../measured.ts';
import { fullNameOf, type Moment, stateName } from '../moments.ts';
import type { CellRule } from '../rule.ts';
import { steadyStates } from '../steadyStates.ts';

/** A warm engine whose coolant stays below where its thermostat begins to open. */
export const thermostatEarly: CellRule = {
  code: 'thermostat-early',
  of: ['ect'],
  at: steadyStates,
  checkCell: ({ car: { thermostat: rating }, moments }) => {
    if (rating === undefined) return [];
    let coldest: { readonly moment: Moment; readonly ect: Measured } | undefined;
    for (const moment of moments) {
      const ect = inForm(moment.values.ect, '°C');
      if (ect === undefined || !warmStates.has(stateName(moment) ?? '')) continue;
      if (coldest === undefined || ect.si < coldest.ect.si) coldest = { moment, ect };
    }
    if (coldest === undefined || coldest.ect.si + coldest.ect.halfWidth >= rating - below) return [];
    const { moment, ect } = coldest;
    const { unit } = ect.type;
    const said = `${formatNumber(Math.round(fromSi(rating, unit, 'point')))} ${unit.symbol}`;
    const facts = {
      name: fullNameOf(ect),
      written: writtenAs(ect),
      rating: said,
      state: moment.state?.name ?? '',
    };
    return [diagnose('thermostat-early', ect.reading.valueSpan, facts)];
  },
};

/** K: further below its rating than this after ten to fifteen minutes, a thermostat is suspected open (common practice, 20 °F). */
const below = 11;

const warmStates: ReadonlySet<string> = new Set(steadyStates);

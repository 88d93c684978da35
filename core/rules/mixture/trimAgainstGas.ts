import { diagnose } from '../../diagnostics/diagnostic.ts';
import { lambdaFromGas } from '../../engine/fuel/lambdaFromGas.ts';
import { formatNumber } from '../../quantity/format.ts';
import type { Finding } from '../../study/types.ts';
import { engineWord } from '../engineFacts.ts';
import { inForm, type Moment } from '../moments.ts';
import type { CaseRule, RuledCase } from '../rule.ts';
import { totalTrims, writtenTrim } from './totalTrim.ts';

/** Fuel is added and the exhaust is rich, or taken away and it is lean: the sensor that steers says otherwise than the gas. */
export const trimAgainstGas: CaseRule = {
  code: 'trim-against-gas',
  of: ['lambda_b1', 'analyser_lambda', 'co2'],
  check: (ruled) =>
    ruled.moments.flatMap((moment): readonly Finding[] => {
      const totals = totalTrims(moment);
      const [first] = totals;
      if (first === undefined) return [];
      const share = totals.reduce((sum, each) => sum + each.share, 0) / totals.length;
      if (Math.abs(share) < much) return [];
      for (const { lambda, from } of lambdasFor(moment, ruled)) {
        const isAgainst = share > 0 ? lambda < 1 - away : lambda > 1 + away;
        if (!isAgainst) continue;
        const facts = {
          trim: writtenTrim(first),
          lambda: formatNumber(Number(lambda.toFixed(3))),
          from,
          sign: share > 0 ? ('adds' as const) : ('takes' as const),
        };
        return [
          { cell: moment.cell, diagnostic: diagnose('trim-against-gas', first.at.reading.valueSpan, facts) },
        ];
      }
      return [];
    }),
};

/** A share of trim, and a distance of lambda from 1, that neither a sound sensor nor an analyser shows (common practice). */
const much = 0.08;
const away = 0.04;

interface Lambda {
  readonly lambda: number;
  readonly from: string;
}

/** What the exhaust says: of the same moment first, then of the same state and visit. */
function lambdasFor(moment: Moment, ruled: RuledCase): readonly Lambda[] {
  const own = inForm(moment, 'lambda_b1', '1');
  const found: Lambda[] = own === undefined ? [] : [{ lambda: own.si, from: '`lambda_b1`' }];
  for (const each of ruled.alike(moment, 'analyser_lambda')) {
    const shown = inForm(each, 'analyser_lambda', '1');
    if (shown !== undefined) found.push({ lambda: shown.si, from: '`analyser_lambda`' });
  }
  for (const each of ruled.alike(moment, 'co2')) {
    const lambda = computedFrom(each, ruled);
    if (lambda !== undefined) found.push({ lambda, from: 'the gas (`co2`, `co`, `o2_gas`, `hc`)' });
  }
  return found;
}

function computedFrom(moment: Moment, { header }: RuledCase): number | undefined {
  const [co2, co, o2, hc] = ['co2', 'co', 'o2_gas', 'hc'].map((name) => moment.values.get(name)?.si);
  if (co2 === undefined || co === undefined || o2 === undefined) return undefined;
  const lambda = lambdaFromGas({ co2, co, o2, hc: hc ?? 0, nox: 0 }, engineWord(header, 'fuel') ?? 'E10');
  return typeof lambda === 'number' ? lambda : undefined;
}

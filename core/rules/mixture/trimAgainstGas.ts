import { diagnose } from '../../diagnostics/diagnostic.ts';
import { formatNumber } from '../../quantity/format.ts';
import type { Finding } from '../../study/types.ts';
import { inForm } from '../measured.ts';
import type { Moment } from '../moments.ts';
import type { CaseRule, RuledCase } from '../rule.ts';
import { lambdaOfGas } from './gasOf.ts';
import { type TotalTrim, totalTrims, trimShare, writtenTrim } from './totalTrim.ts';

/** Fuel is added and the exhaust is rich, or taken away and it is lean: the sensor that steers says otherwise than the gas. */
export const trimAgainstGas: CaseRule = {
  code: 'trim-against-gas',
  reads: [
    'analyser_lambda',
    'co',
    'co2',
    'hc',
    'lambda_b1',
    'ltft_b1',
    'ltft_b2',
    'o2_gas',
    'stft_b1',
    'stft_b2',
  ],
  of: ['lambda_b1', 'analyser_lambda', 'co2'],
  check: (ruled) => {
    const found: Finding[] = [];
    for (const moment of ruled.moments) {
      const share = meanShare(moment);
      if (share === undefined || Math.abs(share) < much) continue;
      const against = lambdasFor(moment, ruled).find(({ lambda }) =>
        share > 0 ? lambda < 1 - away : lambda > 1 + away,
      );
      const [first] = totalTrims(moment);
      if (against !== undefined && first !== undefined) found.push(findingOf(first, share, against));
    }
    return found;
  },
};

/** The total trim, of both banks the mean. */
function meanShare(moment: Moment): number | undefined {
  const one = trimShare(moment, 1);
  const other = trimShare(moment, 2);
  return one === undefined ? other : other === undefined ? one : (one + other) / 2;
}

function findingOf(first: TotalTrim, share: number, { lambda, from }: Lambda): Finding {
  const facts = {
    trim: writtenTrim(first),
    lambda: formatNumber(Number(lambda.toFixed(3))),
    from,
    sign: share > 0 ? ('adds' as const) : ('takes' as const),
  };
  const { cell, valueSpan } = first.at.reading;
  return { cell, diagnostic: diagnose('trim-against-gas', valueSpan, facts) };
}

/** A share of trim, and a distance of lambda from 1, that neither a sound sensor nor an analyser shows (common practice). */
const much = 0.08;
const away = 0.04;

interface Lambda {
  readonly lambda: number;
  readonly from: string;
}

/** What the exhaust says: of the same moment first, then of the same state and visit. */
function lambdasFor(moment: Moment, ruled: RuledCase): readonly Lambda[] {
  const own = inForm(moment.values.lambda_b1, '1');
  const found: Lambda[] = own === undefined ? [] : [{ lambda: own.si, from: '`lambda_b1`' }];
  for (const each of ruled.alike(moment, 'analyser_lambda')) {
    const shown = inForm(each.values.analyser_lambda, '1');
    if (shown !== undefined) found.push({ lambda: shown.si, from: '`analyser_lambda`' });
  }
  for (const each of ruled.alike(moment, 'co2')) {
    const lambda = lambdaOfGas(each, ruled.car);
    if (lambda !== undefined) found.push({ lambda, from: 'the gas (`co2`, `co`, `o2_gas`, `hc`)' });
  }
  return found;
}

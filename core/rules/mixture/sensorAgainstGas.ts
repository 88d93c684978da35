import { diagnose } from '../../diagnostics/diagnostic.ts';
import { formatNumber } from '../../quantity/format.ts';
import type { Finding } from '../../study/types.ts';
import { inForm, writtenAs } from '../measured.ts';
import { fullNameOf } from '../moments.ts';
import type { CaseRule } from '../rule.ts';
import { lambdaOfGas } from './gasOf.ts';

/** A wide-range sensor and an analyser that look at one gas and say different things. */
export const sensorAgainstGas: CaseRule = {
  code: 'sensor-against-gas',
  reads: ['co', 'co2', 'hc', 'lambda_b1', 'lambda_b2', 'o2_gas'],
  of: ['co2'],
  check: (ruled) => {
    const found: Finding[] = [];
    for (const moment of ruled.holding('lambda_b1')) {
      const sensor = inForm(moment.values.lambda_b1, '1');
      // Of two banks the tailpipe shows the mean.
      if (sensor === undefined || moment.values.lambda_b2 !== undefined) continue;
      const gases = ruled.alike(moment, 'co2').flatMap((each) => lambdaOfGas(each, ruled.car) ?? []);
      const [gas] = gases;
      if (gas === undefined || gases.some((each) => Math.abs(each - sensor.si) <= far + sensor.halfWidth))
        continue;
      const facts = {
        name: fullNameOf(sensor),
        written: writtenAs(sensor),
        gas: formatNumber(Number(gas.toFixed(2))),
        sign: gas > sensor.si ? ('leaner' as const) : ('richer' as const),
      };
      const { cell, valueSpan } = sensor.reading;
      found.push({ cell, diagnostic: diagnose('sensor-against-gas', valueSpan, facts) });
    }
    return found;
  },
};

/** Lambda: sound sensors and analysers agree within a few hundredths (common practice). */
const far = 0.1;

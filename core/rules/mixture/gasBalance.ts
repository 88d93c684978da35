import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { gasComposition, oxygenBrought, oxygenFound, unlikelyGas } from '../../engine/fuel/lambdaFromGas.ts';
import { formatNumber } from '../../quantity/format.ts';
import { writtenAs } from '../measured.ts';
import type { MomentRule } from '../rule.ts';
import { explained } from '../tolerance.ts';
import { gasOf } from './gasOf.ts';

/** CO2, CO and O2 of which two contradict the third: air brings nitrogen and oxygen in one proportion. */
export const gasBalance: MomentRule = {
  code: 'gas-balance',
  of: ['co2'],
  checkMoment: (moment, { car: { fuel } }): Diagnostic | undefined => {
    const { co2, co, o2_gas } = moment.values;
    const gas = gasOf(moment);
    // What another fuel would leave is another balance.
    if (
      gas === undefined ||
      co2 === undefined ||
      co === undefined ||
      o2_gas === undefined ||
      fuel === undefined
    )
      return undefined;
    if (unlikelyGas(gas) !== undefined) return undefined;
    const composition = gasComposition(fuel);
    if ('noAnswer' in composition) return undefined;
    const off = oxygenFound(gas, composition) - oxygenBrought(gas, composition);
    const width = explained(
      weights.co2 * Math.max(co2.halfWidth, accuracy.co2, relative * gas.co2),
      weights.co * Math.max(co.halfWidth, accuracy.co, relative * gas.co),
      weights.o2 * Math.max(o2_gas.halfWidth, accuracy.o2, relative * gas.o2),
    );
    if (Math.abs(off) <= width + unseen * gas.hc) return undefined;
    const facts = {
      gases: [co2, co, o2_gas].map((each) => `\`${each.name}\` ${writtenAs(each)}`).join(', '),
      fuel,
      off: `${formatNumber(Number((Math.abs(off) * 100).toPrecision(2)))} %`,
      sign: off > 0 ? ('too much' as const) : ('too little' as const),
    };
    return diagnose('gas-balance', co2.reading.valueSpan, facts);
  },
};

/** What an analyser of class I may be off by, as shares of the volume, or of the value where that is more (OIML R 99, from memory). */
const accuracy = { co2: 0.005, co: 0.0006, o2: 0.001 };
const relative = 0.05;

/** How much of an error comes through to the balance, from the formula's slopes at a petrol engine's gas. */
const weights = { co2: 1.73, co: 1.25, o2: 1.27 };

/** An analyser counts raw fuel at half and less: each part of it may hide as many parts of the balance. */
const unseen = 10;

import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { absoluteLoad } from '../../engine/air/airFlow.ts';
import { stoichiometricRatio } from '../../engine/fuel/stoichiometry.ts';
import { formatNumber, formatQuantity } from '../../quantity/format.ts';
import type { Header } from '../../study/header.ts';
import { engineWord, headerNumber } from '../engineFacts.ts';
import { type Measured, writtenAs } from '../measured.ts';
import { fullNameOf, inForm, type Moment } from '../moments.ts';
import type { CellRule } from '../rule.ts';

/** Two readings of one thing at one moment that differ by more than their accuracy. */
export const readingsDiffer: CellRule = {
  code: 'readings-differ',
  of: ['load_abs', 'afr_b1', 'afr_b2', 'charging_voltage', 'cranking_voltage'],
  checkCell: ({ header, moments }) => {
    // A row is told once.
    const rows = new Map<string, Diagnostic>();
    const add = (row: string, found: Diagnostic | undefined): void => {
      if (found !== undefined && !rows.has(row)) rows.set(row, found);
    };
    for (const moment of moments) {
      add('load', loadAndFlow(moment, header));
      add('lambda 1', lambdaAndRatio(moment, header, 1));
      add('lambda 2', lambdaAndRatio(moment, header, 2));
      add('charging', oneThing(moment, 'battery', 'charging_voltage', volts));
      add('cranking', oneThing(moment, 'battery', 'cranking_voltage', volts));
    }
    return [...rows.values()];
  },
};

/** V: two meters on one battery, a few seconds apart. */
const volts = 0.6;
/** Shares: programs round and delay their load; a lambda and a ratio of one sensor are one number. */
const ofLoad = { relative: 0.2, absolute: 0.03 };
const ofRatio = 0.04;

/** Absolute load is the air flow in another form (SAE J1979). */
function loadAndFlow(moment: Moment, header: Header): Diagnostic | undefined {
  const load = inForm(moment, 'load_abs', '%');
  const maf = inForm(moment, 'maf', 'g/s');
  const rpm = inForm(moment, 'rpm', 'rpm');
  const displacement = headerNumber(header, 'engine.displacement');
  if (load === undefined || maf === undefined || rpm === undefined || displacement === undefined)
    return undefined;
  const share = absoluteLoad(maf.si, rpm.si, displacement);
  if (typeof share !== 'number') return undefined;
  if (Math.abs(load.si - share) <= ofLoad.relative * Math.max(load.si, share) + ofLoad.absolute)
    return undefined;
  const same = formatQuantity(Number(share.toPrecision(3)), load.type);
  return differ(load, `\`${fullNameOf(maf)}\` at this speed and displacement means ${same}`);
}

function lambdaAndRatio(moment: Moment, header: Header, bank: 1 | 2): Diagnostic | undefined {
  const lambda = inForm(moment, `lambda_b${bank}`, '1');
  const ratio = inForm(moment, `afr_b${bank}`, '1');
  const fuel = engineWord(header, 'fuel');
  if (lambda === undefined || ratio === undefined || fuel === undefined) return undefined;
  const stoichiometric = stoichiometricRatio(fuel);
  if (typeof stoichiometric !== 'number') return undefined;
  const expected = lambda.si * stoichiometric;
  // Many instruments show the ratio of plain gasoline whatever is in the tank.
  const gasoline = lambda.si * 14.7;
  const isNear = (value: number): boolean => Math.abs(ratio.si - value) <= ofRatio * value;
  if (isNear(expected) || isNear(gasoline)) return undefined;
  return differ(
    ratio,
    `\`${fullNameOf(lambda)}\` means ${formatNumber(Number(expected.toFixed(1)))} with ${fuel}`,
  );
}

function oneThing(moment: Moment, first: string, second: string, width: number): Diagnostic | undefined {
  const [one, other] = [moment.values.get(first), moment.values.get(second)];
  if (one === undefined || other === undefined || one.type.dimension !== other.type.dimension)
    return undefined;
  const slack = Math.max(width, one.halfWidth + other.halfWidth);
  if (Math.abs(one.si - other.si) <= slack) return undefined;
  return differ(other, `\`${fullNameOf(one)}\` of the same moment is ${writtenAs(one)}`);
}

function differ(one: Measured, says: string): Diagnostic {
  return diagnose('readings-differ', one.reading.valueSpan, {
    name: fullNameOf(one),
    written: writtenAs(one),
    says,
  });
}

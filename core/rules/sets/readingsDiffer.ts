import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { absoluteLoad } from '../../engine/air/airFlow.ts';
import { stoichiometricRatio } from '../../engine/fuel/stoichiometry.ts';
import { formatNumber, formatQuantity } from '../../quantity/format.ts';
import type { Car } from '../car.ts';
import { type Measured, writtenAs } from '../measured.ts';
import { fullNameOf, inForm, type Moment } from '../moments.ts';
import type { CellRule } from '../rule.ts';

/** Two readings of one thing at one moment that differ by more than their accuracy. */
export const readingsDiffer: CellRule = {
  code: 'readings-differ',
  of: ['load_abs', 'afr_b1', 'afr_b2', 'charging_voltage', 'cranking_voltage'],
  checkCell: ({ car, moments }) => {
    // A row is told once.
    const rows = new Set<Compares>();
    const found: Diagnostic[] = [];
    for (const moment of moments) {
      for (const compare of pairs) {
        const differs = rows.has(compare) ? undefined : compare(moment, car);
        if (differs === undefined) continue;
        rows.add(compare);
        found.push(differs);
      }
    }
    return found;
  },
};

type Compares = (moment: Moment, car: Car) => Diagnostic | undefined;

const pairs: readonly Compares[] = [
  loadAndFlow,
  ({ values }, car) => lambdaAndRatio(values.lambda_b1, values.afr_b1, car),
  ({ values }, car) => lambdaAndRatio(values.lambda_b2, values.afr_b2, car),
  ({ values }) => oneThing(values.battery, values.charging_voltage, volts),
  ({ values }) => oneThing(values.battery, values.cranking_voltage, volts),
];

/** V: two meters on one battery, a few seconds apart. */
const volts = 0.6;
/** Shares: programs round and delay their load; a lambda and a ratio of one sensor are one number. */
const ofLoad = { relative: 0.2, absolute: 0.03 };
const ofRatio = 0.04;

/** Absolute load is the air flow in another form (SAE J1979). */
function loadAndFlow(moment: Moment, { displacement }: Car): Diagnostic | undefined {
  const load = inForm(moment, 'load_abs', '%');
  const maf = inForm(moment, 'maf', 'g/s');
  const rpm = inForm(moment, 'rpm', 'rpm');
  if (load === undefined || maf === undefined || rpm === undefined || displacement === undefined)
    return undefined;
  const share = absoluteLoad(maf.si, rpm.si, displacement);
  if (typeof share !== 'number') return undefined;
  if (Math.abs(load.si - share) <= ofLoad.relative * Math.max(load.si, share) + ofLoad.absolute)
    return undefined;
  const same = formatQuantity(Number(share.toPrecision(3)), load.type);
  return differ(load, `\`${fullNameOf(maf)}\` at this speed and displacement means ${same}`);
}

function lambdaAndRatio(
  lambda: Measured | undefined,
  ratio: Measured | undefined,
  { fuel }: Car,
): Diagnostic | undefined {
  if (lambda?.form.unit !== '1' || ratio?.form.unit !== '1' || fuel === undefined) return undefined;
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

function oneThing(
  one: Measured | undefined,
  other: Measured | undefined,
  width: number,
): Diagnostic | undefined {
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

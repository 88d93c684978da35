import { diagnose } from '../diagnostics/diagnostic.ts';
import { temperature } from '../quantity/dimension.ts';
import { type Measured, writtenAs } from './measured.ts';
import type { ReadingRule } from './rule.ts';

/** The end of the scale, or a known substitute: what a module shows for a circuit that is open or shorted. */
export const failedValue: ReadingRule = {
  code: 'failed-value',
  odd: 'end of scale',
  checkReading: (one, { measured }) => {
    const means = failureOf(one, measured);
    if (means === undefined) return undefined;
    const facts = { name: one.name, written: writtenAs(one), means };
    return diagnose('failed-value', one.reading.valueSpan, facts);
  },
};

/** What a value says about its circuit, if it is one of the values that only a failed circuit gives. */
export function failureOf(one: Measured, all: readonly Measured[]): string | undefined {
  const { end } = one;
  if (end === undefined || isUnfed(one)) return undefined;
  return one.type.dimension === temperature && isThatCold(one, all) ? undefined : end.means;
}

/** The volts of a sensor whose supply is switched off. */
const isUnfed = ({ reading, form }: Measured): boolean =>
  form.unit === 'V' && unfed.has(reading.state?.known?.name ?? '');

const unfed: ReadonlySet<string> = new Set(['key off', 'asleep']);

/** Forty below is a failed sensor, unless another temperature of the same moment is nearly as cold. */
function isThatCold(one: Measured, all: readonly Measured[]): boolean {
  if (one.si > freezing) return false;
  return all.some(
    (other) =>
      other.reading !== one.reading &&
      other.type.kind === 'point' &&
      other.reading.cell === one.reading.cell &&
      other.si < veryCold &&
      other.si !== one.si,
  );
}

/** K; nearly as cold is below −25 °C. */
const freezing = 273.15;
const veryCold = 248.15;

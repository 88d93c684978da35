import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import { fromSi } from '../quantity/convert.ts';
import { formatQuantity } from '../quantity/format.ts';
import { failureOf } from './failedValue.ts';
import type { Measured } from './measured.ts';
import type { CellRule } from './rule.ts';

/**
 * After a cold soak everything has the temperature of the air. One sensor far from at least two others that agree
 * is the sensor's own affair (common practice: within a few degrees; the limits here are generous).
 * Of two that are far apart one is wrong, and a third thermometer says which.
 */
export const coldSoak: CellRule = {
  code: 'cold-soak-apart',
  at: ['cold soak'],
  checkCell: ({ measured }): readonly Diagnostic[] => {
    const temperatures = measured.filter((each) => isSoaked(each) && failureOf(each, measured) === undefined);
    if (highestOf(temperatures) - lowestOf(temperatures) <= apart) return [];
    const [first, second] = temperatures;
    if (first !== undefined && second !== undefined && temperatures.length === 2) return ofTwo(first, second);
    return temperatures.flatMap((one) => {
      const others = temperatures.filter((each) => each !== one);
      const low = lowestOf(others);
      const high = highestOf(others);
      if (others.length < 2 || high - low > together) return [];
      const away = Math.max(low - one.si, one.si - high) - one.halfWidth;
      if (away <= apart) return [];
      return [diagnose('cold-soak-apart', one.reading.valueSpan, factsOf(one, others, (low + high) / 2))];
    });
  },
};

const isSoaked = ({ reading, type }: Measured): boolean =>
  reading.state?.known?.name === 'cold soak' && type.kind === 'point';

/** K: how far apart temperatures that agree may be, and from where on one of them does not. */
const together = 6;
const apart = 10;
/** K: the sun on a bonnet, or an engine that was run the evening before, is no wrong sensor. */
const farApart = 15;

const lowestOf = (all: readonly Measured[]): number =>
  all.reduce((least, { si }) => Math.min(least, si), Number.POSITIVE_INFINITY);
const highestOf = (all: readonly Measured[]): number =>
  all.reduce((most, { si }) => Math.max(most, si), Number.NEGATIVE_INFINITY);

function ofTwo(first: Measured, second: Measured): readonly Diagnostic[] {
  const away = Math.abs(first.si - second.si) - first.halfWidth - second.halfWidth;
  if (away <= farApart) return [];
  // The air's own thermometer is the likelier one to be right.
  const [one, other] = /^(iat|ambient)/.test(second.reading.key) ? [first, second] : [second, first];
  return [diagnose('cold-soak-apart', one.reading.valueSpan, factsOf(one, [other], other.si))];
}

function factsOf(one: Measured, others: readonly Measured[], middle: number) {
  const { unit, kind } = one.type;
  const about = Math.round(fromSi(middle, unit, kind));
  return {
    name: one.name,
    written: formatQuantity(one.si, one.type),
    others: others.map((each) => each.name),
    about: `${about} ${unit.symbol}`,
  };
}

import { cannotCompute } from '../expression/absent.ts';
import type { Absent, Series } from '../expression/value.ts';
import { linear } from '../quantity/amount.ts';
import type { Amount, SourceId } from '../quantity/types.ts';

/** A number read off samples and single values (both in SI), or why there is none. */
type Reading = (series: readonly Series[], numbers: readonly number[]) => number | Absent;

/**
 * A number read off samples, with its uncertainty: for every source that the samples or the other arguments have,
 * the reading is taken again with all of them moved up and down by what that source contributes
 * (JCGM 100:2008, 5.1.3 note 2). A source in common, such as one tool for the samples and the level, moves both.
 * Where a source leaves no answer either way, it is not known how far the number may be off, and there is none.
 */
export function carried(
  series: readonly Series[],
  amounts: readonly Amount[],
  read: Reading,
): Amount | Absent {
  const numbers = amounts.map(({ si }) => si);
  const nominal = read(series, numbers);
  if (typeof nominal !== 'number') return nominal;
  const sources = new Set<SourceId>();
  for (const { spread } of series) for (const { source } of spread) sources.add(source);
  for (const { spread } of amounts) for (const { source } of spread) sources.add(source);
  const terms: [number, Amount][] = [];
  for (const source of sources) {
    const moved = (sign: 1 | -1): number => {
      const there = read(
        series.map((each) => movedSeries(each, source, sign)),
        amounts.map(({ si, spread }) => si + sign * contribution(spread, source)),
      );
      return typeof there === 'number' ? there : Number.NaN;
    };
    const by = between(nominal, moved(1), moved(-1));
    if (by === undefined) return tooUnsure;
    terms.push([1, { si: nominal, spread: [{ source, by }] }]);
  }
  return linear(nominal, terms);
}

/** Stands for a number that nobody can say how sure it is. */
export const tooUnsure = cannotCompute(
  'there is no answer when what it is read off is higher by its ±, nor when it is lower',
);

/**
 * Half the way from the lower reading to the upper; from one side where the other has none; nothing below rounding.
 * Undefined where neither has one.
 */
export function between(nominal: number, up: number, down: number): number | undefined {
  const way = Number.isNaN(up) ? nominal - down : Number.isNaN(down) ? up - nominal : (up - down) / 2;
  if (!Number.isFinite(way)) return undefined;
  return Math.abs(way) > 1e-9 * Math.abs(nominal) ? way : 0;
}

export function contribution(spread: Amount['spread'], source: SourceId): number {
  return spread.find((each) => each.source === source)?.by ?? 0;
}

export function movedSeries(series: Series, source: SourceId, sign: 1 | -1): Series {
  const own = series.spread.find((each) => each.source === source)?.by;
  if (own === undefined) return series;
  const samples = series.samples.map(
    (sample, i) => sample + sign * (typeof own === 'number' ? own : (own[i] ?? 0)),
  );
  return { ...series, samples };
}

import type { Absent, Series } from '../expression/value.ts';
import { linear } from '../quantity/amount.ts';
import type { Amount, SourceId } from '../quantity/types.ts';

/** A number read off samples and single values (both in SI), or why there is none. */
type Reading = (series: readonly Series[], numbers: readonly number[]) => number | Absent;

/**
 * A number read off samples, with its uncertainty: for every source that the samples or the other arguments have,
 * the reading is taken again with all of them moved up and down by what that source contributes
 * (JCGM 100:2008, 5.1.3 note 2). A source in common, such as one tool for the samples and the level, moves both.
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
  const terms = [...sources].map((source): readonly [number, Amount] => {
    const moved = (sign: 1 | -1): number => {
      const there = read(
        series.map((each) => movedSeries(each, source, sign)),
        amounts.map(({ si, spread }) => si + sign * contribution(spread, source)),
      );
      return typeof there === 'number' ? there : Number.NaN;
    };
    return [1, { si: nominal, spread: [{ source, by: between(nominal, moved(1), moved(-1)) }] }];
  });
  return linear(nominal, terms);
}

/** Half the way from the lower reading to the upper; from one side where the other has none; nothing below rounding. */
export function between(nominal: number, up: number, down: number): number {
  const way = Number.isNaN(up) ? nominal - down : Number.isNaN(down) ? up - nominal : (up - down) / 2;
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

import { time as timeDimension } from '../../quantity/dimension.ts';
import type { Samples } from './samples.ts';
import { timeWords } from './timeWords.ts';

/**
 * Where each channel has a time of its own (`time_a, a, time_b, b`): the column of the time for each column behind it.
 * Undefined where there is one time for all: a second one without channels behind it, one that counts something else
 * (`Time since start`), or one that shows the very same moments all along.
 */
export function ownTimes(samples: Samples): ReadonlyMap<number, number> | undefined {
  const all = samples.headings.map((_, at) => at);
  const times = all.filter((at) => isOwnTime(samples, at));
  const groups = times.map((at, i) => all.slice(at + 1, times[i + 1]));
  if (times.length < 2 || times[0] !== 0 || groups.some((each) => each.length === 0)) return undefined;
  return new Map(groups.flatMap((each, i) => each.map((at) => [at, times[i] ?? 0] as const)));
}

/** Whether two times show other moments, as far as the first rows tell. */
export function areApart(samples: Samples, a: number, b: number): boolean {
  const of = samples.texts(b);
  return samples.texts(a).some((each, i) => each !== of[i]);
}

function isOwnTime(samples: Samples, at: number): boolean {
  const heading = samples.written[at] ?? '';
  if (/\b(?:since|run|with|on|of)\b/i.test(heading) || !samples.rises(at)) return false;
  if (timeWords.test(heading) || /^t\d|^time\w?\d?\b/i.test(heading)) return true;
  // `rear time (s)` stands before `rear (V)`.
  const unit =
    samples.unitIn(at)?.unit.dimension === timeDimension || samples.clock(at, undefined) !== undefined;
  const of = /^(.+?)[ _-]?(?:time|zeit|t)\b/i.exec(heading)?.[1];
  const next = samples.written[at + 1] ?? '';
  return unit && of !== undefined && next.toLowerCase().startsWith(of.toLowerCase());
}

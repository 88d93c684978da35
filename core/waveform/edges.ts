import { cannotCompute } from '../expression/absent.ts';
import type { Absent } from '../expression/value.ts';
import { momentAt } from './crossings.ts';
import type { Recorded } from './recorded.ts';

/**
 * The median time, s, of the rising edges from a lower to an upper level, in the samples' unit.
 * An edge runs from the last sample at or below the lower level to the first at or above the upper one,
 * the moments of both levels straight between the samples. Where most edges pass both levels between two samples,
 * the record cannot tell how long they take.
 */
export function riseTime(record: Recorded, low: number, high: number): number | Absent {
  return edgeTime(record, low, high, 1);
}

/** The same of the falling edges, from the upper to the lower level. */
export function fallTime(record: Recorded, high: number, low: number): number | Absent {
  return edgeTime(record, low, high, -1);
}

function edgeTime(
  { time, samples, starts }: Recorded,
  low: number,
  high: number,
  sign: 1 | -1,
): number | Absent {
  if (!(low < high)) return cannotCompute('the lower level must be below the upper one');
  const from = sign === 1 ? low : high;
  const to = sign === 1 ? high : low;
  // Seen so that every edge rises.
  const first = sign * from;
  const second = sign * to;
  const edges: number[] = [];
  let steep = 0;
  for (const [stretch, start] of starts.entries()) {
    const end = starts[stretch + 1] ?? samples.length;
    const at = (i: number): number => sign * (samples[i] ?? Number.NaN);
    let i = start;
    while (i < end) {
      // Down to the first level, up to the last sample there, through the band between.
      while (i < end && at(i) > first) i++;
      while (i < end && at(i) <= first) i++;
      const left = i - 1;
      while (i < end && at(i) > first && at(i) < second) i++;
      if (i >= end || at(i) <= first) continue;
      edges.push(momentAt(time, samples, i - 1, to) - momentAt(time, samples, left, from));
      if (left === i - 1) steep++;
    }
  }
  if (edges.length === 0) return cannotCompute('no edge passes both levels');
  if (2 * steep > edges.length)
    return cannotCompute('most edges pass both levels between two samples: it was recorded too slowly');
  edges.sort((a, b) => a - b);
  const middle = edges.length >> 1;
  const upper = edges[middle] ?? Number.NaN;
  return edges.length % 2 === 1 ? upper : ((edges[middle - 1] ?? Number.NaN) + upper) / 2;
}

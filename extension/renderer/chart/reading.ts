import type { ChartSpec, Points } from '../../../core/chart/spec.ts';
import type { Window } from './window.ts';

/** What stands at a place of the axis, for the table beside the chart. */
export interface Reading {
  readonly name: string;
  readonly value: string;
  readonly unit: string;
}

/** The nearest point of each line, and the place itself first. */
export function readingsAt(chart: ChartSpec, place: number): readonly Reading[] {
  const { x, reads, data } = chart;
  const read = reads.lines.map(({ data: name, name: says, unit }): Reading => {
    const points = data[name];
    const at = points === undefined ? -1 : nearest(points.x, place);
    const y = points?.y[at] ?? null;
    return { name: says, value: y === null ? '–' : short(y, 4), unit };
  });
  return [{ name: x.name, value: short(place, 6), unit: x.unit }, ...read];
}

/** So many digits, and never a power of ten where one can be done without. */
function short(value: number, digits: number): string {
  const rounded = Number(value.toPrecision(digits));
  const text = String(rounded);
  return text.includes('e') && Math.abs(rounded) < 1 ? rounded.toFixed(12).replace(/0+$/, '') : text;
}

/** The places where a cursor may stand within a window, ascending. */
export function placesIn(chart: ChartSpec, { from, to }: Window): readonly number[] {
  const { reads, data } = chart;
  const all =
    reads.lines.length > 0
      ? reads.lines.flatMap(({ data: name }) => pointsOf(data[name], from, to))
      : reads.dots.map(({ x }) => x);
  return [...new Set(all)].filter((each) => each >= from && each <= to).sort((a, b) => a - b);
}

function pointsOf(points: Points | undefined, from: number, to: number): readonly number[] {
  return points?.x.filter((x, at) => x >= from && x <= to && (points.y[at] ?? null) !== null) ?? [];
}

/** The place a step away: the next sample, or so far that a hundred steps cross the window. */
export function stepFrom(
  places: readonly number[],
  now: number,
  direction: 1 | -1,
  least: number,
): number | undefined {
  const beyond = now + direction * least;
  if (direction > 0) return places.find((each) => each > now && each >= beyond) ?? places.at(-1);
  return places.filter((each) => each < now && each <= beyond).at(-1) ?? places[0];
}

/** Its index in a list that mostly ascends; cycles laid over each other begin anew. */
function nearest(list: readonly number[], place: number): number {
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < list.length; i++) {
    const away = Math.abs((list[i] ?? 0) - place);
    if (away < least) {
      least = away;
      best = i;
    }
  }
  return best;
}

/** In one sentence, for who hears the cursor move. */
export function spoken(chart: ChartSpec, place: number): string {
  if (chart.reads.lines.length === 0) {
    const dots = chart.reads.dots.filter(({ x }) => x === place);
    return dots.map(({ says }) => says).join('; ');
  }
  const [at, ...values] = readingsAt(chart, place);
  const said = ({ name, value, unit }: Reading): string => `${name} ${value}${unit === '' ? '' : ` ${unit}`}`;
  return [...values, ...(at === undefined ? [] : [at])].map(said).join(', ');
}

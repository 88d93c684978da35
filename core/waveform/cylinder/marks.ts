import { cannotCompute } from '../../expression/absent.ts';
import type { Absent } from '../../expression/value.ts';
import { crossingsOf } from '../crossings.ts';
import { median, quantile } from '../quantile.ts';
import { type Recorded, swingOf } from '../recorded.ts';

/**
 * The moments, s, at which a sync channel marks its cylinder: where it leaves its usual level towards the middle of its
 * swing. What follows within `apart` seconds belongs to the same mark (a spark rings, a contact bounces).
 */
export function marksOf(record: Recorded, apart: number): readonly number[] {
  const { low, high } = swingOf(record.samples);
  if (!(high > low)) return [];
  const usual = quantile(record.samples.slice(), 0.5);
  const rises = usual - low <= high - usual;
  const marks: number[] = [];
  for (const { times, risesFirst } of crossingsOf(record, (low + high) / 2, 0.3 * (high - low))) {
    const first = risesFirst === rises ? 0 : 1;
    for (let i = first; i < times.length; i += 2) {
      const at = times[i] ?? 0;
      if (at - (marks[marks.length - 1] ?? Number.NEGATIVE_INFINITY) >= apart) marks.push(at);
    }
  }
  return marks;
}

/** How far the marks come after the humps before them, as a share of the way to the next: the median, −0.5 to 0.5. */
export function phaseOfMarks(marks: readonly number[], centres: readonly number[]): number {
  const phases: number[] = [];
  let at = 0;
  for (const mark of marks) {
    while (at + 2 < centres.length && (centres[at + 1] ?? 0) <= mark) at++;
    const [from = 0, to = 0] = [centres[at], centres[at + 1]];
    if (mark >= from && mark <= to) phases.push((mark - from) / (to - from));
  }
  // About the first of them, so that phases on both sides of a hump do not average to its opposite.
  const [first = 0] = phases;
  const middle = first + median(phases.map((each) => each - first - Math.round(each - first)));
  return middle - Math.round(middle);
}

/** A mark this far from every hump, as a share of the way from one to the next, belongs to none. */
const farthest = 0.42;

/**
 * Which place of the engine cycle the marks stand at: the remainder, by the number of cylinders, of the count of the
 * nearest hump. All marks must say the same.
 */
export function placeOfMarks(
  marks: readonly number[],
  centres: readonly number[],
  cylinders: number,
): number | Absent {
  const votes = new Array<number>(cylinders).fill(0);
  let counted = 0;
  let at = 0;
  for (const mark of marks) {
    while (
      at + 1 < centres.length &&
      Math.abs((centres[at + 1] ?? 0) - mark) <= Math.abs((centres[at] ?? 0) - mark)
    )
      at++;
    const here = centres[at] ?? 0;
    const way = at + 1 < centres.length ? (centres[at + 1] ?? 0) - here : here - (centres[at - 1] ?? 0);
    if (Math.abs(mark - here) > farthest * way) continue;
    votes[at % cylinders] = (votes[at % cylinders] ?? 0) + 1;
    counted++;
  }
  if (counted === 0) return cannotCompute('the sync channel marks no hump while the engine cranks');
  const most = Math.max(...votes);
  const place = votes.indexOf(most);
  if (most >= 0.75 * counted) return place;
  const opposite = votes[(place + cylinders / 2) % cylinders] ?? 0;
  if (cylinders % 2 === 0 && most + opposite >= 0.75 * counted)
    return cannotCompute(
      'the sync channel marks every turn, so it cannot tell a cylinder from the one that comes a turn later',
    );
  return cannotCompute('the sync channel marks now one hump and now another');
}

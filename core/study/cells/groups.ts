import type { Planned } from './channels.ts';
import type { Timed } from './channelTimes.ts';
import type { Column, Group } from './samples.ts';
import type { Time } from './timeColumn.ts';

/** The channels by their times, the capture's own time first. */
export function groupsOf(
  main: Time | undefined,
  plans: readonly { readonly time: Time | undefined; readonly planned: Planned | undefined }[],
): readonly Group[] {
  const groups: { readonly time: Column; readonly channels: Column[] }[] = [];
  const groupOf = (time: Column): { readonly channels: Column[] } => {
    let group = groups.find((each) => isSame(each.time, time));
    if (group === undefined) {
      group = { time, channels: [] };
      groups.push(group);
    }
    return group;
  };
  if (main !== undefined && (plans.length === 0 || plans.some(({ time }) => time === main)))
    groupOf(main.column);
  for (const { time, planned } of plans) {
    if (time !== undefined)
      groupOf(time.column).channels.push(...(planned === undefined ? [] : [planned.column]));
  }
  return groups;
}

/** Whether two times are one: the same column, read alike. */
export const isSame = (a: Column, b: Column): boolean =>
  a === b || (a.at === b.at && a.factor === b.factor && a.clock?.two === b.clock?.two);

/** Whether two times show the same moments all along. */
export const areSame = (a: Float64Array, b: Float64Array): boolean =>
  a === b || (a.length === b.length && a.every((each, i) => each === b[i]));

/** How each time was taken, once. */
export function wordsOf(main: Time | undefined, channels: readonly Timed[]): readonly string[] {
  const words = new Set(main === undefined ? [] : [main.words]);
  const by = new Map<string, string[]>();
  for (const { time, channel } of channels) {
    if (time === undefined || time.words === main?.words) continue;
    const some = by.get(time.words) ?? [];
    by.set(time.words, [...some, `\`${channel.key.text}\``]);
  }
  for (const [time, names] of by) words.add(`${names.join(', ')}: ${time}`);
  return [...words];
}

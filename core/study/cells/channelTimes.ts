import type { CaptureCell, ReferenceCell } from '../../casefile/cell.ts';
import { type Diagnostic, diagnose, type Fix } from '../../diagnostics/diagnostic.ts';
import { type Channel, channelsOf } from './channels.ts';
import { columnNamed } from './columnNamed.ts';
import { areApart, ownTimes } from './ownTimes.ts';
import type { Samples } from './samples.ts';
import { findTime, type Time, timeAt } from './timeColumn.ts';

/** A channel, its column and its time, as far as they are known. */
export interface Timed {
  readonly channel: Channel;
  readonly at: number | undefined;
  readonly time: Time | undefined;
}

type Cell = Pick<CaptureCell | ReferenceCell, 'channels' | 'time'>;

/**
 * The channels of a capture, each with its time: its own where the cell says so, otherwise the capture's. Where the cell names
 * no channels and the file has a time for each of them, those are recognised, and that is shown.
 */
export function timedChannels(
  cell: Cell,
  samples: Samples,
  isInline: boolean,
  found: Diagnostic[],
): { readonly channels: readonly Timed[]; readonly main: Time | undefined } {
  const own = ownTimes(samples);
  const known = new Map<number, Time | undefined>();
  const timeOf = (at: number): Time | undefined => {
    if (!known.has(at)) known.set(at, timeAt(at, undefined, samples, isInline, found));
    return known.get(at);
  };
  if (cell.channels === undefined && cell.time === undefined && own !== undefined) {
    const channels = channelsOf(cell, samples, [...own.values()]).map((channel): Timed => {
      const at = channel.at ?? -1;
      return { channel, at, time: timeOf(own.get(at) ?? 0) };
    });
    const how = channels
      .map(({ at }) => byOwnTime(samples, at ?? 0, own))
      .filter((each) => each !== undefined);
    const file = samples.placeOf(0);
    const facts = {
      file: file.text.trim(),
      how: `each channel by the time in front of it: ${how.join(', ')}`,
    };
    if (how.length > 0 && !isInline) found.push(diagnose('capture-recognised', file.span, facts));
    return { channels, main: timeOf(0) };
  }
  const named = channelsOf(cell, samples, []);
  const isMainNeeded =
    cell.channels === undefined ||
    cell.time !== undefined ||
    cell.channels.some(({ value }) => value.time === undefined);
  const main = isMainNeeded ? findTime(cell.time, samples, isInline, found) : undefined;
  const channels = named.flatMap((channel): Timed[] => {
    if (channel.at !== undefined && channel.at === main?.column.at) return [];
    const at = channel.at ?? columnNamed(channel.column, samples, found);
    if (channel.time === undefined) {
      const beside = at === undefined || cell.channels === undefined ? undefined : own?.get(at);
      if (at !== undefined && beside !== undefined && main !== undefined && beside !== main.column.at)
        found.push(...otherTime(channel, samples, beside, main.column.at));
      return [{ channel, at, time: main }];
    }
    const { column, unit } = channel.time;
    const timeColumn = column === undefined ? main?.column.at : columnNamed(column, samples, found);
    if (timeColumn === undefined) return [{ channel, at, time: undefined }];
    const time =
      unit === undefined ? timeOf(timeColumn) : timeAt(timeColumn, channel.time, samples, isInline, found);
    return [{ channel, at, time }];
  });
  return { channels, main };
}

function byOwnTime(samples: Samples, at: number, own: ReadonlyMap<number, number>): string | undefined {
  const time = own.get(at) ?? 0;
  if (time === 0) return undefined;
  return `\`${samples.headings[at]}\` by \`${samples.headings[time]}\``;
}

/** A channel that stands behind a time of its own, and is read by another. */
function otherTime(channel: Channel, samples: Samples, own: number, read: number): readonly Diagnostic[] {
  if (!areApart(samples, own, read)) return [];
  const time = samples.headings[own] ?? '';
  const facts = { name: channel.key.text, own: time, read: samples.headings[read] ?? '' };
  return [diagnose('channel-by-other-time', channel.column.span, facts, fixesFor(channel, time))];
}

function fixesFor({ node, column }: Channel, time: string): readonly Fix[] {
  const title = `Write \`time: ${time}\``;
  const key = `time: ${JSON.stringify(time)}`;
  if (node?.kind === 'text')
    return [
      { title, edits: [{ span: node.span, newText: `{column: ${JSON.stringify(column.text)}, ${key}}` }] },
    ];
  if (node?.kind !== 'map' || !node.flow) return [];
  const end = node.span.end - 1;
  return [{ title, edits: [{ span: { start: end, end }, newText: `, ${key}` }] }];
}

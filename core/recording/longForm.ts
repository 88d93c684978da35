import { isNumber } from './body.ts';
import { isClockTime } from './clock.ts';
import type { Layout } from './layout.ts';
import { isMissing } from './numbers.ts';

/** How tools head a column of channels' names. */
const nameWords =
  /^(?:channel|signal|parameter|sensor|variable|item|name|pid|label|kanal|größe|messgröße|voie|canal)(?![a-z])/i;

/** A file whose rows hold one channel each: its name in one column, its value in another. */
export interface LongForm {
  readonly column: string;
  /** The first names in it. */
  readonly names: readonly string[];
}

/** Whether a file is of that form: a column of names that take turns, beside a single value. */
export function longFormOf({ headings, sample, decimal }: Layout): LongForm | undefined {
  const held = headings.map((_, at) => sample.map((row) => row[at] ?? '').filter((each) => !isMissing(each)));
  const values = held.filter((some) => some.some((each) => isNumber(each, decimal) && !isClockTime(each)));
  const clocks = held.filter((some) => some.some(isClockTime));
  if (values.length + Math.min(1, clocks.length) > 2) return undefined;
  for (const [at, column] of headings.entries()) {
    const some = held[at] ?? [];
    const names = [...new Set(some)];
    if (!nameWords.test(column) || some.some((each) => isNumber(each, decimal))) continue;
    if (names.length > 1 && names.length * 2 <= some.length) return { column, names: names.slice(0, 3) };
  }
  return undefined;
}

import type { Dimension } from '../quantity/types.ts';
import { formFor, signalsCalled } from '../signals/lookup.ts';
import { plainName } from './plainName.ts';
import { withoutUnit } from './unitWords.ts';

/**
 * The signal that a column's heading names, by its own name or another word for it: `Engine speed (rpm)` is `rpm`,
 * `Short term fuel trim bank 1` is `stft_b1`. Only where exactly one is called so and can be measured in the column's
 * unit; what is merely like a name is none.
 */
export function proposeSignal(heading: string, dimension: Dimension | undefined): string | undefined {
  for (const words of waysToSay(heading)) {
    const fitting = signalsCalled(words).filter(
      (signal) => dimension === undefined || formFor(signal, dimension) !== undefined,
    );
    const [only, other] = fitting;
    if (only !== undefined && other === undefined) return only.name;
  }
  return undefined;
}

/** As it stands, without its unit, without words that say nothing, and with banks and sensors as the vocabulary has them. */
function waysToSay(heading: string): ReadonlySet<string> {
  const bare = withoutUnit(heading)
    .replace(/[.:,/#-]+/g, ' ')
    .toLowerCase();
  const placed = bare
    .replace(/\bbank\s*([12])\b/g, 'b$1')
    .replace(/\bsensor\s*([1-4])\b/g, 's$1')
    .replace(/\bb([12])\s+s([1-4])\b/g, 'b$1s$2');
  const idle = /\b(?:sensor|signal|engine|value|actual|current|measured|the|voltage|volts)\b/g;
  // `STFT1` is `stft 1`.
  const counted = placed.replace(/\b([a-z]{3,})(\d)\b/g, '$1 $2');
  const ways = [bare, placed, counted, placed.replace(idle, ' '), plainName(heading).toLowerCase()];
  return new Set(ways.map((each) => each.replace(/\s+/g, ' ').trim()));
}

import { nearest } from '../text/nearest.ts';
import { unitOf } from './unit.ts';
import { unitSlips } from './unitSlips.ts';
import { unitRows } from './unitTable.ts';

/** Joined units that the trade reads every day, so that a slip finds them. */
const usualJoined = [
  'g/s',
  'kg/s',
  'kg/h',
  'lb/min',
  'lb/h',
  'L/h',
  'L/min',
  'mL/min',
  'cc/min',
  'gal/h',
  'gal/min',
  'ft³/min',
  'km/h',
  'm/s',
  'kgf/cm²',
  'g/L',
  'kg/m³',
  'cm²',
  'cm³',
  'mm²',
  'mm³',
  'm²',
  'm³',
  'ft³',
  'inch³',
  'V/s',
  '%/s',
  'kPa/s',
  '°/s',
];

/** What is left of a number with O for 0 or l for 1, from the letter on: `O0`, `l5.2`. */
const letterForDigit = /^(?!O2$)[OolI]+[.\d][OolI.\d]*$/;

let spellings: string[] | undefined;

/** What may have been meant by a text that is no unit, likeliest first, at most 3; each can be written in its place. */
export function nearestUnits(text: string): string[] {
  const slip = Object.hasOwn(unitSlips, text) ? unitSlips[text] : undefined;
  if (slip !== undefined) return [...slip];
  // `7O0` has a letter for a digit: no unit was meant.
  if (letterForDigit.test(text)) return [];
  // In `a/b·c` the reader cannot know whether c divides: offer both ways to say it.
  const parts = text.split('/');
  if (parts.length > 1 && /[·.]/.test(parts.slice(1).join('/'))) {
    const [first = '', ...rest] = text.split(/[/·.]/);
    const divided = [first, ...rest].join('/');
    const multiplied = `${first}·${rest.slice(1).join('·')}/${rest[0] ?? ''}`;
    return [divided, multiplied].filter((each) => unitOf(each) !== undefined);
  }
  spellings ??= [...unitRows.flatMap((row) => [row.symbol, ...row.also]), ...usualJoined].filter(
    (each) => each !== '1',
  );
  const found = new Set<string>();
  const near = nearest(text, spellings, 6);
  const sameLetters = near.filter((each) => each.toLowerCase() === text.toLowerCase());
  // One wrong letter of one says nothing; capitals alone say which was meant.
  const likely = sameLetters.length > 0 || text.length === 1 ? sameLetters : near;
  for (const spelling of likely) found.add(unitOf(spelling)?.symbol ?? spelling);
  if (found.size === 0 && parts.length > 1) {
    const mended = parts.map((part) => (unitOf(part) === undefined ? nearestUnits(part)[0] : part)).join('/');
    if (unitOf(mended) !== undefined) found.add(mended);
  }
  return [...found].slice(0, 3);
}

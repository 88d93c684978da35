import { daysSince1970 } from './calendar.ts';

/** How the clock of a column is read, where its texts alone do not show it. */
export interface ClockForm {
  /** What two groups of digits are: `10:20`. */
  readonly two: 'hh:mm' | 'mm:ss';
  /** How dates are written that do not begin with the year; undefined where that cannot be told. */
  readonly date: 'day first' | 'month first' | undefined;
  /** Whether a date stands in front, which a clock without one cannot be laid beside; undefined: either. */
  readonly isDated: boolean | undefined;
  /** Seconds after which it begins anew: a clock going back by more than half of them has passed its end. */
  readonly turn: number;
}

/** Seconds of a day. */
export const day = 86_400;
const hour = 3600;

/** A clock of the day, as most are. */
const usualClock: ClockForm = { two: 'hh:mm', date: undefined, isDated: undefined, turn: day };

const minutesAndSeconds: ClockForm = { ...usualClock, two: 'mm:ss' };

const yearFirst = /^(\d{4})(?:([-/.])(\d\d?)\2(\d\d?)|(\d\d)(\d\d)(?=T))(?:[T ]+|$)/;
const yearLast = /^(\d\d?)([-/.])(\d\d?)\2(\d{4}|\d\d)[T ]+/;
const groups =
  /^(\d{1,3}):?(\d\d)(?::?(\d\d)(?:[.,:](\d{1,9}))?|[.,](\d{1,9}))?\s*([AaPp]\.?[Mm]\.?)?\s*(Z|[+-]\d\d(?::?\d\d)?)?$/;

/** A clock time taken apart. */
interface Clock {
  readonly seconds: number;
  /** Days since 1970, both ways to read the date; 0 without one. */
  readonly dayFirst: number;
  readonly monthFirst: number;
  /** The date as it is written, where its order cannot be seen. */
  readonly date: string;
}

/**
 * Seconds of a clock time: since midnight, or since 1 January 1970 where a date stands in front of it.
 * `10:20:30.125`, `1:02:03 PM`, `2024-03-05T10:20:30+01:00` (ISO 8601), `05.03.2024 10:20:30`; `10:20` is by the form.
 * A date whose order cannot be told is passed over. Undefined for anything else.
 */
export function clockSeconds(text: string, form: ClockForm = usualClock): number | undefined {
  const found = takenApart(text.trim(), form);
  if (found === undefined) return undefined;
  const days =
    found.dayFirst === found.monthFirst || form.date === 'day first'
      ? found.dayFirst
      : form.date === 'month first'
        ? found.monthFirst
        : 0;
  return days * day + found.seconds;
}

/** Whether a text is a clock's, whatever its two groups are. */
export const isClockTime = (text: string): boolean =>
  // Most texts are numbers, and the look for a clock in them is long.
  /:|\dT\d/.test(text) &&
  (clockSeconds(text) !== undefined || clockSeconds(text, minutesAndSeconds) !== undefined);

/**
 * Reads a column's clock times from the top to the bottom. Where the order of a date cannot be told, its clock goes
 * on over midnight; a date that changes without passing midnight has no known distance, and is refused from there on.
 */
export function clockReader(form: ClockForm): (text: string) => number | undefined {
  let date: string | undefined;
  let before = 0;
  return (text) => {
    const found = takenApart(text.trim(), form);
    if (found === undefined) return undefined;
    if (found.dayFirst === found.monthFirst || form.date !== undefined) return clockSeconds(text, form);
    if (date !== undefined && found.date !== date && found.seconds >= before) return undefined;
    date = found.date;
    before = found.seconds;
    return found.seconds;
  };
}

/**
 * How a column's clock is read, from what is said of it (`mm:ss`) and its first texts; 'two readings' where `10:20` may be
 * hours and minutes or minutes and seconds.
 */
export function clockFormOf(
  texts: readonly string[],
  said: ClockForm['two'] | undefined,
): ClockForm | 'two readings' {
  const bare = texts.map((each) => each.trim().replace(yearFirst, '').replace(yearLast, ''));
  const isShort = bare.length > 0 && bare.every((each) => each.split(':').length === 2);
  const isDated = texts.some((each, i) => each.trim() !== bare[i]);
  const two = said ?? twoGroups(bare, isDated);
  if (two === undefined && isShort) return 'two readings';
  const turn = isShort && two === 'mm:ss' ? hour : day;
  return { two: two ?? 'hh:mm', date: dateOrder(texts), isDated, turn };
}

/** Minutes and seconds have a fraction, or more minutes than a day has hours; hours and minutes stand behind a date. */
function twoGroups(bare: readonly string[], isDated: boolean): ClockForm['two'] | undefined {
  if (bare.some((each) => /^\d{1,3}:\d\d[.,]\d/.test(each))) return 'mm:ss';
  if (isDated || bare.some((each) => /[AaPp]\.?[Mm]\.?$/.test(each))) return 'hh:mm';
  // `59:59` is followed by `1:00:00`.
  const short = bare.filter((each) => each.split(':').length === 2).length;
  if (short > 0 && short < bare.length) return 'mm:ss';
  const first = bare.map((each) => Number(/^(\d{1,3}):\d\d$/.exec(each)?.[1] ?? 0));
  return first.some((each) => each > 23) ? 'mm:ss' : undefined;
}

/** A part above 12 is no month. With points between, the day stands first (the custom wherever dates have points). */
function dateOrder(texts: readonly string[]): ClockForm['date'] {
  for (const each of texts) {
    const date = yearLast.exec(each.trim());
    if (date === null) continue;
    if (date[2] === '.' || Number(date[1]) > 12) return 'day first';
    if (Number(date[3]) > 12) return 'month first';
  }
  return undefined;
}

function takenApart(text: string, form: ClockForm): Clock | undefined {
  let rest = text;
  let dayFirst = 0;
  let monthFirst = 0;
  let date = '';
  const known = yearFirst.exec(rest);
  if (known !== null) {
    dayFirst = daysSince1970(Number(known[1]), Number(known[3] ?? known[5]), Number(known[4] ?? known[6]));
    monthFirst = dayFirst;
    rest = rest.slice(known[0].length);
  } else {
    const other = yearLast.exec(rest);
    if (other !== null) {
      const [whole, a = '', , b = '', written = ''] = other;
      const year = written.length === 2 ? 2000 + Number(written) : Number(written);
      dayFirst = daysSince1970(year, Number(b), Number(a));
      monthFirst = daysSince1970(year, Number(a), Number(b));
      date = whole;
      rest = rest.slice(whole.length);
    }
  }
  const isDated = rest.length < text.length;
  if (form.isDated !== undefined && form.isDated !== isDated) return undefined;
  const seconds = secondsIn(rest, form, known !== null);
  return seconds === undefined ? undefined : { seconds, dayFirst, monthFirst, date };
}

function secondsIn(text: string, { two }: ClockForm, isDated: boolean): number | undefined {
  const found = groups.exec(text);
  if (found === null) return undefined;
  const [, first = '', second = '', third, part, shortPart, half, zone] = found;
  // Without colons it is a clock only in full behind a date, as ISO 8601 has it: `20240305T102030`.
  if (!text.includes(':') && !(isDated && third !== undefined && first.length === 2)) return undefined;
  const fraction = part ?? shortPart ?? '0';
  const isShort = third === undefined;
  if (Number(second) > 59 || Number(third ?? 0) > 60) return undefined;
  const share = Number(fraction) / 10 ** fraction.length;
  if (isShort && half === undefined && (two === 'mm:ss' || shortPart !== undefined))
    return Number(first) * 60 + Number(second) + share;
  let hours = Number(first);
  if (half !== undefined) hours = (hours % 12) + (/^p/i.test(half) ? 12 : 0);
  if (hours > 23) return undefined;
  return hours * hour + Number(second) * 60 + Number(third ?? 0) + share - zoneSeconds(zone);
}

/** `+01:00` is one hour ahead of the clock that ISO 8601 counts by. */
function zoneSeconds(zone: string | undefined): number {
  const found = /^([+-])(\d\d):?(\d\d)?$/.exec(zone ?? '');
  if (found === null) return 0;
  const [, sign, hours, minutes = '0'] = found;
  return (sign === '-' ? -1 : 1) * (Number(hours) * hour + Number(minutes) * 60);
}

/**
 * Seconds since the first moment, in place: a clock that goes back by more than half its turn has passed its end.
 * Missing moments stay missing. Gives the first moment.
 */
export function sinceFirst(seconds: Float64Array, turn: number = day): number {
  let first = Number.NaN;
  let before = Number.NaN;
  let passed = 0;
  for (let i = 0; i < seconds.length; i++) {
    const shown = seconds[i] ?? Number.NaN;
    if (Number.isNaN(shown)) continue;
    if (Number.isNaN(first)) first = shown;
    else if (shown < before - turn / 2) passed += turn;
    before = shown;
    // A clock shows no more than nanoseconds; its difference carries no digits that it did not show.
    seconds[i] = Math.round((shown - first + passed) * 1e9) / 1e9;
  }
  return first;
}

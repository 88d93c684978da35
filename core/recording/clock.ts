const day = 86_400;

const dated = /^(\d{4})[-/.](\d\d?)[-/.](\d\d?)(?:[T ]+|$)/;
const otherDate = /^\d\d?[-/.]\d\d?[-/.]\d{2,4}[T ]+/;
const clock = /^(\d\d?):(\d\d)(?::(\d\d)(?:[.,:](\d{1,9}))?)?\s*([AaPp]\.?[Mm]\.?)?(?:Z|[+-]\d\d:?\d\d)?$/;

/**
 * Seconds of a clock time: since midnight, or since 1 January 1970 where a date in the order year, month, day stands
 * in front. `10:20:30.125`, `1:02:03 PM`, `2024-03-05T10:20:30`; `10:20` is hours and minutes. Another order of day
 * and month is not told apart: such a date is passed over. Undefined for anything else.
 */
export function clockSeconds(text: string): number | undefined {
  let rest = text.trim();
  let days = 0;
  const date = dated.exec(rest);
  if (date !== null) {
    days = daysSince1970(Number(date[1]), Number(date[2]), Number(date[3]));
    rest = rest.slice(date[0].length);
  } else rest = rest.replace(otherDate, '');
  const found = clock.exec(rest);
  if (found === null) return undefined;
  const [, hours = '', minutes = '', seconds = '0', part = '0', half] = found;
  let hour = Number(hours);
  if (half !== undefined) hour = (hour % 12) + (/^p/i.test(half) ? 12 : 0);
  if (hour > 23 || Number(minutes) > 59 || Number(seconds) > 60) return undefined;
  const fraction = Number(part) / 10 ** part.length;
  return days * day + hour * 3600 + Number(minutes) * 60 + Number(seconds) + fraction;
}

/**
 * Seconds since the first moment, in place: a clock that goes back by more than half a day has passed midnight.
 * Missing moments stay missing. Gives the first moment.
 */
export function sinceFirst(seconds: Float64Array): number {
  let first = Number.NaN;
  let before = Number.NaN;
  let passed = 0;
  for (let i = 0; i < seconds.length; i++) {
    const shown = seconds[i] ?? Number.NaN;
    if (Number.isNaN(shown)) continue;
    if (Number.isNaN(first)) first = shown;
    else if (shown < before - day / 2) passed += day;
    before = shown;
    // A clock shows no more than nanoseconds; its difference carries no digits that it did not show.
    seconds[i] = Math.round((shown - first + passed) * 1e9) / 1e9;
  }
  return first;
}

/** Days of the Gregorian calendar (by its rule of leap years), 1 January 1970 being 0. */
function daysSince1970(year: number, month: number, dayOfMonth: number): number {
  const shifted = month <= 2 ? year - 1 : year;
  const ofYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + dayOfMonth - 1;
  const leaps = Math.floor(shifted / 4) - Math.floor(shifted / 100) + Math.floor(shifted / 400);
  return shifted * 365 + leaps + ofYear - 719_468;
}

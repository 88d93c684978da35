/** Days of the Gregorian calendar (by its rule of leap years), 1 January 1970 being 0. */
export function daysSince1970(year: number, month: number, dayOfMonth: number): number {
  const shifted = month <= 2 ? year - 1 : year;
  const ofYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + dayOfMonth - 1;
  const leaps = Math.floor(shifted / 4) - Math.floor(shifted / 100) + Math.floor(shifted / 400);
  return shifted * 365 + leaps + ofYear - 719_468;
}

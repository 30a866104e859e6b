/** Calendar arithmetic of the proleptic Gregorian calendar, without Date: days since 1970-01-01. */

export const dayMs = 86_400_000;

const daysBeforeMonth = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];
const daysInMonths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

export function isLeapYear(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

/** Days since 1970-01-01 of a date, or NaN where there is no such date. Years 1 to 9999. */
export function dayNumber(year: number, month: number, day: number): number {
  if (year < 1 || year > 9999 || month < 1 || month > 12 || day < 1) return Number.NaN;
  const leap = isLeapYear(year);
  if (day > daysInMonths[month - 1]! + (leap && month === 2 ? 1 : 0)) return Number.NaN;
  const past = year - 1;
  const toYear = past * 365 + Math.floor(past / 4) - Math.floor(past / 100) + Math.floor(past / 400);
  return toYear + daysBeforeMonth[month - 1]! + (leap && month > 2 ? 1 : 0) + day - 1 - 719_162;
}

export interface CivilDate {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/** The date of a day number; inverse of `dayNumber` for years 1 to 9999. */
export function civilDate(days: number): CivilDate {
  let year = 1970 + Math.floor(days / 365.2425);
  while (dayNumber(year, 1, 1) > days) year--;
  while (dayNumber(year + 1, 1, 1) <= days) year++;
  const ofYear = days - dayNumber(year, 1, 1);
  let month = 12;
  while (dayNumber(year, month, 1) - dayNumber(year, 1, 1) > ofYear) month--;
  return { year, month, day: days - dayNumber(year, month, 1) + 1 };
}

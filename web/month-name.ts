const names = new Intl.DateTimeFormat('en', { month: 'long', year: 'numeric', timeZone: 'UTC' });

/** What stands in the place of a month for all days of an export. */
export const allDays = 'all';

/** September 2026 for 2026-09; what is no month stays as it is. */
export function monthName(month: string): string {
  if (month === allDays) return 'All days of the export';
  const time = /^\d{4}-\d{2}$/.test(month) ? Date.parse(month) : Number.NaN;
  return Number.isNaN(time) ? month : names.format(time);
}

/** Files of a result, beside the records. */
export const resultNames = {
  findings: 'findings.json',
  report: 'report.json',
  log: 'log.json',
  background: 'background.json',
  page: 'report.html',
  visit: 'visit.html',
  siteFile: 'site.yaml',
} as const;

/** What stands in the place of a month for all days of the export. */
export const allDays = 'all';

/** `month-2026-09.html`, made when it is first asked for. */
export function monthName(month: string): string {
  return `month-${month}.html`;
}

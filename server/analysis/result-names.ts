/** Files of a result, beside the records. */
export const resultNames = {
  findings: 'findings.json',
  report: 'report.json',
  log: 'log.json',
  page: 'report.html',
  siteFile: 'site.yaml',
} as const;

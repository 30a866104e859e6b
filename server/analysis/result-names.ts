/** Files of a result, beside the records. */
export const resultNames = {
  findings: 'findings.json',
  report: 'report.json',
  log: 'log.json',
  siteFile: 'site.yaml',
} as const;

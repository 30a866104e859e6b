import type { ImportIssue, ImportReport } from '../model/import-report.ts';
import type { ImportDocument } from './findings-schema.ts';

type DocumentIssue = ImportDocument['issues'][number];

function documentIssue({ code, line, column, count, message, examples }: ImportIssue): DocumentIssue {
  return { code, line, column, count, message, ...(examples ? { examples: [...examples] } : {}) };
}

/** The account of the import, as the findings document and `normalize --report` carry it. */
export function importDocument(report: ImportReport): ImportDocument {
  return {
    timeZone: report.timeZone,
    timeZoneSource: report.timeZoneSource,
    files: report.files.map((file) => ({
      name: file.name,
      rows: file.rows,
      rowsRejected: file.rowsRejected,
      values: file.values,
      valuesRejected: file.valuesRejected,
      issues: file.issues.map(documentIssue),
      choices: file.choices.map(({ about, chosen, because, override }) => ({
        about,
        chosen,
        because,
        override,
      })),
    })),
    issues: report.issues.map(documentIssue),
  };
}

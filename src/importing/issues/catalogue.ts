import { noteIssues } from './note-codes.ts';
import { refusalIssues } from './refusal-codes.ts';
import { rowIssues } from './row-codes.ts';
import { siteIssues } from './site-codes.ts';
import { valueIssues } from './value-codes.ts';

/** Every code that an import report or a refusal can carry. */
export const issueCatalogue = {
  ...rowIssues,
  ...valueIssues,
  ...noteIssues,
  ...siteIssues,
  ...refusalIssues,
} as const;

export type IssueCode = keyof typeof issueCatalogue;

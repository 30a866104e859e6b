import { type Document, LineCounter, parseDocument } from 'yaml';
import type { z } from 'zod';
import { ImportRefusal } from '../readings.ts';
import { inconsistencies } from './consistency.ts';
import { describeIssue } from './describe-issue.ts';
import type { Mistake } from './mistake.ts';
import { type SiteFile, siteFileSchema } from './schema.ts';

export type { SiteCircuit, SiteFile, SiteRack, SiteSuctionGroup, SiteTarget } from './schema.ts';

const largestSiteFile = 2_000_000;
const mistakesShown = 5;

/**
 * Reads a site file, YAML or JSON (JSON is YAML), and checks it against the published schema.
 *
 * Throws ImportRefusal naming the file, the line, the path and the nearest known key.
 */
export function parseSiteFile(text: string, fileName: string): SiteFile {
  if (text.length > largestSiteFile) {
    throw new ImportRefusal(
      'site-file-too-large',
      `${fileName} holds ${text.length} characters; a site file is a few hundred lines. Is it an export given as --site?`,
    );
  }
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false });
  const broken = document.errors[0];
  if (broken !== undefined) {
    const { line, col } = lines.linePos(broken.pos[0]);
    throw new ImportRefusal(
      'site-file-syntax',
      `${fileName}, line ${line}, column ${col}: this is neither YAML nor JSON (${broken.message.split('\n')[0]}). Correct that line.`,
    );
  }
  if (document.contents === null) {
    throw new ImportRefusal(
      'site-file-empty',
      `${fileName} is empty. Leave --site out to have the columns guessed.`,
    );
  }
  const checked = siteFileSchema.safeParse(plainValue(document, fileName));
  const mistakes: Mistake[] = checked.success
    ? inconsistencies(checked.data)
    : checked.error.issues.flatMap((issue) => describeIssue(issue as z.core.$ZodIssue));
  if (checked.success && mistakes.length === 0) return checked.data;
  const sentences = mistakes
    .map(({ path, sentence }) => ({ line: lineOf(document, lines, path), sentence }))
    .sort((a, b) => (a.line ?? 0) - (b.line ?? 0))
    .map(({ line, sentence }) => (line === null ? sentence : `line ${line}: ${sentence}`));
  const more = sentences.length - mistakesShown;
  throw new ImportRefusal(
    'site-file-invalid',
    `${fileName}, ${sentences.slice(0, mistakesShown).join(' ')}${more > 0 ? ` And ${more} more.` : ''}`,
  );
}

function plainValue(document: Document.Parsed, fileName: string): unknown {
  try {
    return document.toJS({ maxAliasCount: 100 });
  } catch {
    throw new ImportRefusal(
      'site-file-syntax',
      `${fileName}: too many aliases (&, *). Write the values out.`,
    );
  }
}

/** Line of the node at `path`, or of its nearest parent that exists. */
function lineOf(document: Document.Parsed, lines: LineCounter, path: readonly PropertyKey[]): number | null {
  for (let depth = path.length; depth > 0; depth--) {
    const position = positionOf(document, path.slice(0, depth));
    if (position !== null) return lines.linePos(position).line;
  }
  return null;
}

function positionOf(document: Document.Parsed, path: readonly PropertyKey[]): number | null {
  const parent = path.length > 1 ? document.getIn(path.slice(0, -1), true) : document.contents;
  const last = path.at(-1);
  for (const item of (parent as { items?: unknown[] } | null)?.items ?? []) {
    const key = (item as { key?: { value?: unknown; range?: readonly number[] } }).key;
    if (key?.value === last && key?.range !== undefined) return key.range[0]!;
  }
  const node = document.getIn(path, true) as { range?: readonly number[] } | undefined;
  return node?.range?.[0] ?? null;
}

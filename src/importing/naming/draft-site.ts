import { Document, isCollection, isMap, isScalar, isSeq, type Node, visit, type YAMLMap } from 'yaml';
import type { GuessNote } from './guess-note.ts';
import type { SiteGuess } from './guess-site.ts';

const longestLine = 118;

/**
 * The guess as a site file in YAML to be looked over and corrected: each guess with its reason and sureness in a
 * comment, what is unsure as questions at the top. Reads back with parseSiteFile to the same site file.
 */
export function draftSite(guess: SiteGuess): string {
  const document = new Document(guess.site, { compat: 'yaml-1.1' });
  quoteForOlderReaders(document);
  for (const note of guess.notes) explain(document, note);
  document.commentBefore = opening(guess);
  for (const list of listsOf(document)) list.flow = true;
  return document.toString({ lineWidth: longestLine, flowCollectionPadding: true });
}

/** `Comp 1 On?` within a list: YAML 1.1, which many readers still speak, takes the mark for its own. */
function quoteForOlderReaders(document: Document): void {
  visit(document, {
    Scalar(_, node) {
      if (typeof node.value === 'string' && node.value.includes('?')) node.type = 'QUOTE_DOUBLE';
    },
  });
}

function opening({ questions, confidence }: SiteGuess): string {
  const lines = [
    ' Drafted by rimelog from the names, units and behaviour of the columns. Look it over, correct what is wrong',
    ' and give it as --site. The number behind a reason is how sure the guess is, from 0 to 1.',
    ` Circuits and probes on the whole: ${confidence.toFixed(2)}.`,
  ];
  if (questions.length > 0)
    lines.push('', ' To be answered:', ...questions.map((question) => ` - ${oneLine(question)}`));
  return lines.join('\n');
}

function explain(document: Document, note: GuessNote): void {
  const pair = pairAt(document, note.path);
  if (pair === null) return;
  const reason = ` ${oneLine(note.because)} (${note.confidence.toFixed(2)})`;
  const { key, value } = pair;
  if (isScalar(value)) value.comment = joined(value.comment, reason);
  else key.commentBefore = joined(key.commentBefore, reason);
}

function joined(before: string | null | undefined, reason: string): string {
  if (!before) return reason;
  return before.split(';').includes(reason) ? before : `${before};${reason}`;
}

/** The key and value at a path of keys and ids: `circuits`, `M01`, `probes`. */
function pairAt(document: Document, path: readonly string[]): { key: Node; value: unknown } | null {
  let here: unknown = document.contents;
  let found: { key: Node; value: unknown } | null = null;
  for (const part of path) {
    if (isSeq(here)) {
      here = here.items.find((item) => isMap(item) && item.get('id') === part);
      continue;
    }
    const pair = isMap(here)
      ? (here as YAMLMap<Node, unknown>).items.find(({ key }) => isScalar(key) && key.value === part)
      : undefined;
    if (pair === undefined) return null;
    found = { key: pair.key, value: pair.value };
    here = pair.value;
  }
  return found;
}

/** Lists of points and the small blocks, which read better on one line. */
function listsOf(document: Document): { flow?: boolean }[] {
  const found: { flow?: boolean }[] = [];
  const walk = (node: unknown): boolean => {
    if (!isCollection(node)) return hasComment(node);
    const children = node.items.flatMap((item) =>
      isCollection(item) || isScalar(item) ? item : pairNodes(item),
    );
    const commented = children.map(walk).some(Boolean);
    const deep = children.some(isCollection);
    if (!commented && !deep && !isMapWithId(node)) found.push(node);
    return commented;
  };
  walk(document.contents);
  return found;
}

function pairNodes(pair: unknown): unknown[] {
  const { key, value } = pair as { key: unknown; value: unknown };
  return [key, value];
}

function hasComment(node: unknown): boolean {
  return isScalar(node) && Boolean(node.comment ?? node.commentBefore);
}

function isMapWithId(node: unknown): boolean {
  return isMap(node) && node.has('id');
}

function oneLine(text: string): string {
  return text.replace(/[\s\p{Cc}\u2028\u2029]+/gu, ' ');
}

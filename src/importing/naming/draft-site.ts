import { Document } from 'yaml';
import type { SiteGuess } from './guess-site.ts';

/** The guess as a site file in YAML to be corrected, each guess explained in a comment. */
export function draftSite(guess: SiteGuess): string {
  const document = new Document(guess.site);
  document.commentBefore = ' Guessed by rimelog.';
  return document.toString({ lineWidth: 110 });
}

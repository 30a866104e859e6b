import { createHash } from 'node:crypto';
import { airNotFood } from '../air-not-food.ts';
import { type Html, type HtmlPart, html, trusted } from './escape.ts';
import { styleSheet } from './style.ts';

export interface Page {
  /** Of the window. */
  readonly title: string;
  readonly kicker: string;
  readonly heading: string;
  /** What it rests on. */
  readonly under: string;
  /** What it comes to, in one sentence. */
  readonly lead: string;
  readonly main: HtmlPart;
  readonly footer: HtmlPart;
  /** Rules of this page alone, behind the common style sheet. */
  readonly style?: string;
}

/**
 * A page as one file: its style inside, its plots as SVG, no script, nothing fetched. The policy in its head allows
 * that one style sheet by its hash and nothing else.
 */
export function htmlPage({ title, kicker, heading, under, lead, main, footer, style = '' }: Page): string {
  const sheet = `${styleSheet()}${style}`;
  const hash = createHash('sha256').update(sheet).digest('base64');
  const policy = `default-src 'none'; style-src 'sha256-${hash}'; base-uri 'none'; form-action 'none'`;
  const page: Html = html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${trusted(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${title}</title>
<style>${trusted(sheet)}</style>
</head>
<body>
<div class="page">
<header>
<p class="kicker">${kicker}</p>
<h1>${heading}</h1>
<p class="quiet">${under}</p>
<p class="lead">${lead}</p>
<p class="air">${airNotFood}</p>
</header>
<main>
${main}
</main>
<footer>
${footer}
<p>Made by rimelog from the export alone, on one machine; nothing was fetched or sent.</p>
</footer>
</div>
</body>
</html>
`;
  return page.toString();
}

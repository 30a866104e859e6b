import { visibleText } from '../visible-text.ts';

/** Markup that is already safe. Only `html` and `trusted` make it. */
export class Html {
  readonly markup: string;
  constructor(markup: string) {
    this.markup = markup;
  }
  toString(): string {
    return this.markup;
  }
}

export type HtmlPart = Html | string | number | null | false | readonly HtmlPart[];

const entities: Readonly<{ [character: string]: string }> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Safe between tags and inside a quoted attribute. */
export function escapeText(text: string): string {
  return visibleText(text).replace(/[&<>"']/g, (character) => entities[character]!);
}

function markupOf(part: HtmlPart): string {
  if (part === null || part === false) return '';
  if (part instanceof Html) return part.markup;
  if (typeof part === 'number') return String(part);
  if (typeof part === 'string') return escapeText(part);
  return part.map(markupOf).join('');
}

/** A template in which whatever is put in is escaped, unless it is Html itself. */
export function html(strings: TemplateStringsArray, ...parts: readonly HtmlPart[]): Html {
  let markup = strings[0]!;
  parts.forEach((part, index) => {
    markup += markupOf(part) + strings[index + 1]!;
  });
  return new Html(markup);
}

/** For text that this program wrote itself: style sheets and path data. */
export function trusted(markup: string): Html {
  return new Html(markup);
}

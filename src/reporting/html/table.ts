import { type Html, type HtmlPart, html } from './escape.ts';

export interface HtmlColumn {
  readonly title: string;
  readonly isNumber: boolean;
}

export const wordColumn = (title: string): HtmlColumn => ({ title, isNumber: false });
export const numberColumn = (title: string): HtmlColumn => ({ title, isNumber: true });

/** A table that scrolls by itself where the page is narrow. The first cell of a row is its heading. */
export function htmlTable(
  label: string,
  columns: readonly HtmlColumn[],
  rows: readonly (readonly HtmlPart[])[],
): Html {
  const kind = (k: number): Html | null => (columns[k]!.isNumber ? html` class="number"` : null);
  const cell = (part: HtmlPart, k: number): Html =>
    k === 0 ? html`<th scope="row">${part}</th>` : html`<td${kind(k)}>${part}</td>`;
  return html`<div class="scroll" role="region" tabindex="0" aria-label="${label}"><table class="dense"><thead><tr>${columns.map(
    ({ title }, k) => html`<th scope="col"${kind(k)}>${title}</th>`,
  )}</tr></thead><tbody>${rows.map(
    (row) => html`<tr>${row.map(cell)}</tr>
`,
  )}</tbody></table></div>`;
}

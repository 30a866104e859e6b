/** The few parts of plotly.js that the pages use. */
declare module 'plotly.js-dist-min' {
  export type Json = { readonly [key: string]: unknown };

  export interface PlotElement extends HTMLElement {
    on(event: 'plotly_relayout', listener: (change: Json) => void): void;
    on(event: 'plotly_doubleclick', listener: () => boolean): void;
  }

  export function react(
    element: HTMLElement,
    traces: readonly Json[],
    layout: Json,
    config: Json,
  ): Promise<PlotElement>;
  export function purge(element: HTMLElement): void;
}

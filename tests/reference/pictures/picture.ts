import type { Chart } from '../../../src/reporting/charts/chart.ts';

/** The picture of one page of docs/methods, drawn from simulated histories with the report's own charts. */
export interface Picture {
  /** The page it stands on: docs/methods/ID.md. */
  readonly id: string;
  /** What is to be seen, for those who cannot see it; the page embeds the picture with these words. */
  readonly alt: string;
  /** What the tinted span is; empty where there is none. */
  readonly tinted: string;
  readonly draw: () => readonly Chart[];
}

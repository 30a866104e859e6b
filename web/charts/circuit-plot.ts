import type { PlotElement } from 'plotly.js-dist-min';
import type { PlotView } from '../address.ts';
import type { CircuitSeries, Finding, SiteReport, Span } from '../json.ts';
import { readSeries } from '../server.ts';
import { readColors } from './colors.ts';
import { layoutFor } from './layout.ts';
import { loadPlotly } from './load-plotly.ts';
import { axisOfRange, siteClock } from './site-clock.ts';
import { tracesFor } from './traces.ts';

/** Longer spans than this are shown as settled air unless told: defrost peaks would hide the weeks. */
const settledFromMs = 4 * 86_400_000;
/** Pixels between the margins of A4 and of Letter, whichever is less. */
const paperWidth = 680;
const shortestRangeMs = 30 * 60_000;

export interface PlotOptions {
  readonly exportId: string;
  readonly of: 'circuit' | 'group';
  readonly name: string;
  readonly findings: readonly Finding[];
  readonly report: SiteReport;
  /** Called when the user has chosen another range or view, to be kept in the address. */
  readonly onChange: (range: Span | null, view: PlotView) => void;
  readonly onDrawn: (series: CircuitSeries, settled: boolean) => void;
  readonly onFailure: (error: unknown) => void;
}

/** The plot of a circuit or a suction group: asks the server for what its pixels can show, again on every zoom. */
export class CircuitPlot {
  readonly element: HTMLElement;
  readonly #options: PlotOptions;
  #range: Span | null;
  #view: PlotView;
  #asking: AbortController | null = null;
  #series: CircuitSeries | null = null;
  #listening = false;
  #width = 0;
  #printing = false;
  readonly #dark = matchMedia('(prefers-color-scheme: dark)');
  readonly #sizes = new ResizeObserver(() => this.#resized());

  constructor(element: HTMLElement, range: Span | null, view: PlotView, options: PlotOptions) {
    this.element = element;
    this.#options = options;
    this.#range = range;
    this.#view = view;
    this.#sizes.observe(element);
    this.#dark.addEventListener('change', this.redraw);
    addEventListener('beforeprint', this.#print);
    addEventListener('afterprint', this.#print);
  }

  get shown(): CircuitSeries | null {
    return this.#series;
  }

  /** What was asked for; null for the whole span. */
  get range(): Span | null {
    return this.#range;
  }

  get view(): PlotView {
    return this.#view;
  }

  show(range: Span | null, view: PlotView = this.#view): void {
    this.#range = range;
    this.#view = view;
    this.#options.onChange(range, view);
    void this.load();
  }

  /** Zooms around the middle; factors below 1 zoom in. Moves by `shift` of the width. */
  zoom(factor: number, shift: number): void {
    if (this.#series === null) return;
    const { span, logSpan } = this.#series;
    const width = span.to - span.from;
    const longest = logSpan.to - logSpan.from;
    const wanted = Math.min(longest, Math.max(shortestRangeMs, width * factor));
    if (factor > 1 && wanted >= longest) {
      this.show(null);
      return;
    }
    const middle = (span.from + span.to) / 2 + shift * width;
    const from = Math.min(Math.max(logSpan.from, middle - wanted / 2), logSpan.to - wanted);
    this.show({ from, to: from + wanted });
  }

  async load(): Promise<void> {
    this.#asking?.abort();
    const asking = new AbortController();
    this.#asking = asking;
    this.element.setAttribute('aria-busy', 'true');
    try {
      const { exportId, of, name } = this.#options;
      const pixels = Math.max(200, Math.min(4000, this.element.clientWidth || 800));
      this.#series = await readSeries(exportId, of, name, this.#range, pixels, asking.signal);
      await this.#draw();
    } catch (error) {
      if (!asking.signal.aborted) this.#options.onFailure(error);
    }
    if (this.#asking === asking) this.element.removeAttribute('aria-busy');
  }

  readonly redraw = (): void => {
    if (this.#series !== null) void this.#draw();
  };

  dispose(): void {
    this.#asking?.abort();
    this.#sizes.disconnect();
    this.#dark.removeEventListener('change', this.redraw);
    removeEventListener('beforeprint', this.#print);
    removeEventListener('afterprint', this.#print);
    if (this.#listening) void loadPlotly().then((plotly) => plotly.purge(this.element));
  }

  /** On paper: the light colours, and a width that A4 and Letter hold. */
  readonly #print = ({ type }: Event): void => {
    this.#printing = type === 'beforeprint';
    document.documentElement.classList.toggle('printing', this.#printing);
    this.redraw();
  };

  async #draw(): Promise<void> {
    const plotly = await loadPlotly();
    const series = this.#series;
    if (series === null || !this.element.isConnected) return;
    const { findings, report } = this.#options;
    const settled =
      this.#view === 'settled' ||
      (this.#view === 'auto' && series.span.to - series.span.from > settledFromMs);
    const colors = readColors();
    const clock = siteClock(series.offsets);
    const marked = new Set(findings.flatMap(({ probe }) => (probe === null ? [] : [probe])));
    this.#width = this.#printing ? paperWidth : this.element.clientWidth;
    const narrow = this.#width < 640;
    const traces = tracesFor({ series, clock, colors, marked }, settled);
    const layout = layoutFor({
      series,
      clock,
      colors,
      findings,
      report,
      settled,
      width: this.#width,
      narrow,
    });
    const config = { displayModeBar: false, doubleClick: false, showTips: false };
    const plot = await plotly.react(this.element, traces, layout, config);
    if (!this.#listening) this.#listen(plot);
    this.#options.onDrawn(series, settled);
  }

  #listen(plot: PlotElement): void {
    this.#listening = true;
    plot.on('plotly_relayout', (change) => {
      const from = change['xaxis.range[0]'];
      const to = change['xaxis.range[1]'];
      if (from === undefined || to === undefined || this.#series === null) return;
      const clock = siteClock(this.#series.offsets);
      const instant = (value: unknown): number => clock.fromAxis(axisOfRange(value));
      this.show({ from: instant(from), to: Math.max(instant(to), instant(from) + shortestRangeMs) });
    });
    plot.on('plotly_doubleclick', () => {
      this.show(null);
      return false;
    });
  }

  #resized(): void {
    if (this.#printing) return;
    const width = this.element.clientWidth;
    if (width > 0 && Math.abs(width - this.#width) > 8) this.redraw();
  }
}

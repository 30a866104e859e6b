import type { Severity } from '../../model/finding.ts';
import type { ReducedSeries } from '../reduce-series.ts';
import type { Domain } from './scale.ts';
import type { TimeTick } from './time-ticks.ts';

/** A picture of one span of time: panels below each other over the same axis. Values in the site's units. */
export interface Chart {
  readonly title: string;
  /** What is seen, for those who cannot see it. */
  readonly description: string;
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly TimeTick[];
  readonly shades: readonly Shade[];
  readonly highlight: Highlight | null;
  readonly panels: readonly Panel[];
}

export interface Shade {
  readonly kind: 'defrost' | 'off';
  readonly from: number;
  readonly to: number;
}

/** The span of the finding, its onset marked. */
export interface Highlight {
  readonly severity: Severity;
  readonly from: number;
  readonly to: number;
  /** Null where the onset lies before the chart. */
  readonly label: string | null;
}

export interface Band {
  readonly times: readonly number[];
  readonly low: readonly (number | null)[];
  readonly high: readonly (number | null)[];
}

export interface ChartLine {
  readonly label: string;
  /** Position among the probes: colour and dash; `plain` for what is no probe. */
  readonly slot: number | 'plain';
  readonly strong: boolean;
  readonly line: ReducedSeries;
  readonly band: Band | null;
}

/** A level that is no measurement: a set point, a target, a limit. */
export interface Level {
  readonly kind: 'set-point' | 'limit';
  readonly label: string;
  readonly line: ReducedSeries;
}

export interface LinesPanel {
  readonly kind: 'lines';
  readonly title: string;
  readonly unit: string;
  readonly height: number;
  readonly domain: Domain;
  readonly lines: readonly ChartLine[];
  readonly levels: readonly Level[];
}

/** A share from 0 to 1 as a filled area. */
export interface SharePanel {
  readonly kind: 'share';
  readonly title: string;
  readonly height: number;
  readonly line: ReducedSeries;
}

/** One mark for each thing that happened. */
export interface MarksPanel {
  readonly kind: 'marks';
  readonly title: string;
  readonly height: number;
  readonly spans: readonly { readonly from: number; readonly to: number }[];
}

export type Panel = LinesPanel | SharePanel | MarksPanel;

/** The class of a line in the style sheet. */
export function slotName(slot: ChartLine['slot']): string {
  return slot === 'plain' ? slot : `s${slot}`;
}

/** The server's answers (docs/reference/openapi.json), as far as the pages read them. */

import type { CircuitBackground } from '../src/reporting/background/circuit-background.ts';
import type { UsualPoint, UsualRange } from '../src/reporting/background/normal-here.ts';

export type { CircuitBackground, UsualPoint, UsualRange };

export type Severity = 'note' | 'watch' | 'act';

export interface ProblemText {
  readonly code: string;
  readonly message: string;
  readonly remedy: string;
}

export interface ExportEntry {
  readonly id: string;
  readonly received: string;
  readonly state: 'waiting' | 'analysing' | 'ready' | 'failed';
  readonly files: readonly { readonly name: string; readonly bytes: number }[];
  readonly siteFile: string | null;
  readonly progress: Progress | null;
  readonly problem: ProblemText | null;
  readonly summary: {
    readonly site: string;
    readonly start: string;
    readonly end: string;
    readonly circuits: number;
    readonly findings: Readonly<Record<Severity, number>>;
    readonly guessedSite: boolean;
  } | null;
}

export interface Progress {
  readonly stage: string;
  readonly share: number | null;
}

export interface Measure {
  readonly name: string;
  readonly display: string;
}

export interface Cause {
  readonly cause: string;
  readonly likelihood: number;
  readonly because: string;
  readonly checkFirst: readonly string[];
  readonly bring: readonly string[];
}

export interface Finding {
  readonly id: string;
  readonly kind: string;
  readonly severity: Severity;
  readonly circuit: string | null;
  readonly suctionGroup: string | null;
  readonly probe: string | null;
  readonly points: readonly string[];
  readonly origin: string;
  readonly onset: string;
  readonly end: string | null;
  readonly confidence: number;
  readonly summary: string;
  readonly evidence: readonly Measure[];
  readonly causes: readonly Cause[];
  readonly notThis: readonly string[];
  readonly wouldDecide: string | null;
  readonly covers: readonly string[];
}

export interface FindingsDocument {
  readonly site: string;
  readonly timeZone: string;
  readonly span: { readonly start: string; readonly end: string };
  readonly findings: readonly Finding[];
  readonly circuits: readonly {
    readonly id: string;
    readonly name: string;
    readonly rank: number;
    readonly worst: Severity | null;
  }[];
  readonly notice: string;
}

export interface CircuitDays {
  readonly id: string;
  readonly name: string;
  readonly suctionGroup: string | null;
  readonly setPoint: readonly (number | null)[];
  readonly probes: readonly {
    readonly point: string;
    readonly median: readonly (number | null)[];
    readonly recoveryMinutes: readonly (number | null)[];
  }[];
  readonly duty: readonly (number | null)[];
  readonly defrosts: readonly (number | null)[];
}

export interface SiteReport {
  readonly title: string;
  readonly headline: string;
  readonly restsOn: string;
  readonly places: readonly {
    readonly title: string;
    readonly circuit: string | null;
    readonly suctionGroup: string | null;
    readonly worst: Severity;
    readonly findings: readonly string[];
  }[];
  readonly findings: Readonly<{
    [id: string]: {
      readonly place: string;
      readonly summary: string;
      readonly facts: readonly { readonly label: string; readonly text: string }[];
      readonly cautions: readonly { readonly hazard: string; readonly advice: string }[];
    };
  }>;
  readonly days: readonly string[];
  readonly temperatureUnit: string;
  readonly circuits: readonly CircuitDays[];
  readonly cautionsDefer: string;
  readonly openQuestions: readonly {
    readonly reason: string;
    readonly needs: string | null;
    readonly places: readonly string[];
  }[];
  readonly import: readonly { readonly heading: string; readonly details: readonly string[] }[];
  readonly guessedSite: boolean;
  /** Not given by an analysis of an earlier rimelog. */
  readonly fullMonths?: readonly string[];
  readonly words: {
    readonly severity: Readonly<
      Record<Severity, { readonly word: string; readonly symbol: string; readonly meaning: string }>
    >;
    readonly origin: Readonly<Record<string, string>>;
    readonly kind: Readonly<Record<string, string>>;
    readonly cause: Readonly<Record<string, string>>;
  };
}

export interface Line {
  readonly times: readonly number[];
  readonly values: readonly (number | null)[];
}

/** Lowest and highest of each column. */
export interface Band {
  readonly low: readonly (number | null)[];
  readonly high: readonly (number | null)[];
}

export interface Span {
  readonly from: number;
  readonly to: number;
}

export interface CircuitSeries {
  readonly circuit: string;
  readonly name: string;
  readonly span: Span;
  readonly logSpan: Span;
  readonly stepMs: number;
  readonly timeZone: string;
  readonly offsets: readonly { readonly from: number; readonly offsetMinutes: number }[];
  readonly temperatureUnit: string;
  readonly pressureUnit: string;
  readonly probes: readonly { readonly point: string; readonly line: Line }[];
  readonly settled: {
    readonly times: readonly number[];
    readonly probes: readonly (Band & {
      readonly point: string;
      readonly median: readonly (number | null)[];
    })[];
    readonly valve: readonly (number | null)[] | null;
    readonly suction: (Band & { readonly mean: readonly (number | null)[] }) | null;
  };
  readonly setPoint: Line | null;
  readonly limit: number | null;
  readonly defrosts: readonly (Span & { readonly source: string })[];
  readonly off: readonly Span[];
  readonly valve: { readonly point: string; readonly line: Line } | null;
  readonly suction: {
    readonly group: string;
    readonly point: string;
    readonly line: Line;
    readonly target: Line | null;
  } | null;
}

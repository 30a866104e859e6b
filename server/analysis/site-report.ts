import { fullMonths } from '../../src/audit/month.ts';
import type { Severity } from '../../src/model/finding.ts';
import type { AnalysedExports } from '../../src/pipeline/analyse-exports.ts';
import { type Caution, cautionsDefer, cautionsFor } from '../../src/reporting/cautions.ts';
import { type Fact, findingFacts } from '../../src/reporting/finding-facts.ts';
import { headline, restsOn, siteTitle } from '../../src/reporting/headline.ts';
import { type ImportLines, importLines } from '../../src/reporting/import-lines.ts';
import { type OpenQuestion, openQuestions } from '../../src/reporting/open-questions.ts';
import { placeTitle, reportOrder, summaryUnder } from '../../src/reporting/report-order.ts';
import { siteScale } from '../../src/reporting/site-scale.ts';
import { causeWords, kindWords, originWords, severityWords } from '../../src/reporting/words.ts';

import { type CircuitDays, circuitDays } from './circuit-days.ts';
import { type PressureDays, pressureDays } from './pressure-days.ts';

type CautionText = Pick<Caution, 'hazard' | 'advice'>;

/** What the pages say beside the findings document, in the words that the terminal and the HTML report use too. */
export interface SiteReport {
  readonly format: 'rimelog-site-report/1';
  /** What the site is called; the names of its files when nobody has said. */
  readonly title: string;
  readonly headline: string;
  readonly restsOn: string;
  /** Places with something to act on or to watch, worst first; findings by id. */
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
      /** The sentence as it reads under the name of its place. */
      readonly summary: string;
      readonly facts: readonly Fact[];
      readonly cautions: readonly CautionText[];
    };
  }>;
  /** Local dates; the daily figures of the circuits follow them. */
  readonly days: readonly string[];
  readonly temperatureUnit: string;
  readonly circuits: readonly CircuitDays[];
  readonly pressureUnit: string;
  readonly pressures: readonly PressureDays[];
  readonly cautionsDefer: string;
  readonly openQuestions: readonly OpenQuestion[];
  readonly import: readonly ImportLines[];
  readonly guessedSite: boolean;
  /** Months on the site's clock that the export holds from end to end: `2026-09`. */
  readonly fullMonths: readonly string[];
  readonly words: {
    readonly severity: typeof severityWords;
    readonly origin: typeof originWords;
    readonly kind: typeof kindWords;
    readonly cause: typeof causeWords;
  };
}

const textOf = ({ hazard, advice }: Caution): CautionText => ({ hazard, advice });

export function siteReport({ log, report, signals, diagnosis, guess }: AnalysedExports): SiteReport {
  const order = reportOrder(diagnosis, log);
  return {
    format: 'rimelog-site-report/1',
    title: siteTitle(log, report),
    headline: headline(order, diagnosis, log),
    restsOn: restsOn(log),
    places: order.places.map(({ title, circuit, suctionGroup, worst, findings }) => ({
      title,
      circuit,
      suctionGroup,
      worst,
      findings: findings.map(({ id }) => id),
    })),
    findings: Object.fromEntries(
      diagnosis.findings.map((finding) => [
        finding.id,
        {
          place: placeTitle(finding, log),
          summary: summaryUnder(placeTitle(finding, log), finding),
          facts: findingFacts(finding, log),
          cautions: cautionsFor([finding]).map(textOf),
        },
      ]),
    ),
    days: log.calendar.days.map(({ date }) => date),
    temperatureUnit: siteScale(log).temperatureSign,
    circuits: signals.circuits.map((circuit) => circuitDays(circuit, log)),
    pressureUnit: siteScale(log).pressureSign,
    pressures: signals.groups.flatMap((group) => pressureDays(group, log)),
    cautionsDefer,
    openQuestions: openQuestions(diagnosis, log),
    import: importLines(report),
    guessedSite: guess !== null,
    fullMonths: fullMonths(log),
    words: { severity: severityWords, origin: originWords, kind: kindWords, cause: causeWords },
  };
}

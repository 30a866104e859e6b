import type { PlantedFault } from '../../sample-logs/maker/simulated-store.ts';
import type { Diagnosis } from '../../src/model/finding.ts';
import { findingFor } from './match.ts';
import type { FaultOutcome } from './outcome.ts';
import { shareText } from './shares.ts';

const hourMs = 3_600_000;

/** What is said of a fault in an export that ends some hours after it began. */
export interface HoursAfter {
  readonly hours: number;
  readonly found: boolean;
  readonly origin: boolean;
  readonly cause: boolean;
  /** The finding says that the data cannot tell whose fault it is. */
  readonly undecided: boolean;
}

/** Of each number of hours that the store's history holds after the onset. */
export function saidHoursAfter(
  fault: PlantedFault,
  hours: readonly number[],
  endMs: number,
  diagnoseUntil: (untilMs: number) => Diagnosis,
): HoursAfter[] {
  return hours
    .filter((after) => fault.onset + after * hourMs <= endMs)
    .map((after) => {
      const finding = findingFor(diagnoseUntil(fault.onset + after * hourMs).findings, fault);
      return {
        hours: after,
        found: finding !== null,
        origin: finding !== null && fault.origins.includes(finding.origin),
        cause: finding !== null && fault.causes.includes(finding.causes[0]?.cause as never),
        undecided: finding?.summary.includes('the data cannot tell') === true,
      };
    });
}

/** Found, origin, first cause, what is left open and what is surely said of the wrong origin, by fault and hours; as Markdown. */
export function hoursAfterTable(faults: readonly FaultOutcome[]): string {
  const names = [...new Set(faults.map(({ fault }) => fault.fault))];
  const rows = names.flatMap((name) => {
    const said = faults.filter(({ fault }) => fault.fault === name).flatMap(({ hoursAfter }) => hoursAfter);
    return [...new Set(said.map(({ hours }) => hours))].map((hours) => {
      const these = said.filter((one) => one.hours === hours);
      const found = these.filter((one) => one.found);
      const of = (test: (one: HoursAfter) => boolean) => `${found.filter(test).length}/${found.length}`;
      const told = [
        of(({ origin }) => origin),
        of(({ cause }) => cause),
        of(({ undecided }) => undecided),
        of(({ origin, undecided }) => !origin && !undecided),
      ];
      return `| ${name} | ${hours} | ${shareText(found.length, these.length)} | ${told.join(' | ')} |`;
    });
  });
  return `### Hours after a fault began\n\n${[
    '| fault | hours | found | origin | cause | undecided | sure of a wrong origin |',
    '| --- | --- | --- | --- | --- | --- | --- |',
    ...rows,
  ].join('\n')}`;
}

import type { Diagnosis, Finding, Severity } from '../model/finding.ts';
import { severities } from '../model/finding.ts';
import type { Log } from '../model/log.ts';

/** The findings of one place, worst first: a circuit, a suction group, or the whole record. */
export interface Place {
  readonly id: string;
  readonly title: string;
  readonly circuit: string | null;
  readonly suctionGroup: string | null;
  readonly worst: Severity;
  readonly findings: readonly Finding[];
}

export interface ReportOrder {
  /** Places with something to act on or to watch, worst first. */
  readonly places: readonly Place[];
  readonly notes: readonly Finding[];
}

function placeOf(finding: Finding): string {
  if (finding.circuit !== null) return `circuit ${finding.circuit}`;
  return finding.suctionGroup === null ? 'record' : `group ${finding.suctionGroup}`;
}

/** `M01 Cut fruit line-up`; a name that only repeats the id is not said twice. */
export function circuitTitle(log: Log, id: string): string {
  const name = log.circuits.find((circuit) => circuit.id === id)?.name ?? '';
  return name === '' || name === id ? id : `${id} ${name}`;
}

export function placeTitle(finding: Finding, log: Log): string {
  if (finding.circuit !== null) return circuitTitle(log, finding.circuit);
  return finding.suctionGroup === null ? 'The record' : `Suction group ${finding.suctionGroup}`;
}

/** Whether the lead of a place already told the cause and what to do about it. */
export function repeatsCause(finding: Finding, lead: Finding): boolean {
  const cause = finding.causes[0]?.cause;
  return finding !== lead && cause !== undefined && cause === lead.causes[0]?.cause;
}

/** The suction group whose trouble stands for what is seen at a circuit; null where none does. */
export function groupBehind(circuit: string, { findings }: Diagnosis): string | null {
  const cover = findings.find(({ severity, covers }) => severity !== 'note' && covers.includes(circuit));
  return cover?.suctionGroup ?? null;
}

/** The summary for a heading that already says where: `M01 Cut fruit: all its air …` loses its first words. */
export function summaryUnder(title: string, { summary, probe }: Finding): string {
  if (!summary.startsWith(`${title}: `)) return summary;
  const rest = summary.slice(title.length + 2);
  return probe !== null && rest.startsWith(probe) ? rest : rest.charAt(0).toUpperCase() + rest.slice(1);
}

/** The diagnosis's order kept, findings of one place brought together under its worst one; notes apart. */
export function reportOrder(diagnosis: Diagnosis, log: Log): ReportOrder {
  const places = new Map<string, Finding[]>();
  for (const finding of diagnosis.findings) {
    if (finding.severity === 'note') continue;
    const key = placeOf(finding);
    places.set(key, [...(places.get(key) ?? []), finding]);
  }
  return {
    places: [...places.values()].map((findings) => {
      const lead = findings[0]!;
      const worst = severities[Math.max(...findings.map(({ severity }) => severities.indexOf(severity)))]!;
      return {
        id: lead.circuit ?? lead.suctionGroup ?? 'record',
        title: placeTitle(lead, log),
        circuit: lead.circuit,
        suctionGroup: lead.suctionGroup,
        worst,
        findings,
      };
    }),
    notes: diagnosis.findings.filter(({ severity }) => severity === 'note'),
  };
}

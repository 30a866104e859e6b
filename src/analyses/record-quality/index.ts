import type { Evidence, Verdict } from '../../model/evidence.ts';
import { timeAt } from '../../model/grid.ts';
import type { Record } from '../../model/record.ts';
import { factsOf, type RecordFacts } from '../../signals/record-facts.ts';
import type { CircuitSignals, GroupSignals, Signals } from '../../signals/types.ts';
import { allRecords, recordsBesideProbes, recordsOfGroup } from './circuit-records.ts';
import { meta } from './meta.ts';
import { recordNote } from './note.ts';
import { settings } from './settings.ts';
import { gapEvidence, siteGaps } from './site-gaps.ts';
import { twins } from './twins.ts';
import { leaps, unitChange } from './unit-change.ts';

export { meta };
export const scope = 'circuit';

/** What is wrong with the record of one circuit; with the first circuit also what concerns the whole export. */
export function analyse(signals: CircuitSignals, _group: GroupSignals | null, site: Signals): Verdict {
  const { circuit, log } = signals;
  const facts = [...signals.facts, ...recordsBesideProbes(circuit).map(factsOf)];
  const where = { circuit: circuit.id, suctionGroup: circuit.suctionGroup };
  const evidence = [
    ...facts.flatMap((one) => [...notConnected(one, where, log), ...thin(one, facts, where, log)]),
    ...twins(facts, where, log),
    ...unitChanges(signals),
  ];
  if (site.circuits[0] === signals) evidence.push(...ofTheWholeExport(site));
  return { evidence, abstentions: [] };
}

type Where = { readonly circuit: string | null; readonly suctionGroup: string | null };
type Log = Signals['log'];

function ofTheWholeExport(site: Signals): Evidence[] {
  const { log } = site;
  const nowhere = { circuit: null, suctionGroup: null };
  return [
    ...gapEvidence(log, siteGaps(log, allRecords(log))),
    ...log.suctionGroups.flatMap((group) => {
      const where = { circuit: null, suctionGroup: group.id };
      return recordsOfGroup(group).flatMap((record) => notConnected(factsOf(record), where, log));
    }),
    ...log.unassigned.filter(measures).flatMap((record) => notConnected(factsOf(record), nowhere, log)),
  ];
}

function measures(record: Record): boolean {
  return (
    record.quantity === 'temperature' || record.quantity === 'pressure' || record.quantity === 'fraction'
  );
}

/** A column that has readings and never moves, for days: nothing is wired to it, or nobody asks it. */
function notConnected({ record, known, lowest, highest }: RecordFacts, where: Where, log: Log): Evidence[] {
  const days = (known * log.grid.stepMs) / 86_400_000;
  if (known === 0 || lowest !== highest || days < settings.motionlessDays.value) return [];
  return [
    recordNote({
      ...where,
      shape: 'not-connected',
      points: [record.point],
      onset: record.first ?? log.grid.startMs,
      end: null,
      certainty: 0.95,
      measures: [{ name: 'days without any change', value: days, low: null, high: null, unit: 'd' }],
    }),
  ];
}

/**
 * Few readings, of a point that should have one a sample.
 * @param all of the circuit: what none of its records knows is nobody's own gap
 */
function thin(
  { record, known }: RecordFacts,
  all: readonly RecordFacts[],
  where: Where,
  log: Log,
): Evidence[] {
  const isThin = (samples: number) => known > 0 && known / samples < settings.leastCoverage.value;
  if (!isThin(Math.max(1, log.grid.count)) || record.logging === 'change-of-value') return [];
  const gaps = siteGaps(
    log,
    all.map((one) => one.record),
  );
  const missing = gaps.reduce((sum, gap) => sum + gap.to - gap.from, 0);
  const wanted = Math.max(1, log.grid.count - missing);
  if (!isThin(wanted)) return [];
  const coverage = known / wanted;
  return [
    recordNote({
      ...where,
      shape: 'thin',
      points: [record.point],
      onset: record.first ?? log.grid.startMs,
      end: null,
      certainty: 0.95,
      measures: [
        { name: 'share of samples with a reading', value: 100 * coverage, low: null, high: null, unit: '%' },
      ],
    }),
  ];
}

function unitChanges(signals: CircuitSignals): Evidence[] {
  const { circuit, log } = signals;
  return circuit.probes.flatMap((probe, index) => {
    const change = unitChange(signals.probes[index]!.median);
    if (change === null) return [];
    const { days } = log.calendar;
    const around = probe.record.values.subarray(days[change.day - 1]!.from, days[change.day]!.to);
    if (!leaps(around, change.by)) return [];
    return [
      recordNote({
        shape: 'unit-change',
        circuit: circuit.id,
        suctionGroup: circuit.suctionGroup,
        points: [probe.point],
        onset: timeAt(log.grid, days[change.day]!.from),
        end: null,
        certainty: 0.9,
        measures: [],
      }),
    ];
  });
}

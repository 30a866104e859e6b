import type { Finding } from '../model/finding.ts';
import { timeAt } from '../model/grid.ts';
import type { Log } from '../model/log.ts';
import type { CircuitSignals, GroupSignals } from '../signals/types.ts';

/** A finding that says something was wrong, not only worth knowing. */
function isTrouble({ severity }: Finding): boolean {
  return severity !== 'note';
}

/**
 * One entry a day of the calendar: false while a finding stood against the circuit, its rack covered it, or it was
 * shut off. What is normal is learnt from the others, so that it stays as it was while a fault lasts.
 */
export function quietDaysOfCircuit(signals: CircuitSignals, findings: readonly Finding[]): boolean[] {
  const { circuit, log, offSpells } = signals;
  const own = findings.filter(
    (finding) => finding.circuit === circuit.id || finding.covers.includes(circuit.id),
  );
  const quiet = quietDays(log, own);
  log.calendar.days.forEach(({ from, to }, d) => {
    if (offSpells.some((spell) => spell.from < to && spell.to > from)) quiet[d] = false;
  });
  return quiet;
}

export function quietDaysOfGroup({ group }: GroupSignals, findings: readonly Finding[], log: Log): boolean[] {
  return quietDays(
    log,
    findings.filter((finding) => finding.circuit === null && finding.suctionGroup === group.id),
  );
}

function quietDays({ grid, calendar }: Log, findings: readonly Finding[]): boolean[] {
  const spans = findings.filter(isTrouble);
  return calendar.days.map(({ from, to }) => {
    const begins = timeAt(grid, from);
    const ends = timeAt(grid, to);
    return !spans.some(({ onset, end }) => onset < ends && (end === null || end > begins));
  });
}

import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import type { Log } from '../../model/log.ts';
import { formatMinutes } from '../../units/display.ts';
import type { Trouble } from '../trouble.ts';
import { placeClause, sinceClause } from './clauses.ts';

/** Shifts this near to each other are said as one. */
const sameMinutes = 20;

/** Defrosts at other hours: of circuits whose schedules were edited, or of a whole group, whose clock jumped. */
export function movedSummary(trouble: Trouble, log: Log): string {
  const { lead } = trouble;
  const since = sinceClause(trouble, log);
  if (lead.shape === 'clock-moved') return clockSummary(trouble, since);
  if (lead.circuit === null) return editsSummary(trouble, since);
  return `${placeClause(trouble)}its defrosts have come ${shiftOf(lead)} ${since}: its schedule was edited, or its clock moved.`;
}

function clockSummary({ lead, covers }: Trouble, since: string): string {
  const { everywhere, clocksChanged, inTrading } = lead.features;
  const what = `Suction group ${lead.suctionGroup}: the defrosts of ${covers.join(', ')} have all come ${shiftOf(lead)} ${since}`;
  if (clocksChanged === 1)
    return `${what}: clocks are changed about then, and its control probably did not go along.`;
  const trading = inTrading === 1 ? '; they now fall between 10 and 20 o’clock, which they had spared' : '';
  return everywhere === 1
    ? `${what}, and those of the other groups with them${trading}: if nobody edited the schedules of the store, the clock of its control is wrong.`
    : `${what}${trading}: compare the clock of the control with the time of day.`;
}

/** `M01, M02 … have come 2 h later`, or, where they moved by different amounts, each with its own. */
function editsSummary({ lead, evidence, covers }: Trouble, since: string): string {
  const moves = covers.map(
    (id) => evidence.find((one) => one.circuit === id && one.shape === 'moved') ?? lead,
  );
  const shifts = moves.map(shiftIn);
  const isAlike = Math.max(...shifts) - Math.min(...shifts) <= sameMinutes;
  const who = `Suction group ${lead.suctionGroup}: the defrosts of`;
  return isAlike
    ? `${who} ${covers.join(', ')} have come ${wordShift(median(shifts))} ${since}: their schedules were edited, or their clock moved.`
    : `${who} ${covers.map((id, i) => `${id} (${wordShift(shifts[i]!)})`).join(', ')} have come at other hours ${since}: their schedules were edited.`;
}

function shiftOf(lead: Evidence): string {
  return wordShift(shiftIn(lead));
}

function shiftIn({ measures }: Evidence): number {
  return measures.find((one) => one.name === 'defrostsMovedBy')?.value ?? 0;
}

/** `2 h 30 min later in the day`. */
function wordShift(minutes: number): string {
  return `${formatMinutes(Math.abs(Math.round(minutes)))} ${minutes < 0 ? 'earlier' : 'later'} in the day`;
}

import type { Log } from '../../model/log.ts';
import { formatDayAndTime, formatPressure, formatShare } from '../../units/display.ts';
import type { Trouble } from '../trouble.ts';

/** A suction target that went to another value with no visit near; null where none of its values is known. `circuits` is what it did to them. */
export function targetSummary(trouble: Trouble, circuits: string, log: Log): string | null {
  const { lead } = trouble;
  const of = lead.features.fromColumn === 1 ? 'target' : 'suction';
  const before = measured(trouble, `${of}Before`);
  const now = measured(trouble, `${of}Now`);
  if (before === undefined || now === undefined) return null;
  const pressure = (value: number) => formatPressure(value, log.units, log.atmosphere);
  const step = `from ${pressure(before)} to ${pressure(now)} on ${formatDayAndTime(lead.onset, log)}`;
  const place = `Suction group ${lead.suctionGroup}: `;
  const since = feedingClause(trouble);
  return lead.features.fromColumn === 1
    ? `${place}the target of the suction pressure went ${step} and stands there${unreached(trouble)}${since}${circuits}; ask who changed it and why.`
    : `${place}the suction pressure stepped ${step} and has held there${since}${circuits}; its target was probably changed; ask who and why.`;
}

function unreached({ lead }: Trouble): string {
  return lead.features.reached === 0 ? ', though the pressure does not follow it' : '';
}

/** `; the valves of its circuits feed 14 % less of the time`. */
function feedingClause(trouble: Trouble): string {
  const change = measured(trouble, 'feedingChange');
  if (change === undefined || Math.abs(change) < 1) return '';
  return `; the valves of its circuits feed ${formatShare(Math.abs(change) / 100)} ${change < 0 ? 'less' : 'more'} of the time`;
}

function measured({ lead }: Trouble, name: string): number | undefined {
  return lead.measures.find((one) => one.name === name)?.value;
}

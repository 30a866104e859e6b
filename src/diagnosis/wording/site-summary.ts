import type { Evidence } from '../../model/evidence.ts';
import type { Log } from '../../model/log.ts';
import {
  formatDayAndTime,
  formatDifference,
  formatMinutes,
  formatPressure,
  formatShare,
} from '../../units/display.ts';
import { featuresOf, type Trouble } from '../trouble.ts';
import { warmSpell } from '../warm-spell.ts';
import { againstClause } from './against-clause.ts';
import { placeClause, pointName, sinceClause } from './clauses.ts';
import { targetSummary } from './target-summary.ts';

const rackWords: Readonly<{ [shape: string]: string }> = {
  high: 'the suction pressure stands above its usual level',
  'target-raised': 'the target of the suction pressure was raised',
  'target-lowered': 'the target of the suction pressure was lowered',
  'capacity-shortfall': 'the compressors that run cannot hold the suction pressure',
  'short-of-liquid':
    'its circuits call for ever more cooling while the suction pressure holds, as where too little liquid reaches them,',
  'group-warm': 'most of its circuits are warm together',
  low: 'the suction pressure stands below its usual level',
  'low-pressure-trips': 'the suction pressure falls to the cut-out again and again',
  'service-visit': 'it was pulled down or shut as for a repair',
  'target-left': 'the target of the suction pressure is still where a visit left it,',
  'float-stopped': 'the target of the suction pressure no longer floats',
  'condensing-high': 'the condensing pressure is higher than it used to be at the same weather',
  'level-low': 'the liquid level is far under its usual range',
};

export function rackSummary(trouble: Trouble, log: Log): string {
  const { lead, covers } = trouble;
  const words = rackWords[lead.shape] ?? 'its pressure is off';
  const what = lead.features.overTarget === 1 ? words.replace('usual level', 'target') : words;
  const shown = !(featuresOf(trouble).shareWarm! > 0)
    ? `it shows in ${covers.join(', ')}`
    : `${covers.join(', ')} went warm with it`;
  const many = covers.length === 0 ? '' : `, and ${shown}: look at the rack, not at the cases`;
  const spell = spellWords(trouble);
  return (
    targetSummary(trouble, many, log) ??
    `Suction group ${lead.suctionGroup}: ${what}${sizeClause(lead, log)} ${visitClause(lead, log) ?? sinceClause(trouble, log)}${spell ?? many}.`
  );
}

/** `from Tue 10 Feb, 09:40 until Tue 10 Feb, 12:15`: a visit is over in hours. */
function visitClause({ shape, onset, end }: Evidence, log: Log): string | null {
  if (shape !== 'service-visit' || end === null) return null;
  return `from ${formatDayAndTime(onset, log)} until ${formatDayAndTime(end, log)}`;
}

/** What stands there against what is due or usual; ` (by 8.8 °F saturated)` for condensing, whose due hangs on the weather. */
function sizeClause(lead: Evidence, { units, atmosphere }: Log): string {
  const rise = lead.measures.find(({ name }) => name === 'condensingRise')?.value;
  if (rise !== undefined && lead.features.refrigerantKnown === 1)
    return ` (by ${formatDifference(rise, units)} saturated)`;
  const pressure = (kilopascal: number) => formatPressure(kilopascal, units, atmosphere);
  return againstClause(lead, [
    ['suctionLevel', 'suctionTarget', pressure],
    ['suctionLevel', 'suctionUsual', pressure],
    ['tripsADay', 'usualTripsADay', (times) => `${Math.round(times)} a day`],
    ['level', 'usualLevel', (percent) => formatShare(percent / 100)],
  ]);
}

/** It comes back with the night: what weather does to a rack that is only just large enough. Null where it is no spell. */
function spellWords(trouble: Trouble): string | null {
  const { lead, covers } = trouble;
  const spell = warmSpell(trouble);
  if (spell === null) return null;
  const shown = covers.length === 0 ? '' : `, and it shows in ${covers.join(', ')}`;
  const back = `${shown}; it ${lead.end === null ? 'comes' : 'came'} back every night and brought no air to its limit`;
  return spell === 'weather'
    ? `${back}, as in warm or humid weather on a rack that is only just large enough`
    : `${back}: look again when the weather turns, for machines that lose a little capacity begin like this`;
}

export function recordSummary(trouble: Trouble, log: Log): string {
  const { lead } = trouble;
  const place = placeClause(trouble);
  const points = lead.points.map(pointName).join(' and ');
  switch (lead.shape) {
    case 'gap': {
      const length = formatMinutes(((lead.end ?? lead.onset) - lead.onset) / 60_000);
      return `Nothing at all was logged for ${length} from ${formatDayAndTime(lead.onset, log)}: what happened then is unknown.`;
    }
    case 'not-connected':
      return `${place}${points} never moves: probably not connected.`;
    case 'thin':
      return `${place}${points} has few readings: what it says carries little weight.`;
    case 'twin':
      return `${place}${points} hold the same readings: one channel under two names.`;
    case 'unit-change':
      return `${place}${points} seems to go from one temperature scale to the other ${sinceClause(trouble, log)}.`;
    default:
      return `${place}the record is doubtful ${sinceClause(trouble, log)}.`;
  }
}

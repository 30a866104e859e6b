import { blockTitle } from '../../figures/clock-blocks.ts';
import type { Log } from '../../model/log.ts';
import type { ReadingVerdict } from '../../norms/judge-reading.ts';
import type { Norm } from '../../norms/norm.ts';
import type { PeerRange } from '../../norms/peer-norm.ts';
import { formatTemperature } from '../../units/display.ts';
import { figureText, figureTitle } from '../figure-text.ts';
import { dayText } from '../local-time.ts';

/** `33.1 °F to 36.4 °F`. */
export function rangeText(low: number, high: number, norm: Norm, log: Log): string {
  return `${figureText(low, norm, log)} to ${figureText(high, norm, log)}`;
}

const positionWords = {
  usual: 'usual here',
  edge: 'at the edge of what is usual here',
  unusual: 'unusual here',
} as const;

function hoursText({ cell }: ReadingVerdict): string {
  const hours = cell.block === null ? 'at any hour' : blockTitle(cell.block);
  return cell.dayType === 'any' ? hours : `${hours} on a ${cell.dayType}`;
}

/** Is this reading normal here? One line, with the days it rests on and what the peers do. */
export function readingText(norm: Norm, verdict: ReadingVerdict, peers: PeerRange | null, log: Log): string {
  const { value, position, side, p10, p90, cell, outdoor } = verdict;
  const what = norm.of === 'readings' ? `at ${norm.point}` : `for ${figureTitle(norm)}`;
  const where = side === 'within' ? '' : `, ${side} its range`;
  const tied = outdoor === null ? '' : ` at an outdoor ${formatTemperature(outdoor, log.units)}`;
  const frozen =
    norm.frozenSince === null
      ? ''
      : ` Nothing was learnt since ${dayText(log, norm.frozenSince)}, when a finding began.`;
  const beside =
    peers === null
      ? ''
      : ` Its ${peers.circuits} peers on ${norm.suctionGroup}: ${rangeText(peers.p10, peers.p90, norm, log)}.`;
  return `${figureText(value, norm, log)} ${what} is ${positionWords[position]}${where}: ${rangeText(p10, p90, norm, log)} (p10 to p90, ${hoursText(verdict)}${tied}, from ${cell.days} quiet days).${beside}${frozen}`;
}

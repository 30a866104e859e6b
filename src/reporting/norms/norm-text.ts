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

export const positionWords = {
  usual: 'usual here',
  edge: 'at the edge of what is usual here',
  unusual: 'unusual here',
} as const;

function hoursText({ cell }: Pick<ReadingVerdict, 'cell'>): string {
  const hours = cell.block === null ? 'at any hour' : blockTitle(cell.block);
  return cell.dayType === 'any' ? hours : `${hours} on a ${cell.dayType}`;
}

/** Is this reading normal here? One line, with the days it rests on and what the peers do. */
export function readingText(norm: Norm, verdict: ReadingVerdict, peers: PeerRange | null, log: Log): string {
  const { value, position, side } = verdict;
  const what = norm.of === 'readings' ? `at ${norm.point}` : `for ${figureTitle(norm)}`;
  const where = side === 'within' ? '' : `, ${side} its range`;
  const beside = [peersText(norm, peers, log), frozenText(norm, log)].filter((text) => text !== null);
  return [
    `${figureText(value, norm, log)} ${what} is ${positionWords[position]}${where}: ${restsText(norm, verdict, log)}.`,
    ...beside,
  ].join(' ');
}

/** `33.1 °F to 36.4 °F (p10 to p90, 08–12 h on a weekday, from 12 quiet days)`. */
export function restsText(
  norm: Norm,
  { p10, p90, cell, outdoor }: Pick<ReadingVerdict, 'p10' | 'p90' | 'cell' | 'outdoor'>,
  log: Log,
): string {
  const tied = outdoor === null ? '' : ` at an outdoor ${formatTemperature(outdoor, log.units)}`;
  return `${rangeText(p10, p90, norm, log)} (p10 to p90, ${hoursText({ cell })}${tied}, from ${cell.days} quiet days)`;
}

export function peersText(norm: Norm, peers: PeerRange | null, log: Log): string | null {
  if (peers === null) return null;
  return `Its ${peers.circuits} peers on ${norm.suctionGroup}: ${rangeText(peers.p10, peers.p90, norm, log)}.`;
}

export function frozenText({ frozenSince }: Norm, log: Log): string | null {
  if (frozenSince === null) return null;
  return `Nothing was learnt since ${dayText(log, frozenSince)}, when a finding began.`;
}

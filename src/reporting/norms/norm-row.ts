import type { Log } from '../../model/log.ts';
import { figureAtEnd } from '../../norms/at-end.ts';
import type { Norm } from '../../norms/norm.ts';
import { peerRange } from '../../norms/peer-norm.ts';
import type { Signals } from '../../signals/types.ts';
import { figureText, figureTitle } from '../figure-text.ts';
import { dayText } from '../local-time.ts';
import { rangeText } from './norm-text.ts';

/**
 * Title, usual range at the hours of the last reading, the last reading, how it stands to the range, the peers. What is not
 * known at the end has the range of the whole day and says since when.
 */
export function normRow(norm: Norm, norms: readonly Norm[], signals: Signals): string[] {
  const [usual, last, mark] = endCells(norm, signals.log);
  const peers = peerRange(norm, norms, signals);
  return [
    figureTitle(norm),
    usual,
    last,
    mark,
    peers === null ? '' : rangeText(peers.p10, peers.p90, norm, signals.log),
  ].map((cell) => cell.replace(/ minutes?/g, ' min').replace(/ starts an hour/g, '/h'));
}

function endCells(norm: Norm, log: Log): [usual: string, last: string, mark: string] {
  const end = figureAtEnd(norm, log);
  if ('lastKnown' in end) {
    const whole = norm.cells.find(({ dayType, block }) => dayType === 'any' && block === null);
    const usual = whole === undefined ? '–' : rangeText(whole.p10, whole.p90, norm, log);
    return [usual, '–', end.lastKnown === null ? '' : `not known since ${dayText(log, end.lastKnown)}`];
  }
  const { value, verdict } = end;
  if (verdict === null) return ['–', '–', ''];
  const mark = verdict.position === 'usual' ? '' : `${verdict.side}, ${verdict.position}`;
  return [rangeText(verdict.p10, verdict.p90, norm, log), figureText(value, norm, log), mark];
}

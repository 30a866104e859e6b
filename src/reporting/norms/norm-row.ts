import { judgeInBlock, lastKnownBlock } from '../../norms/judge-reading.ts';
import type { Norm } from '../../norms/norm.ts';
import { peerRange } from '../../norms/peer-norm.ts';
import type { Signals } from '../../signals/types.ts';
import { figureText, figureTitle } from '../figure-text.ts';
import { rangeText } from './norm-text.ts';

/** Title, usual range at the hours of the last reading, the last reading, how it stands to the range, the peers. */
export function normRow(norm: Norm, norms: readonly Norm[], signals: Signals): string[] {
  const block = lastKnownBlock(norm);
  const value = norm.values[block] ?? Number.NaN;
  const verdict = block < 0 ? null : judgeInBlock(norm, value, block, signals.log);
  const peers = peerRange(norm, norms, signals);
  const mark = verdict === null || verdict.position === 'usual' ? '' : `${verdict.side}, ${verdict.position}`;
  return [
    figureTitle(norm),
    verdict === null ? '–' : rangeText(verdict.p10, verdict.p90, norm, signals.log),
    verdict === null ? '–' : figureText(value, norm, signals.log),
    mark,
    peers === null ? '' : rangeText(peers.p10, peers.p90, norm, signals.log),
  ].map((cell) => cell.replace(/ minutes?/g, ' min').replace(/ starts an hour/g, '/h'));
}

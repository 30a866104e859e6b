import { blockHours } from '../../figures/clock-blocks.ts';
import type { Norm } from '../../norms/norm.ts';
import { peerRange } from '../../norms/peer-norm.ts';
import type { Signals } from '../../signals/types.ts';
import { localTimestamp } from '../../units/display.ts';

/** What `rimelog norms --json` writes: every range in inside units with its UCUM code. */
export function normsDocument(norms: readonly Norm[], signals: Signals): object {
  const { log } = signals;
  return {
    format: 'rimelog-norms/1',
    site: log.site,
    norms: norms.map((norm) => ({
      circuit: norm.circuit,
      suctionGroup: norm.suctionGroup,
      name: norm.id,
      point: norm.point,
      unit: norm.unit,
      of: norm.of,
      quietDays: norm.quietDays,
      frozenSince: norm.frozenSince === null ? null : localTimestamp(norm.frozenSince, log),
      outdoor: norm.tie === null ? null : { point: norm.tie.point, slopePerKelvin: norm.tie.slope },
      ranges: norm.cells.map(({ dayType, block, days, p10, median, p90 }) => ({
        days: dayType,
        fromHour: block === null ? 0 : block * blockHours,
        toHour: block === null ? 24 : (block + 1) * blockHours,
        quietDays: days,
        p10,
        median,
        p90,
      })),
      peers: peerRange(norm, norms, signals),
    })),
  };
}

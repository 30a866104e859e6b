import { blocksADay, blockTitle, type DayType, dayTypeOf } from '../../figures/clock-blocks.ts';
import type { Log } from '../../model/log.ts';
import { judgeInBlock } from '../../norms/judge-reading.ts';
import type { Norm } from '../../norms/norm.ts';
import { peerRange } from '../../norms/peer-norm.ts';
import { edgeShare, fewestDays } from '../../norms/settings.ts';
import type { CircuitSignals, Signals } from '../../signals/types.ts';
import { normRow } from '../norms/norm-row.ts';
import { frozenText, peersText, restsText } from '../norms/norm-text.ts';
import { siteScale } from '../site-scale.ts';

/** The usual range of a point in a few hours of the day, in the units of the site. */
export interface UsualRange {
  readonly days: DayType;
  readonly hours: string;
  readonly p10: number;
  readonly p90: number;
  /** Below `low` or above `high` a reading is unusual; between there and the range it is at the edge. */
  readonly low: number;
  readonly high: number;
  readonly rests: string;
}

/** A point whose single readings can be held against what is usual. */
export interface UsualPoint {
  readonly point: string;
  readonly unit: string;
  readonly ranges: readonly UsualRange[];
  /** What its peers do, and since when nothing is learnt. */
  readonly beside: string;
}

/** What is usual on one circuit, in words and in the units of the site. */
export interface NormalHere {
  /** Days that it rests on, or why there is nothing. */
  readonly note: string;
  readonly rows: readonly {
    readonly figure: string;
    readonly usual: string;
    readonly last: string;
    /** Where the last reading stands when it is not usual, else empty. */
    readonly standing: string;
    readonly peers: string;
  }[];
  readonly points: readonly UsualPoint[];
}

/** From all norms of the site, as peers are among them. */
export function normalHere(
  { circuit }: CircuitSignals,
  norms: readonly Norm[],
  signals: Signals,
): NormalHere {
  const own = norms.filter((norm) => norm.circuit === circuit.id);
  const rack = norms.filter((norm) => norm.circuit === null && norm.suctionGroup === circuit.suctionGroup);
  return {
    note: noteOf(own, signals.log),
    rows: own.map((norm) => {
      const [figure, usual, last, standing, peers] = normRow(norm, norms, signals);
      return { figure: figure!, usual: usual!, last: last!, standing: standing!, peers: peers! };
    }),
    points: [...own, ...rack].flatMap((norm) => usualPoint(norm, norms, signals)),
  };
}

function noteOf([norm]: readonly Norm[], log: Log): string {
  if (norm === undefined) {
    return `Nothing is known to be normal here yet: ${fewestDays} quiet days are needed, days without a finding.`;
  }
  return [`Learnt from ${norm.quietDays} quiet days, days without a finding.`, frozenText(norm, log)]
    .filter((text) => text !== null)
    .join(' ');
}

/** The weather of the day of a reading taken later is not known: ranges tied to it are taken as they stand. */
function usualPoint(norm: Norm, norms: readonly Norm[], signals: Signals): UsualPoint[] {
  if (norm.of !== 'readings' || norm.point === null) return [];
  const { log } = signals;
  const { unit, number } = scaleOf(norm, log);
  const ranges = (['weekday', 'weekend'] as const).flatMap((days) => {
    const day = log.calendar.days.findIndex(({ weekday }) => dayTypeOf(weekday) === days);
    if (day < 0) return [];
    return [...Array(blocksADay).keys()].flatMap((block): UsualRange[] => {
      const verdict = judgeInBlock({ ...norm, tie: null }, 0, day * blocksADay + block, log);
      if (verdict === null) return [];
      const { p10, p90 } = verdict;
      const edge = edgeShare * (p90 - p10);
      const rests = restsText(norm, verdict, log);
      const hours = blockTitle(block);
      const [lowest, low10, high90, highest] = [p10 - edge, p10, p90, p90 + edge].map(number);
      return [{ days, hours, p10: low10!, p90: high90!, low: lowest!, high: highest!, rests }];
    });
  });
  const beside = [peersText(norm, peerRange(norm, norms, signals), log), frozenText(norm, log)];
  return [{ point: norm.point, unit, ranges, beside: beside.filter((text) => text !== null).join(' ') }];
}

function scaleOf({ unit }: Norm, log: Log): { unit: string; number: (value: number) => number } {
  const scale = siteScale(log);
  const rounded = (value: number): number => Math.round(value * 1000) / 1000;
  if (unit === 'Cel') return { unit: scale.temperatureSign, number: (v) => rounded(scale.temperature(v)) };
  if (unit === 'kPa') return { unit: scale.pressureSign, number: (v) => rounded(scale.pressure(v)) };
  return { unit: '%', number: (v) => rounded(v * 100) };
}

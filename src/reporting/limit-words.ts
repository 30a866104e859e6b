import { type AirLimit, coldHoldingLimit } from '../model/air-limit.ts';
import type { Log } from '../model/log.ts';
import { formatTemperature } from '../units/display.ts';

const names: Readonly<Record<AirLimit['source'], string>> = {
  site: 'the alarm limit in force',
  food: 'the published cold-holding limit, for food',
  'set-point': 'a margin over the set point, common practice',
};

/** What a limit is called wherever a number stands beside it. */
export const limitName = ({ source }: AirLimit): string => names[source];

/** `41.0 °F, the published cold-holding limit`: how it is headed where it stands beside an alarm limit. */
export const coldHoldingTitle = ({ units }: Pick<Log, 'units'>): string =>
  `${formatTemperature(coldHoldingLimit, units)}, the published cold-holding limit`;

/** Why air is held against it all the same, and what that does not say. */
export const coldHoldingNote =
  'The cold-holding limit is FDA Food Code 3-501.16(A)(2): for food, not for air. An alarm may be set wider than it.';

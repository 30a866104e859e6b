import type { Evidence } from '../../model/evidence.ts';
import type { GroupSignals } from '../../signals/types.ts';
import { meta } from './meta.ts';

/** What evidence of short-cycling on a whole suction group begins with: no circuit is at fault, its machines or valves are. */
export function onGroup({
  group,
}: GroupSignals): Pick<Evidence, 'analysis' | 'kind' | 'circuit' | 'suctionGroup'> {
  return { analysis: meta.id, kind: 'short-cycling', circuit: null, suctionGroup: group.id };
}

import type { Log } from '../../model/log.ts';
import type { Record } from '../../model/record.ts';
import type { GroupSignals } from '../../signals/types.ts';

const outdoorName = /outdoor|outside|ambient|\boat\b/i;

/** The outdoor temperature by its name, of the group or of the site; null where none is logged. */
export function outdoorOf(group: GroupSignals, log: Log): Record | null {
  const named = Object.entries(group.group.others).find(([name]) => outdoorName.test(name))?.[1];
  const loose = log.unassigned.find(
    (record) => record.quantity === 'temperature' && outdoorName.test(record.point),
  );
  return named ?? loose ?? null;
}

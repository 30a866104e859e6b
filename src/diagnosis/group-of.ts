import type { GroupSignals, Signals } from '../signals/types.ts';

export function groupOf(signals: Signals, id: string | null): GroupSignals | null {
  return signals.groups.find((one) => one.group.id === id) ?? null;
}

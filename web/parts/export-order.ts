import type { ExportEntry } from '../json.ts';

export type ExportOrder = 'newest' | 'worst';

const severityRank = { act: 2, watch: 1, note: 0 } as const;

/**
 * `newest` as the server lists them. `worst`: the latest export of every site, what must not wait first, then those that
 * are not analysed, then what a later export of the same site has replaced.
 */
export function inOrder(entries: readonly ExportEntry[], order: ExportOrder): readonly ExportEntry[] {
  return order === 'newest' ? entries : entries.toSorted((a, b) => urgency(b, entries) - urgency(a, entries));
}

function urgency(entry: ExportEntry, entries: readonly ExportEntry[]): number {
  const { summary } = entry;
  if (summary === null) return -1;
  if (isReplaced(entry, entries)) return -2;
  const first = summary.firstStop ?? null;
  // Weights are positive; squeezed under 1 they order within a severity.
  return first === null ? 0 : severityRank[first.severity] + first.weight / (1 + first.weight);
}

function isReplaced({ summary, received }: ExportEntry, entries: readonly ExportEntry[]): boolean {
  const site = summary?.site ?? '';
  return (
    site !== '' &&
    entries.some(
      (other) =>
        other.summary?.site === site &&
        (other.summary.end > summary!.end ||
          (other.summary.end === summary!.end && other.received > received)),
    )
  );
}

import type { Finding, RankedCircuit, Severity } from '../model/finding.ts';
import type { Signals } from '../signals/types.ts';
import type { EpochMs } from '../units/quantities.ts';

const dayMs = 86_400_000;
const severityRank: Readonly<{ [severity in Severity]: number }> = { act: 2, watch: 1, note: 0 };

/** What a finding costs while it waits: how far off × how soon the limit × how sure (domain practice). */
function weight(finding: Finding, now: EpochMs): number {
  const kelvins = finding.measures.filter((one) => one.unit === 'K').map((one) => Math.abs(one.value));
  const size = 1 + Math.max(0, ...kelvins);
  const days = finding.projection?.at == null ? 60 : Math.max(0, (finding.projection.at - now) / dayMs);
  const soon = 1 + 14 / (1 + days);
  const reach = 1 + finding.covers.length;
  const lie = finding.origin === 'probe' ? 0.6 : 1;
  const over = finding.end === null ? 1 : 0.4;
  return size * soon * reach * lie * over * finding.confidence;
}

/** Worst first: by severity, then by what waiting costs, then by id so that the order is always the same. */
export function rankFindings(findings: readonly Finding[], now: EpochMs): Finding[] {
  return [...findings].sort(
    (a, b) =>
      severityRank[b.severity] - severityRank[a.severity] ||
      weight(b, now) - weight(a, now) ||
      (a.id < b.id ? -1 : 1),
  );
}

/** Every circuit of the site; those without a finding last, in the order of the site. */
export function rankCircuits(signals: Signals, ranked: readonly Finding[]): RankedCircuit[] {
  const place = (id: string): number => {
    const at = ranked.findIndex((finding) => finding.circuit === id || finding.covers.includes(id));
    return at < 0 ? ranked.length : at;
  };
  return signals.circuits
    .map(({ circuit }, order) => ({ circuit, order, place: place(circuit.id) }))
    .sort((a, b) => a.place - b.place || a.order - b.order)
    .map(({ circuit }, position) => ({
      id: circuit.id,
      name: circuit.name,
      rank: position + 1,
      worst: ranked.find((one) => one.circuit === circuit.id)?.severity ?? null,
    }));
}

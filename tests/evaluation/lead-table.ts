import type { FaultOutcome } from './outcome.ts';
import { medianOf } from './shares.ts';

const dayMs = 86_400_000;

/** Days by which findings came before the alarms, by how fast the fault crept. As Markdown. */
export function leadTable(faults: readonly FaultOutcome[]): string {
  const found = faults.filter(({ flaggedAt, alarms }) => flaggedAt !== null && alarms !== null);
  const row = (name: string, these: readonly FaultOutcome[]): string => {
    const over = (alarm: 'inForce' | 'singleProbe'): string => {
      const days = these
        .filter(({ alarms }) => alarms![alarm] !== null)
        .map(({ flaggedAt, alarms }) => (alarms![alarm]! - flaggedAt!) / dayMs)
        .sort((a, b) => a - b);
      const at = (share: number): string => days[Math.round(share * (days.length - 1))]!.toFixed(1);
      return days.length === 0
        ? 'never tripped'
        : `${medianOf(days)!.toFixed(1)} (${at(0.1)} to ${at(0.9)}), ${days.length} tripped`;
    };
    return `| ${name} | ${these.length} | ${over('inForce')} | ${over('singleProbe')} |`;
  };
  const paceOf = ({ fault }: FaultOutcome): number =>
    fault.reachedThree === null ? 0 : 3 / ((fault.reachedThree - fault.onset) / dayMs);
  const names = [...new Set(found.map(({ fault }) => fault.fault))];
  return `### Lead, days (a tenth and nine tenths in brackets)\n\n${[
    '| | found | over the alarm in force | over one probe, 60 minutes |',
    '| --- | --- | --- | --- |',
    row('all', found),
    row(
      '3 °F within 4 days',
      found.filter((one) => paceOf(one) > 3 / 4),
    ),
    row(
      'in 4 to 8 days',
      found.filter((one) => paceOf(one) <= 3 / 4 && paceOf(one) > 3 / 8),
    ),
    row(
      'slower',
      found.filter((one) => paceOf(one) <= 3 / 8),
    ),
    ...names.map((name) =>
      row(
        name,
        found.filter(({ fault }) => fault.fault === name),
      ),
    ),
  ].join('\n')}`;
}

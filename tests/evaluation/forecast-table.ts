import type { FaultOutcome } from './outcome.ts';
import type { ProjectionOutcome } from './projection.ts';
import { medianOf, shareText } from './shares.ts';

type Dated = ProjectionOutcome & { readonly said: NonNullable<ProjectionOutcome['said']> };

/** What the dates for reaching the limit were worth: cover, width and error, by what may spoil them. As Markdown. */
export function forecastTable(
  faults: readonly (FaultOutcome & { readonly outcome: { readonly simulator: string } })[],
): string {
  const dated = faults.filter(({ projection }) => projection !== null && projection.said !== null);
  const slices: [string, (one: (typeof dated)[number]) => boolean][] = [
    ['all', () => true],
    ['simulator one', ({ outcome }) => outcome.simulator === 'one'],
    ['simulator two', ({ outcome }) => outcome.simulator === 'two'],
    ['of one place', ({ fault }) => fault.probe !== null],
    ['of a whole circuit', ({ fault }) => fault.probe === null],
    ['up to 7 days after the onset', ({ projection }) => projection!.sinceOnset <= 7],
    ['7 to 14 days', ({ projection }) => projection!.sinceOnset > 7 && projection!.sinceOnset <= 14],
    ['later', ({ projection }) => projection!.sinceOnset > 14],
    ['limit reached', ({ projection }) => projection!.truth !== null],
    ['limit never reached', ({ projection }) => projection!.truth === null],
  ];
  const rows = slices.map(([name, test]) =>
    row(
      name,
      dated.filter(test).map(({ projection }) => projection as Dated),
    ),
  );
  const reasons = new Map<string, number>();
  for (const reason of faults.flatMap(({ undated }) => undated))
    reasons.set(reason, (reasons.get(reason) ?? 0) + 1);
  const none = [...reasons].sort((a, b) => b[1] - a[1]).map(([reason, count]) => `${reason} ×${count}`);
  return `### Forecasts\n\n${[
    '| | covered | too early | too late | median width, d | width ÷ days ahead | median error, d |',
    '| --- | --- | --- | --- | --- | --- | --- |',
    ...rows,
  ].join('\n')}\n\nDrawn cuts without a date: ${none.join(', ') || 'none'}.`;
}

function row(name: string, dated: readonly Dated[]): string {
  const count = (verdict: string): number => dated.filter((one) => one.verdict === verdict).length;
  const bounded = dated.filter(({ said }) => said.latest !== null);
  const number = (value: number | null): string => (value === null ? '' : value.toFixed(1));
  const width = medianOf(bounded.map(({ said }) => said.latest! - said.earliest));
  const relative = medianOf(
    bounded
      .filter(({ said }) => said.at !== null && said.at > 0)
      .map(({ said }) => (said.latest! - said.earliest) / said.at!),
  );
  const error = medianOf(
    dated
      .filter(({ said, truth }) => truth !== null && said.at !== null)
      .map(({ said, truth }) => Math.abs(said.at! - truth!)),
  );
  const open = dated.length - bounded.length;
  return `| ${[
    name,
    shareText(count('covered'), dated.length),
    count('too-early'),
    count('too-late'),
    `${number(width)}${open > 0 ? ` (${open} open)` : ''}`,
    number(relative),
    number(error),
  ].join(' | ')} |`;
}

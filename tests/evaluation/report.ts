import { type FaultName, faultCatalogue } from '../../sample-logs/maker/fault-catalogue.ts';
import { forecastTable } from './forecast-table.ts';
import { hoursAfterTable } from './hours-after.ts';
import { leadTable } from './lead-table.ts';
import type { CaseOutcome, FaultOutcome, FindingSummary } from './outcome.ts';
import { medianOf, rateText, shareText } from './shares.ts';

const dayMs = 86_400_000;
const hourMs = 3_600_000;

type Size = 'full' | 'mild' | 'slight';

/**
 * By what the history shows: 4 °F and more is full, 2.5 to 4 mild; recovery longer by 20 minutes is full, by 12 mild.
 * What shows less, or hides behind the logging interval, is slight and outside the targets.
 */
export function sizeOf({ fault, visible }: FaultOutcome): Size {
  if (!visible) return 'slight';
  if (fault.sizeUnit === 'min' && fault.fault === 'recovery-lengthening') {
    return fault.size >= 20 ? 'full' : fault.size >= 12 ? 'mild' : 'slight';
  }
  if (!faultCatalogue[fault.fault as FaultName].sized) return fault.strength;
  const fahrenheit = fault.size * 1.8;
  return fahrenheit >= 4 ? 'full' : fahrenheit >= 2.5 ? 'mild' : 'slight';
}

/** The table of issue 4 and its breakdowns, as Markdown. */
export function evaluationReport(outcomes: readonly CaseOutcome[]): string {
  const faults = outcomes.flatMap((outcome) => outcome.faults.map((fault) => ({ ...fault, outcome })));
  return [
    targets(outcomes, faults),
    perFault(faults),
    ...(faults.some(({ projection }) => projection?.said) ? [forecastTable(faults)] : []),
    ...(faults.some(({ flaggedAt }) => flaggedAt !== null) ? [leadTable(faults)] : []),
    ...(faults.some(({ hoursAfter }) => hoursAfter.length > 0) ? [hoursAfterTable(faults)] : []),
    falseFlagTable(outcomes),
    reliability(outcomes),
    speed(outcomes),
  ].join('\n\n');
}

function targets(outcomes: readonly CaseOutcome[], faults: readonly FaultOutcome[]): string {
  const full = faults.filter((one) => sizeOf(one) === 'full');
  const mild = faults.filter((one) => sizeOf(one) === 'mild');
  const counted = [...full, ...mild];
  const found = counted.filter(({ finding }) => finding !== null);
  const named = found.filter(({ probePoint, probes }) => probePoint !== null && probes >= 3);
  const early = counted.filter((one) => one.early !== null);
  const onsets = (shape: string, unit: number): number | null =>
    medianOf(
      found
        .filter(({ fault }) => fault.shape === shape)
        .map(({ finding, fault }) => Math.abs(finding!.onset - fault.onset) / unit),
    );
  const projected = faults.filter(({ projection }) => projection !== null && projection.verdict !== 'none');
  const racks = counted.filter(({ flaggedUnderRack }) => flaggedUnderRack !== null);
  const toldRacks = racks.filter(({ finding }) => finding !== null);
  const healthyMonths = outcomes.reduce((sum, { healthyCircuits }) => sum + healthyCircuits, 0);
  const flags = outcomes.reduce((sum, { falseFlags }) => sum + falseFlags.length, 0);
  const hits = (list: readonly FaultOutcome[], test: (one: FaultOutcome) => boolean): string =>
    shareText(list.filter(test).length, list.length);
  const rows: [string, string, string][] = [
    ['found, full size', '≥ 95 %', hits(full, ({ finding }) => finding !== null)],
    ['found, mild (2.5 to 4 °F)', '≥ 85 %', hits(mild, ({ finding }) => finding !== null)],
    [
      'origin right, of those found',
      '≥ 92 %',
      hits(found, ({ finding, fault }) => fault.origins.includes(finding!.origin as never)),
    ],
    [
      'first cause right',
      '≥ 85 %',
      hits(found, ({ finding, fault }) => fault.causes.includes(finding!.causes[0] as never)),
    ],
    [
      'probe named (three or more)',
      '≥ 95 %',
      hits(named, ({ finding, probePoint }) => finding!.probe === probePoint),
    ],
    ['false flags a healthy circuit-month', '≤ 0.05', rateText(flags, healthyMonths)],
    [
      'other flags on a circuit with a fault, of another origin',
      'few',
      rateText(strays(outcomes).length, sickCircuits(outcomes)),
    ],
    ['found by 3 °F', '≥ 85 %', hits(early, (one) => one.early === true)],
    ['onset error, creeps, median', '≤ 1.5 d', `${onsets('creep', dayMs)?.toFixed(1) ?? '—'} d`],
    [
      'onset error, steps and events, median',
      '≤ 2 h',
      `${onsets('step', hourMs)?.toFixed(1) ?? '—'} h steps, ${onsets('event', hourMs)?.toFixed(1) ?? '—'} h events`,
    ],
    [
      'time to limit, 90 % interval covers',
      '85 to 95 %',
      hits(projected, ({ projection }) => projection!.verdict === 'covered'),
    ],
    [
      'rack fault found and its circuits quiet',
      'always',
      hits(racks, ({ finding, flaggedUnderRack }) => finding !== null && flaggedUnderRack === 0),
    ],
    ['rack fault told in one finding', 'always', hits(toldRacks, (one) => flagsOf(one).length === 1)],
    [
      'flags beside a rack, on circuits that the same store without its fault flags as well',
      'reported',
      shareText(sum(racks, 'flaggedAnyway'), sum(racks, 'flaggedUnderRack')),
    ],
    ['lead over the alarm in force, median', 'reported', lead(faults, 'inForce')],
    ['lead over a single-probe 60-min alarm, median', '≥ 3 d', lead(faults, 'singleProbe')],
  ];
  return table(['', 'target', 'measured'], rows);
}

function flagsOf({ said }: FaultOutcome): readonly FindingSummary[] {
  return said.filter(({ severity }) => severity !== 'note');
}

function sum(faults: readonly FaultOutcome[], what: 'flaggedAnyway' | 'flaggedUnderRack'): number {
  return faults.reduce((all, one) => all + (one[what] ?? 0), 0);
}

/** Flags on a circuit or group with a fault that blame something else. */
function strays(outcomes: readonly CaseOutcome[]): FindingSummary[] {
  return outcomes.flatMap(({ faults }) =>
    faults.flatMap(({ fault, said, finding }) =>
      said.filter(
        (flag) =>
          flag.severity !== 'note' &&
          !(finding !== null && flag.kind === finding.kind && flag.onset === finding.onset) &&
          !fault.origins.includes(flag.origin as never),
      ),
    ),
  );
}

function sickCircuits(outcomes: readonly CaseOutcome[]): number {
  return outcomes.reduce((sum, { faults }) => sum + faults.length, 0);
}

function lead(faults: readonly FaultOutcome[], alarm: 'inForce' | 'singleProbe'): string {
  const watched = faults.filter(({ flaggedAt, alarms }) => flaggedAt !== null && alarms !== null);
  const tripped = watched.filter(({ alarms }) => alarms![alarm] !== null);
  const days = tripped.map(({ flaggedAt, alarms }) => (alarms![alarm]! - flaggedAt!) / dayMs);
  const median = medianOf(days);
  return `${median === null ? '—' : median.toFixed(1)} d over ${tripped.length} that tripped, of ${watched.length} found`;
}

function perFault(faults: readonly FaultOutcome[]): string {
  const rows: string[][] = [];
  for (const name of new Set(faults.map(({ fault }) => fault.fault))) {
    for (const size of ['full', 'mild', 'slight'] as const) {
      const these = faults.filter((one) => one.fault.fault === name && sizeOf(one) === size);
      if (these.length === 0) continue;
      const found = these.filter(({ finding }) => finding !== null);
      const early = these.filter((one) => one.early !== null);
      rows.push([
        name,
        size,
        `${found.length}/${these.length}`,
        `${found.filter(({ finding, fault }) => fault.origins.includes(finding!.origin as never)).length}/${found.length}`,
        `${found.filter(({ finding, fault }) => fault.causes.includes(finding!.causes[0] as never)).length}/${found.length}`,
        these[0]!.probePoint === null
          ? ''
          : `${found.filter(({ finding, probePoint }) => finding!.probe === probePoint).length}/${found.length}`,
        early.length === 0 ? '' : `${early.filter((one) => one.early === true).length}/${early.length}`,
        onsetText(found),
        tally(found.map(({ finding }) => `${finding!.kind}→${finding!.origin}→${finding!.causes[0] ?? '?'}`)),
      ]);
    }
  }
  return `### Per fault\n\n${table(['fault', 'size', 'found', 'origin', 'cause', 'probe', 'by 3 °F', 'onset error', 'called'], rows)}`;
}

function onsetText(found: readonly FaultOutcome[]): string {
  const error = medianOf(found.map(({ finding, fault }) => (finding!.onset - fault.onset) / dayMs));
  return error === null ? '' : `${error.toFixed(2)} d`;
}

function falseFlagTable(outcomes: readonly CaseOutcome[]): string {
  const rows = outcomes.flatMap(({ seed, simulator, lookAlikes, falseFlags }) =>
    falseFlags.map((flag) => [
      `${seed} (${simulator})`,
      flag.circuit ?? flag.suctionGroup ?? 'store',
      `${flag.severity} ${flag.kind}→${flag.origin}→${flag.causes[0] ?? '?'}`,
      flag.confidence.toFixed(2),
      lookAlikes.join(', '),
    ]),
  );
  const kinds = tally(
    outcomes.flatMap(({ falseFlags }) => falseFlags.map(({ kind, severity }) => `${severity} ${kind}`)),
  );
  const other = tally(
    strays(outcomes).map(({ kind, origin, causes }) => `${kind}→${origin}→${causes[0] ?? '?'}`),
  );
  return `### False flags\n\n${kinds || 'none'}\n\nOn circuits with a fault, of another origin: ${other || 'none'}.\n\n${table(['seed', 'on', 'flag', 'confidence', 'look-alikes in the store'], rows)}`;
}

function reliability(outcomes: readonly CaseOutcome[]): string {
  const flags = outcomes.flatMap((outcome) => outcome.flags);
  const rows = [0, 0.3, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95].map((low, i, edges) => {
    const high = edges[i + 1] ?? 1.001;
    const inside = flags.filter(({ confidence }) => confidence >= low && confidence < high);
    const mean = inside.reduce((sum, { confidence }) => sum + confidence, 0) / Math.max(1, inside.length);
    return [
      `${low} to ${Math.min(1, high)}`,
      mean.toFixed(2),
      shareText(inside.filter(({ right }) => right).length, inside.length),
    ];
  });
  return `### Reliability of the confidence\n\nA flag is right when a planted fault explains it and its origin is right.\n\n${table(['stated', 'mean stated', 'right'], rows)}`;
}

function speed(outcomes: readonly CaseOutcome[]): string {
  const simulate = medianOf(outcomes.map(({ seconds }) => seconds.simulate)) ?? 0;
  const pipeline = medianOf(outcomes.map(({ seconds }) => seconds.pipeline)) ?? 0;
  const errors = outcomes.filter(({ error }) => error !== null);
  const lines = errors.map(
    ({ seed, error }) => `- seed ${seed}: ${error!.split('\n').slice(0, 3).join(' | ')}`,
  );
  return `Median seconds a store: simulate ${simulate.toFixed(1)}, write and analyse ${pipeline.toFixed(1)}. Failed runs: ${errors.length}.\n${lines.join('\n')}`;
}

function tally(words: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const word of words) counts.set(word, (counts.get(word) ?? 0) + 1);
  return [...counts]
    .sort((a, b) => b[1] - a[1])
    .map(([word, count]) => `${word} ×${count}`)
    .join(', ');
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n');
}

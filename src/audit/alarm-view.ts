import { type AlarmInForce, type AlarmRule, alarmInForce, usualAlarm } from '../alarm-replay/alarm-rule.ts';
import { type Lead, leadOver } from '../alarm-replay/lead.ts';
import { type AlarmHistory, replayOnCircuit } from '../alarm-replay/replay-circuit.ts';
import { type SuggestedLimit, suggestLimits } from '../alarm-replay/suggest-limit.ts';
import { type HiddenByAverage, hiddenByAverage } from '../alarm-replay/why-hidden.ts';
import { quietDaysOfCircuit } from '../figures/quiet-days.ts';
import { median } from '../maths/median.ts';
import type { Finding } from '../model/finding.ts';
import type { CircuitSignals } from '../signals/types.ts';
import type { MonthScope } from './scope.ts';

export type AlarmName = 'in force' | 'common practice' | 'same, on the warmest' | 'suggested';

export interface ReplayedAlarm {
  readonly name: AlarmName;
  readonly history: AlarmHistory;
  readonly suggestion: SuggestedLimit | null;
}

export interface FindingLead {
  readonly finding: Finding;
  readonly leads: readonly { readonly alarm: ReplayedAlarm; readonly lead: Lead }[];
  readonly hidden: HiddenByAverage | null;
}

export interface CircuitAlarms {
  readonly circuit: CircuitSignals;
  /** The alarm in force first; empty without set point and limit. */
  readonly alarms: readonly ReplayedAlarm[];
  /** Findings of this circuit that something was warm or would be, each against every alarm. */
  readonly findings: readonly FindingLead[];
}

const warmKinds = ['upward-drift', 'probe-disagreement', 'defrost-recovery', 'defrost-missed', 'left-off'];
/** A probe that shows no temperature any more is no matter of a limit. */
const deadCauses = ['probe-noise', 'probe-stuck', 'probe-open-or-short', 'probe-swapped', 'logging'];
const computed = new WeakMap<MonthScope, readonly CircuitAlarms[]>();

/** The replays of the month, made once for all tables and for the report. */
export function alarmView(scope: MonthScope): readonly CircuitAlarms[] {
  const known = computed.get(scope);
  if (known !== undefined) return known;
  const view = scope.signals.circuits.map((circuit) => circuitAlarms(circuit, scope));
  computed.set(scope, view);
  return view;
}

function circuitAlarms(signals: CircuitSignals, { diagnosis, log }: MonthScope): CircuitAlarms {
  const current = alarmInForce(signals.circuit, median(signals.setPoint));
  const alarms = current === null ? [] : replayedAlarms(signals, current, diagnosis.findings);
  const findings = diagnosis.findings
    .filter((finding) => finding.circuit === signals.circuit.id && isAboutWarmAir(finding))
    .map((finding) => ({
      finding,
      leads: alarms
        .filter(
          ({ suggestion }) =>
            suggestion === null || finding.probe === null || suggestion.point === finding.probe,
        )
        .map((alarm) => ({ alarm, lead: leadOver(alarm.history, finding, log) })),
      hidden: current === null ? null : hiddenByAverage(signals, finding, current.rule),
    }));
  return { circuit: signals, alarms, findings };
}

function isAboutWarmAir({ severity, kind, causes }: Finding): boolean {
  const isDead = causes[0] !== undefined && deadCauses.includes(causes[0].cause);
  return severity !== 'note' && warmKinds.includes(kind) && !isDead;
}

function replayedAlarms(
  signals: CircuitSignals,
  { rule, source }: AlarmInForce,
  findings: readonly Finding[],
): ReplayedAlarm[] {
  const replay = (
    name: AlarmName,
    other: AlarmRule,
    suggestion: SuggestedLimit | null = null,
  ): ReplayedAlarm => ({
    name,
    history: replayOnCircuit(signals, other),
    suggestion,
  });
  const suggestions = suggestLimits(signals, quietDaysOfCircuit(signals, findings));
  return [
    replay(source === 'site' ? 'in force' : 'common practice', rule),
    ...(rule.input === 'warmest' ? [] : [replay('same, on the warmest', { ...rule, input: 'warmest' })]),
    ...suggestions.flatMap((suggestion) =>
      suggestion === null
        ? []
        : [
            replay(
              'suggested',
              {
                ...usualAlarm,
                limit: suggestion.limit,
                delayMinutes: suggestion.delayMinutes,
                lockOutAfterMinutes: suggestion.lockOutAfterMinutes,
                input: { probe: suggestion.point },
              },
              suggestion,
            ),
          ],
    ),
  ];
}

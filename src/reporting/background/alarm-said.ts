import { type AlarmRule, commonDelayMinutes } from '../../alarm-replay/alarm-rule.ts';
import { leadOver } from '../../alarm-replay/lead.ts';
import { type AlarmHistory, replayOnCircuit } from '../../alarm-replay/replay-circuit.ts';
import { alarmView, type CircuitAlarms } from '../../audit/alarm-view.ts';
import type { MonthScope } from '../../audit/scope.ts';
import { toldOn } from '../../audit/told-on.ts';
import type { Log } from '../../model/log.ts';
import { formatMinutes, formatTemperature } from '../../units/display.ts';
import { formatNumber } from '../../units/format-number.ts';
import {
  alarmTitle,
  findingTitle,
  hiddenText,
  hindsight,
  leadFromTold,
  leadText,
  nothingToReplay,
  toldText,
} from '../audit/alarm-lines.ts';
import { dayAndTimeText } from '../local-time.ts';

/** What high-temperature alarms would have said over the history of one circuit, in words. */
export interface AlarmSaid {
  /** Why nothing could be replayed, else what the days count from. */
  readonly note: string;
  readonly alarms: readonly {
    readonly title: string;
    readonly trips: number;
    /** Empty where it never came. */
    readonly firstTrip: string;
    readonly blindADay: string;
  }[];
  readonly findings: readonly {
    readonly title: string;
    /** When the finding could first have been told. */
    readonly told: string;
    readonly leads: readonly {
      readonly alarm: string;
      /** Against the onset, which is known with hindsight. */
      readonly says: string;
      /** Against the day on which it could have been told; empty where one of the two is missing. */
      readonly fromTold: string;
    }[];
    /** Why the average hid it, in one line. */
    readonly hidden: string | null;
  }[];
  readonly suggested: readonly { readonly probe: string; readonly limit: string; readonly rests: string }[];
}

interface Replayed {
  readonly title: string;
  readonly history: AlarmHistory;
  /** The one probe it listens to, or null. */
  readonly probe: string | null;
}

/** One entry a circuit of the site, in its order. */
export function alarmsSaid(scope: MonthScope): AlarmSaid[] {
  return alarmView(scope).map((circuit) => alarmSaid(circuit, scope));
}

function alarmSaid(circuit: CircuitAlarms, scope: MonthScope): AlarmSaid {
  const { log } = scope;
  const [current] = circuit.alarms;
  if (current === undefined) {
    return { note: capital(nothingToReplay), alarms: [], findings: [], suggested: [] };
  }
  const replayed = [
    ...circuit.alarms
      .filter(({ suggestion }) => suggestion === null)
      .map((alarm) => ({ title: capital(alarmTitle(alarm, log)), history: alarm.history, probe: null })),
    ...singleProbes(circuit, current.history.rule, log),
  ];
  return {
    note: hindsight,
    alarms: replayed.map(({ title, history }) => ({
      title,
      trips: history.trips.length,
      firstTrip: history.firstTrip === null ? '' : dayAndTimeText(log, history.firstTrip),
      blindADay: formatMinutes(history.blindMinutesADay),
    })),
    findings: circuit.findings.map(({ finding, hidden }) => {
      const told = toldOn(finding, scope);
      const concerns = (probe: string | null): boolean =>
        probe === null || finding.probe === null || probe === finding.probe;
      return {
        title: findingTitle({ finding }, log),
        told: `The finding ${toldText(told, finding, log)}.`,
        leads: replayed
          .filter(({ probe }) => concerns(probe))
          .map(({ title, history }) => {
            const lead = leadOver(history, finding, log);
            return {
              alarm: title,
              says: capital(leadText(lead, log)),
              fromTold: capital(leadFromTold(lead, told)),
            };
          }),
        hidden: hidden === null ? null : hiddenText(hidden, log),
      };
    }),
    suggested: circuit.alarms.flatMap(({ suggestion }) => {
      if (suggestion === null) return [];
      const { point, limit, delayMinutes, nuisanceDays, quietDays, aMonth } = suggestion;
      const rests = `For ${formatMinutes(delayMinutes)}; it would have come on ${nuisanceDays} of ${quietDays} quiet days: ${formatNumber(aMonth.expected, 1)} a month (up to ${formatNumber(aMonth.high, 1)}).`;
      return [{ probe: point, limit: formatTemperature(limit, log.units), rests }];
    }),
  };
}

/** The limit in force on each probe alone, for an hour. */
function singleProbes({ circuit }: CircuitAlarms, inForce: AlarmRule, log: Log): Replayed[] {
  return circuit.circuit.probes.flatMap(({ point }, k) => {
    if (!circuit.usable[k]) return [];
    const rule: AlarmRule = { ...inForce, delayMinutes: commonDelayMinutes, input: { probe: point } };
    const title = `${point} alone, above ${formatTemperature(rule.limit, log.units)} for ${formatMinutes(commonDelayMinutes)}`;
    return [{ title, history: replayOnCircuit(circuit, rule), probe: point }];
  });
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

import { airView } from '../../audit/air-view.ts';
import { monthOf } from '../../audit/month.ts';
import type { MonthScope } from '../../audit/scope.ts';
import { sisterComparison } from '../../comparison/compare-sisters.ts';
import type { Diagnosis } from '../../model/finding.ts';
import type { Log } from '../../model/log.ts';
import type { Signals } from '../../signals/types.ts';
import { type SistersDocument, sistersDocument } from '../comparison/sisters-document.ts';
import { positionWords } from '../norms/norm-text.ts';
import { type AirAbove, airAbove } from './air-above.ts';
import { type AlarmSaid, alarmsSaid } from './alarm-said.ts';
import { type NormalHere, normalHere } from './normal-here.ts';

/** What is known of a circuit beside its findings. */
export interface CircuitBackground {
  readonly circuit: string;
  readonly normal: NormalHere;
  /** Null where it has fewer than two sisters. */
  readonly sisters: SistersDocument | null;
  readonly alarm: AlarmSaid;
  /** Null where neither a limit nor a set point is known. */
  readonly exposure: AirAbove | null;
  readonly words: typeof positionWords;
}

interface Judged {
  readonly log: Log;
  readonly signals: Signals;
  readonly diagnosis: Diagnosis;
}

/** Norms, alarms and exposure over the whole export, one entry a circuit. */
export function circuitBackgrounds({ log, signals, diagnosis }: Judged): CircuitBackground[] {
  const month = monthOf(log, null);
  if (month === null) return [];
  const scope: MonthScope = { log, signals, diagnosis, month };
  const norms = airView(scope).norms;
  const alarms = alarmsSaid(scope);
  const sisters = sisterComparison(signals);
  const sistersOf = (id: string): SistersDocument | null => {
    const compared = sisters(id);
    return compared === null ? null : sistersDocument(compared, log);
  };
  return signals.circuits.map((circuit, index) => ({
    circuit: circuit.circuit.id,
    normal: normalHere(circuit, norms, signals),
    sisters: sistersOf(circuit.circuit.id),
    alarm: alarms[index]!,
    exposure: airAbove(circuit),
    words: positionWords,
  }));
}

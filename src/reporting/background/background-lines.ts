import { airView } from '../../audit/air-view.ts';
import { alarmView } from '../../audit/alarm-view.ts';
import { monthOf } from '../../audit/month.ts';
import type { MonthScope } from '../../audit/scope.ts';
import {
  type CircuitExposure,
  circuitExposure,
  type ProbeExposure,
  worstProbe,
} from '../../exposure/circuit-exposure.ts';
import type { Diagnosis, Finding } from '../../model/finding.ts';
import type { Log } from '../../model/log.ts';
import { figureAtEnd } from '../../norms/at-end.ts';
import { peerRange } from '../../norms/peer-norm.ts';
import type { CircuitSignals, Signals } from '../../signals/types.ts';
import { formatTemperature } from '../../units/display.ts';
import { formatNumber } from '../../units/format-number.ts';
import { alarmTitle, hiddenText, leadText } from '../audit/alarm-lines.ts';
import { minutesText } from '../audit/cell-text.ts';
import { coldHoldingTitle } from '../limit-words.ts';
import { dayText } from '../local-time.ts';
import { readingText } from '../norms/norm-text.ts';
import { siteScale } from '../site-scale.ts';

interface Judged {
  readonly log: Log;
  readonly signals: Signals;
  readonly diagnosis: Diagnosis;
}

/** A line with its heading. */
export interface BackgroundLine {
  readonly about: 'Normal here' | 'Alarm' | 'Air above its limit';
  readonly text: string;
}

/** What a circuit's worst finding is held against, a line each; what is not known has none. */
export function backgroundLines(judged: Judged): (finding: Finding) => BackgroundLine[] {
  const month = monthOf(judged.log, null);
  if (month === null) return () => [];
  const scope: MonthScope = { ...judged, month };
  return (finding) => {
    const own = judged.signals.circuits.find(({ circuit }) => circuit.id === finding.circuit);
    if (own === undefined) return [];
    const lines = [
      ['Normal here', normalLine(own, finding, scope)],
      ['Alarm', alarmLine(own, finding, scope)],
      ['Air above its limit', exposureLine(own, finding)],
    ] as const;
    return lines.flatMap(([about, text]) => (text === null ? [] : [{ about, text }]));
  };
}

function normalLine({ circuit }: CircuitSignals, { probe }: Finding, scope: MonthScope): string | null {
  const norms = airView(scope).norms;
  const own = norms.filter((norm) => norm.circuit === circuit.id);
  const norm =
    own.find(({ id, point }) => id === 'air' && point === probe) ?? own.find(({ id }) => id === 'level');
  if (norm === undefined) return null;
  const { log } = scope;
  const end = figureAtEnd(norm, log);
  if ('lastKnown' in end) {
    const since = end.lastKnown === null ? '' : `, and was not since ${dayText(log, end.lastKnown)}`;
    return `At the end it cannot be told: settled air is not known then${since}.`;
  }
  if (end.verdict === null) return null;
  return `At the end ${readingText(norm, end.verdict, peerRange(norm, norms, scope.signals), log)}`;
}

function alarmLine({ circuit }: CircuitSignals, { id }: Finding, scope: MonthScope): string | null {
  const view = alarmView(scope).find((each) => each.circuit.circuit.id === circuit.id);
  const lead = view?.findings.find(({ finding }) => finding.id === id);
  const [first] = lead?.leads ?? [];
  if (lead === undefined || first === undefined) return null;
  const { log } = scope;
  const title = alarmTitle(first.alarm, log);
  const hidden = lead.hidden === null ? '' : ` ${hiddenText(lead.hidden, log)}`;
  return `${title.charAt(0).toUpperCase()}${title.slice(1)} ${leadText(first.lead, log)}.${hidden}`;
}

/** The probe that the finding is about, else the one that was farthest above. */
function exposureLine(own: CircuitSignals, { probe }: Finding): string | null {
  const exposure = circuitExposure(own);
  if (exposure === null) return null;
  const shown = exposure.probes.find(({ point }) => point === probe) ?? worstProbe(exposure);
  if (shown === null) return null;
  const { log } = own;
  const { aboveMinutes, settledMinutes, kelvinHours, unknownMinutes } = shown.exposure;
  const { difference, temperatureSign } = siteScale(log);
  const limit = `${formatTemperature(exposure.limit.value, log.units)} (${exposure.limit.cite})`;
  const unknown = unknownMinutes === 0 ? '' : ` Nothing is known of ${minutesText(unknownMinutes)}.`;
  const said =
    aboveMinutes === 0
      ? `${shown.point} never stood above ${limit}.`
      : `${shown.point} stood above ${limit} for ${minutesText(aboveMinutes)}, ${settledMinutes === 0 ? 'none' : minutesText(settledMinutes)} of it in settled air: ${formatNumber(difference(kelvinHours), 1)} ${temperatureSign}·h.`;
  return `${said}${coldHoldingText(exposure, shown, log)}${unknown} Air, not food: the local code decides.`;
}

/** The published limit beside an alarm limit that is another one. */
function coldHoldingText(
  { limit, coldHolding }: CircuitExposure,
  { coldHolding: exposure }: ProbeExposure,
  log: Log,
): string {
  if (coldHolding === null || exposure === null || coldHolding.value === limit.value) return '';
  const { aboveMinutes, settledMinutes } = exposure;
  const said =
    aboveMinutes === 0
      ? 'never'
      : `for ${minutesText(aboveMinutes)}, ${settledMinutes === 0 ? 'none' : minutesText(settledMinutes)} of it in settled air`;
  return ` Above ${coldHoldingTitle(log)}: ${said}.`;
}

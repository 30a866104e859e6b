import type { Log } from '../../model/log.ts';
import type { LeftOpen } from '../../repair-check/back-on.ts';
import type { RepairCheck, RepairVerdict } from '../../repair-check/check-repair.ts';
import { formatTemperature } from '../../units/display.ts';
import { figureText, figureTitle } from '../figure-text.ts';
import { dayAndTimeText } from '../local-time.ts';

export const verdictWords: Readonly<Record<RepairVerdict, string>> = {
  recovered: 'Recovered',
  partly: 'Partly recovered',
  unchanged: 'Unchanged',
  'too-early': 'Too early to say',
};

/** The verdict in one or two sentences, and what is new since the service. */
export function verdictText(check: RepairCheck, log: Log): string {
  const since = newTroubleText(check, log);
  return since === '' ? repairText(check) : `${repairText(check)} ${since}`;
}

function newTroubleText({ newTroubles: [worst] }: RepairCheck, log: Log): string {
  if (worst === undefined) return '';
  const words = (value: number): string => figureText(value, worst, log);
  const usual = worst.usual === null ? '' : ` (usual ${words(worst.usual)})`;
  return `Since the service ${figureTitle(worst)} went from ${words(worst.before)} to ${words(worst.after)}${usual}: a trouble that is new or was only beginning.`;
}

function repairText(check: RepairCheck): string {
  const { verdict, tooEarly, judged, relapsed } = check;
  if (verdict === 'too-early') return `${verdictWords[verdict]}: ${tooEarly}.`;
  const [lead] = judged;
  if (lead === undefined) {
    return 'Unchanged: nothing on this circuit stood out before the service, so there is nothing that could have recovered.';
  }
  const gone = `${Math.round(100 * Math.max(0, Math.min(1, lead.gone!.share)))} % of the trouble is gone`;
  if (relapsed) {
    return `${verdictWords[verdict]}: it was better in the first days after the service and has come back since (${figureTitle(lead)}). What was done did not reach the cause.`;
  }
  if (verdict === 'recovered') {
    return `${verdictWords[verdict]}: ${figureTitle(lead)} is back at what was usual. Drains and coils can block again: look once more two weeks after the service.`;
  }
  const open = judged.filter(({ isBack }) => !isBack).map(figureTitle);
  return verdict === 'partly'
    ? `${verdictWords[verdict]}: ${gone} (${figureTitle(lead)}); still off: ${open.join('; ')}.`
    : `${verdictWords[verdict]}: ${figureTitle(lead)} ${lead.gone!.high < 0 ? 'is no better, and has got worse since the service' : 'stands as it did before the service'}.`;
}

/** What is still off, held open or not put back; one line says so where everything is on. */
export function leftOpenLines(check: RepairCheck, log: Log): string[] {
  if (check.leftOpen.length === 0) {
    return [
      'Everything back on: no circuit is shut off, none is held open, no set point stands otherwise than before the service.',
    ];
  }
  return check.leftOpen.map((open) => leftOpenText(open, log));
}

export function leftOpenText(open: LeftOpen, log: Log): string {
  const since = dayAndTimeText(log, open.since);
  switch (open.what) {
    case 'shut-off':
      return `${open.circuit} is shut off since ${since}.`;
    case 'override':
      return `${open.circuit}: the valve is held open since ${since}, as an override that was left on would.`;
    case 'set-point':
      return `${open.circuit}: the set point went from ${formatTemperature(open.from, log.units)} to ${formatTemperature(open.to, log.units)} on ${since} and was not put back.`;
    case 'no-defrost':
      return `${open.circuit} has not defrosted since ${since}.`;
  }
}

/** Which stretches were compared. */
export function windowsText({ windows, serviced }: RepairCheck, log: Log): string {
  const at = (time: number) => dayAndTimeText(log, time);
  return `Serviced ${at(serviced)}. Compared at the same hours of the day, in settled air: ${at(windows.beforeFrom)} until the service with ${at(windows.afterFrom)} to ${at(windows.afterTo)}; ${windows.defrostsAfter} complete defrosts since.`;
}

import type { Log } from '../../model/log.ts';
import type { LeftOpen } from '../../repair-check/back-on.ts';
import type { RepairCheck } from '../../repair-check/check-repair.ts';
import type { RepairMeasure } from '../../repair-check/judge-figure.ts';
import { localTimestamp } from '../../units/display.ts';
import { airNotFood } from '../air-not-food.ts';
import { changeText, figureTitle } from '../figure-text.ts';
import { leftOpenText, verdictText } from './repair-words.ts';

/** What `rimelog verify --json` writes: values in inside units with their UCUM code, `display` in the site's. */
export function repairDocument(check: RepairCheck, log: Log): object {
  const { windows } = check;
  return {
    format: 'rimelog-verify/1',
    site: log.site,
    circuit: check.circuit,
    serviced: localTimestamp(check.serviced, log),
    verdict: check.verdict,
    summary: verdictText(check),
    relapsed: check.relapsed,
    windows: {
      before: { start: localTimestamp(windows.beforeFrom, log), end: localTimestamp(check.serviced, log) },
      after: { start: localTimestamp(windows.afterFrom, log), end: localTimestamp(windows.afterTo, log) },
      defrostsAfter: windows.defrostsAfter,
      hoursAfter: windows.hoursAfter,
    },
    measures: check.measures.map((measure) => measureDocument(measure, check, log)),
    leftOpen: check.leftOpen.map((open) => leftOpenDocument(open, log)),
    notice: airNotFood,
  };
}

function measureDocument(measure: RepairMeasure, { judged }: RepairCheck, log: Log): object {
  const { id, point, unit, before, after, difference, low, high, usual, usualFrom, gone, state } = measure;
  return {
    name: id,
    point,
    title: figureTitle(measure),
    unit,
    before,
    after,
    difference,
    low,
    high,
    usual,
    usualFrom,
    share: gone?.share ?? null,
    state,
    judged: judged.includes(measure),
    display: changeText(measure, measure, log),
  };
}

function leftOpenDocument(open: LeftOpen, log: Log): object {
  const { what, circuit, since } = open;
  return { what, circuit, since: localTimestamp(since, log), summary: leftOpenText(open, log) };
}

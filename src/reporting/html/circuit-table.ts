import { median } from 'simple-statistics';
import type { Diagnosis } from '../../model/finding.ts';
import type { Log } from '../../model/log.ts';
import type { CircuitSignals, Signals } from '../../signals/types.ts';
import { formatNumber } from '../../units/format-number.ts';
import { circuitSignals } from '../circuit-series.ts';
import { circuitTitle, groupBehind } from '../report-order.ts';
import { siteScale } from '../site-scale.ts';
import { type Html, html } from './escape.ts';
import { severityMark } from './finding-section.ts';

function usual(days: Float64Array): number {
  const known = [...days].filter((value) => Number.isFinite(value));
  return known.length === 0 ? Number.NaN : median(known);
}

const orDash = (value: number, decimals: number, unit = ''): string =>
  Number.isFinite(value) ? `${formatNumber(value, decimals)}${unit}` : '–';

function airText(own: CircuitSignals, log: Log): string {
  const { temperature } = siteScale(log);
  const levels = own.probes.map(({ median: days }) => temperature(usual(days))).filter(Number.isFinite);
  if (levels.length === 0) return '–';
  const low = formatNumber(Math.min(...levels), 1);
  const high = formatNumber(Math.max(...levels), 1);
  return low === high ? low : `${low} to ${high}`;
}

/** Every circuit in its rank with the usual figures that its verdict rests on. */
export function circuitTable(log: Log, signals: Signals, diagnosis: Diagnosis): Html {
  const { temperature, temperatureSign } = siteScale(log);
  const rows = diagnosis.circuits.map(({ id, rank, worst }) => {
    const own = circuitSignals(signals, id);
    const complete = log.calendar.days.length;
    const group = groupBehind(id, diagnosis);
    const quiet = group === null ? 'nothing found' : `with suction group ${group}`;
    const verdict = worst === null ? html`<span class="quiet">${quiet}</span>` : severityMark(worst);
    return html`<tr><td class="number">${rank}</td><th scope="row">${circuitTitle(log, id)}</th><td>${verdict}</td><td class="number">${orDash(temperature(usual(own.setPoint)), 1)}</td><td class="number">${airText(own, log)}</td><td class="number">${own.defrostSource === 'none' ? '–' : formatNumber(own.defrosts.length / complete, 1)}</td><td class="number">${orDash(usual(own.duty) * 100, 0, ' %')}</td></tr>
`;
  });
  return html`<div class="scroll" role="region" tabindex="0" aria-label="Every circuit"><table class="circuits"><thead><tr><th scope="col" class="number">Rank</th><th scope="col">Circuit</th><th scope="col">Verdict</th><th scope="col" class="number">Set point, ${temperatureSign}</th><th scope="col" class="number">Settled air, coldest to warmest probe, ${temperatureSign}</th><th scope="col" class="number">Defrosts a day</th><th scope="col" class="number">Valve open</th></tr></thead><tbody>${rows}</tbody></table></div>`;
}

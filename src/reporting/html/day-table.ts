import { shownAir } from '../../figures/shown-air.ts';
import type { Log } from '../../model/log.ts';
import type { CircuitSignals, Signals } from '../../signals/types.ts';
import { formatNumber } from '../../units/format-number.ts';
import { circuitSignals } from '../circuit-series.ts';
import { siteScale } from '../site-scale.ts';
import { type Html, html } from './escape.ts';

interface Column {
  readonly title: string;
  readonly days: Float64Array;
  readonly decimals: number;
  convert(value: number): number;
}

function columnsOf(own: CircuitSignals, log: Log): readonly Column[] {
  const { temperature, temperatureSign } = siteScale(log);
  const columns: Column[] = own.circuit.probes.map(({ point }, index) => ({
    title: `${point}, ${temperatureSign}`,
    days: shownAir(own, index),
    decimals: 1,
    convert: temperature,
  }));
  columns.push(
    { title: `set point, ${temperatureSign}`, days: own.setPoint, decimals: 1, convert: temperature },
    { title: 'valve open, %', days: own.duty, decimals: 0, convert: (share) => share * 100 },
  );
  return columns.filter(({ days }) => days.some((value) => Number.isFinite(value)));
}

/** The plot in figures: the median of the air of every day while cooling, or while off. */
export function dayTable(log: Log, signals: Signals, circuitId: string): Html {
  const columns = columnsOf(circuitSignals(signals, circuitId), log);
  const cell = (column: Column, day: number): Html => {
    const value = column.days[day];
    const text = Number.isFinite(value) ? formatNumber(column.convert(value!), column.decimals) : '–';
    return html`<td class="number">${text}</td>`;
  };
  return html`<details><summary>The plot as a table: air while cooling or off, median of each day</summary><div class="scroll" role="region" tabindex="0" aria-label="Daily figures of ${circuitId}"><table><thead><tr><th scope="col">Day</th>${columns.map(
    ({ title }) => html`<th scope="col" class="number">${title}</th>`,
  )}</tr></thead><tbody>${log.calendar.days.map(
    ({ date }, day) => html`<tr><th scope="row">${date}</th>${columns.map((column) => cell(column, day))}</tr>
`,
  )}</tbody></table></div></details>`;
}

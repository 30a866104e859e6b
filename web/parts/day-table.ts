import { h, visible } from '../dom.ts';
import type { CircuitDays, SiteReport } from '../json.ts';

const cell = (value: number | null | undefined, decimals: number, factor = 1): HTMLElement =>
  h(
    'td',
    { class: 'number' },
    value === null || value === undefined ? '–' : (value * factor).toFixed(decimals),
  );

function known(values: readonly (number | null)[]): boolean {
  return values.some((value) => value !== null);
}

/** What the plot shows, as numbers: a row a day. */
export function dayTable(circuit: CircuitDays, { days, temperatureUnit }: SiteReport): HTMLElement {
  const number = (text: string): HTMLElement => h('th', { scope: 'col', class: 'number' }, text);
  const hasSet = known(circuit.setPoint);
  const hasDuty = known(circuit.duty);
  const hasDefrosts = known(circuit.defrosts);
  const head = h(
    'tr',
    {},
    h('th', { scope: 'col' }, 'Day'),
    circuit.probes.map(({ point }) => number(`${visible(point)}, ${temperatureUnit}`)),
    hasSet && number(`Set point, ${temperatureUnit}`),
    hasDuty && number('Valve open, %'),
    hasDefrosts && number('Defrosts'),
    hasDefrosts && number('Longest recovery, min'),
  );
  const rows = days.map((date, day) => {
    const recoveries = circuit.probes.map(({ recoveryMinutes }) => recoveryMinutes[day] ?? null);
    const longest = known(recoveries) ? Math.max(...recoveries.map((value) => value ?? 0)) : null;
    return h(
      'tr',
      {},
      h('th', { scope: 'row' }, date),
      circuit.probes.map(({ median }) => cell(median[day], 1)),
      hasSet && cell(circuit.setPoint[day], 1),
      hasDuty && cell(circuit.duty[day], 0, 100),
      hasDefrosts && cell(circuit.defrosts[day], 0),
      hasDefrosts && cell(longest, 0),
    );
  });
  return h(
    'details',
    { class: 'numbers' },
    h('summary', {}, 'The same as a table, a row a day'),
    h(
      'p',
      { class: 'quiet' },
      'Air is the median while cooling, defrosts and the recoveries after them left out; of a day spent off, the median while off.',
    ),
    h(
      'div',
      { class: 'scroll', role: 'region', tabindex: '0', 'aria-label': 'Daily figures' },
      h('table', {}, h('thead', {}, head), h('tbody', {}, rows)),
    ),
  );
}

import type { SimulatedPoint, SimulatedStore } from '../simulated-store.ts';
import { cellWriter, headerOf, loggedPoints, unitLabel } from './cells.ts';
import type { Dialect, ExportFile } from './dialect.ts';
import { timeWriter } from './local-time.ts';

/** The store's history as this dialect's system would export it. `untilMs` cuts it off. */
export function writeExports(
  store: SimulatedStore,
  dialect: Dialect,
  untilMs = Number.POSITIVE_INFINITY,
): ExportFile[] {
  const points = loggedPoints(store, dialect);
  const every = dialect.logging.intervalMinutes;
  const count = Math.min(store.count, Math.floor((untilMs - store.startMs) / store.stepMs));
  switch (dialect.layout) {
    case 'wide':
      return [{ name: 'export.csv', text: wide(store, dialect, points, every, count) }];
    case 'file-a-circuit':
      return fileACircuit(store, dialect, points, every, count);
    case 'long':
      return [{ name: 'history.csv', text: long(store, dialect, points, every, count, false) }];
    case 'change-of-value':
      return [{ name: 'changes.csv', text: long(store, dialect, points, every, count, true) }];
  }
}

function opening(store: SimulatedStore, dialect: Dialect): string[] {
  const lines = dialect.preamble
    ? [`Site history: ${store.site}`, `Interval ${dialect.logging.intervalMinutes} min`, '']
    : [];
  return lines;
}

function wide(
  store: SimulatedStore,
  dialect: Dialect,
  points: readonly SimulatedPoint[],
  every: number,
  count: number,
): string {
  const { delimiter } = dialect;
  const lines = opening(store, dialect);
  lines.push(['Date/Time', ...points.map((point) => headerOf(point, dialect))].join(delimiter));
  if (dialect.units === 'row')
    lines.push(['', ...points.map((point) => unitLabel(point, dialect))].join(delimiter));
  const time = timeWriter(
    dialect.time,
    store.timeZone,
    store.startMs,
    store.startMs + store.count * store.stepMs,
  );
  const cells = points.map((point) => cellWriter(point, dialect, store.atmosphere));
  for (let i = 0; i < count; i += every) {
    let line = time(store.startMs + i * store.stepMs);
    let known = false;
    for (let p = 0; p < points.length; p++) {
      const value = points[p]!.values[i]!;
      known ||= !Number.isNaN(value);
      line += delimiter + cells[p]!(value);
    }
    // A logger that was off wrote no row at all.
    if (known) lines.push(line);
  }
  return joined(lines, dialect);
}

function fileACircuit(
  store: SimulatedStore,
  dialect: Dialect,
  points: readonly SimulatedPoint[],
  every: number,
  count: number,
): ExportFile[] {
  const owners = [...new Set(points.map((point) => point.circuit ?? point.group ?? 'store'))];
  return owners.map((owner) => ({
    name: `${owner}.csv`,
    text: wide(
      store,
      dialect,
      points.filter((point) => (point.circuit ?? point.group ?? 'store') === owner),
      every,
      count,
    ),
  }));
}

function long(
  store: SimulatedStore,
  dialect: Dialect,
  points: readonly SimulatedPoint[],
  every: number,
  count: number,
  changesOnly: boolean,
): string {
  const { delimiter } = dialect;
  const lines = opening(store, dialect);
  const withUnit = dialect.units !== 'none';
  lines.push(['Time', 'Point', 'Value', ...(withUnit ? ['Unit'] : [])].join(delimiter));
  const time = timeWriter(
    dialect.time,
    store.timeZone,
    store.startMs,
    store.startMs + store.count * store.stepMs,
  );
  const cells = points.map((point) => cellWriter(point, dialect, store.atmosphere));
  const names = points.map((point) => dialect.naming(point));
  const units = points.map((point) => unitLabel(point, dialect));
  const last: string[] = points.map(() => '');
  const thresholds = points.map((point) => changeThreshold(point, dialect));
  for (let i = 0; i < count; i += every) {
    const at = time(store.startMs + i * store.stepMs);
    for (let p = 0; p < points.length; p++) {
      const value = points[p]!.values[i]!;
      if (Number.isNaN(value)) continue;
      const cell = cells[p]!(value);
      if (changesOnly && !worthWriting(cell, last[p]!, thresholds[p]!)) continue;
      last[p] = cell;
      lines.push(`${at}${delimiter}${names[p]}${delimiter}${cell}${withUnit ? delimiter + units[p] : ''}`);
    }
  }
  return joined(lines, dialect);
}

/** Whether a change-of-value logger writes `cell` after `last`: any change of a state, a number that moved enough. */
function worthWriting(cell: string, last: string, threshold: number): boolean {
  if (cell === last) return false;
  const moved = Math.abs(Number(cell.replace(',', '.')) - Number(last.replace(',', '.')));
  return last === '' || Number.isNaN(moved) || moved >= threshold - 1e-9;
}

/** How far a number must move, in the export's own unit. */
function changeThreshold(point: SimulatedPoint, { logging }: Dialect): number {
  if (point.quantity === 'temperature')
    return Math.max(logging.temperatureStep, logging.temperature === 'degF' ? 0.5 : 0.3);
  if (point.quantity === 'pressure')
    return Math.max(logging.pressureStep, logging.pressure === 'psig' ? 1 : 0.07);
  return 0;
}

function joined(lines: readonly string[], dialect: Dialect): string {
  return `${dialect.byteOrderMark ? '\ufeff' : ''}${lines.join(dialect.newline)}${dialect.newline}`;
}

import { asWritten } from '../logging.ts';
import type { SimulatedPoint } from '../simulated-store.ts';
import type { Dialect } from './dialect.ts';

/** A writer of one point's cells, as text; the missing word for NaN. */
export function cellWriter(
  point: SimulatedPoint,
  dialect: Dialect,
  atmosphere: number,
): (value: number) => string {
  const { logging, decimal, statusWords, missing } = dialect;
  if (point.quantity === 'status') {
    return (value) => (Number.isNaN(value) ? missing : statusWords[value >= 0.5 ? 1 : 0]);
  }
  const step = stepOf(point, logging);
  const decimals = Math.max(0, (String(step).split('.')[1] ?? '').length);
  return (value) => {
    if (Number.isNaN(value)) return missing;
    const text = asWritten(point, value, logging, atmosphere).toFixed(decimals);
    return decimal === '.' ? text : text.replace('.', ',');
  };
}

function stepOf(point: SimulatedPoint, logging: Dialect['logging']): number {
  switch (point.quantity) {
    case 'temperature':
    case 'temperature-difference':
      return logging.temperatureStep;
    case 'pressure':
      return logging.pressureStep;
    case 'fraction':
      return 0.5;
    default:
      return 0.01;
  }
}

/** The unit as the export prints it, or '' for none. */
export function unitLabel(point: SimulatedPoint, dialect: Dialect): string {
  switch (point.quantity) {
    case 'temperature':
    case 'temperature-difference':
      return dialect.logging.temperature === 'degF' ? '°F' : '°C';
    case 'pressure':
      return dialect.logging.pressure;
    case 'fraction':
      return '%';
    default:
      return '';
  }
}

/** The header of a point: its name, with the unit where this dialect puts it there. */
export function headerOf(point: SimulatedPoint, dialect: Dialect): string {
  const name = dialect.naming(point);
  const unit = dialect.units === 'header' ? unitLabel(point, dialect) : '';
  return unit === '' ? name : `${name} (${unit})`;
}

/** The points that this dialect logs, in the order of its columns. */
export function loggedPoints(
  store: {
    readonly circuits: readonly {
      readonly air: readonly SimulatedPoint[];
      readonly others: readonly SimulatedPoint[];
    }[];
    readonly groups: readonly { readonly points: readonly SimulatedPoint[] }[];
    readonly loose: readonly SimulatedPoint[];
  },
  dialect: Dialect,
): SimulatedPoint[] {
  const without = new Set(dialect.without);
  return [
    ...store.circuits.flatMap((circuit) => [...circuit.air, ...circuit.others]),
    ...store.groups.flatMap((group) => group.points),
    ...store.loose,
  ].filter((point) => !without.has(point.role));
}

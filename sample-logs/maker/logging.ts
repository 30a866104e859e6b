import type { SimulatedPoint } from './simulated-store.ts';

/** How a logger writes the plant down. */
export interface Logging {
  readonly temperature: 'degF' | 'degC';
  readonly pressure: 'psig' | 'bar' | 'kPa';
  /** Steps in the export's own unit. */
  readonly temperatureStep: number;
  readonly pressureStep: number;
  readonly intervalMinutes: number;
}

export const usualLogging: Logging = {
  temperature: 'degF',
  pressure: 'psig',
  temperatureStep: 0.1,
  pressureStep: 0.1,
  intervalMinutes: 1,
};

const kilopascalOf = { psig: 6.894757293168, bar: 100, kPa: 1 } as const;

/** A reading as the logger writes it: in its unit, rounded to its step. NaN stays NaN. */
export function asWritten(
  point: SimulatedPoint,
  value: number,
  logging: Logging,
  atmosphere: number,
): number {
  switch (point.quantity) {
    case 'temperature':
      return rounded(logging.temperature === 'degF' ? value * 1.8 + 32 : value, logging.temperatureStep);
    case 'temperature-difference':
      return rounded(logging.temperature === 'degF' ? value * 1.8 : value, logging.temperatureStep);
    case 'pressure': {
      const gauge = logging.pressure === 'psig' ? value - atmosphere : value;
      return rounded(gauge / kilopascalOf[logging.pressure], logging.pressureStep);
    }
    case 'fraction':
      return rounded(value * 100, 0.5);
    default:
      return value;
  }
}

/** The inverse of `asWritten`, up to its rounding. */
export function asInside(
  point: SimulatedPoint,
  written: number,
  logging: Logging,
  atmosphere: number,
): number {
  switch (point.quantity) {
    case 'temperature':
      return logging.temperature === 'degF' ? (written - 32) / 1.8 : written;
    case 'temperature-difference':
      return logging.temperature === 'degF' ? written / 1.8 : written;
    case 'pressure':
      return written * kilopascalOf[logging.pressure] + (logging.pressure === 'psig' ? atmosphere : 0);
    case 'fraction':
      return written / 100;
    default:
      return written;
  }
}

/** Step of a point's values inside rimelog, K, kPa or a fraction. */
export function insideStep(point: SimulatedPoint, logging: Logging): number {
  switch (point.quantity) {
    case 'temperature':
    case 'temperature-difference':
      return logging.temperatureStep / (logging.temperature === 'degF' ? 1.8 : 1);
    case 'pressure':
      return logging.pressureStep * kilopascalOf[logging.pressure];
    case 'fraction':
      return 0.005;
    default:
      return 1;
  }
}

const unitOf: { readonly [unit: string]: string } = {
  degF: '[degF]',
  degC: 'Cel',
  psig: '[psi]',
  bar: 'bar',
  kPa: 'kPa',
};

export function ucumOf(point: SimulatedPoint, logging: Logging): string {
  switch (point.quantity) {
    case 'temperature':
    case 'temperature-difference':
      return unitOf[logging.temperature]!;
    case 'pressure':
      return unitOf[logging.pressure]!;
    case 'fraction':
      return '%';
    default:
      return '';
  }
}

/** Rounds to a step; adding 0 turns −0 into 0. */
function rounded(value: number, step: number): number {
  const scale = 1 / step;
  return Math.round(value * scale) / scale + 0;
}

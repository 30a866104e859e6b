import { usualLogging } from '../logging.ts';
import { namings, ownerLastNaming, plainNaming, spelledNaming, upperNaming } from '../naming.ts';
import type { Random } from '../random.ts';
import type { PointRole } from '../simulated-store.ts';
import type { Dialect } from './dialect.ts';

/** Comma, ISO times, °F to a tenth every minute: the plainest there is. */
export const plainDialect: Dialect = {
  layout: 'wide',
  delimiter: ',',
  decimal: '.',
  time: 'iso',
  logging: usualLogging,
  naming: plainNaming,
  preamble: false,
  units: 'header',
  statusWords: ['0', '1'],
  missing: '',
  newline: '\n',
  byteOrderMark: false,
  without: ['coil-out', 'superheat', 'return-air', 'defrost-termination'],
};

/** American office: US dates with AM and PM, a title, a units row, words for states. */
export const officeDialect: Dialect = {
  ...plainDialect,
  time: 'us-ampm',
  naming: spelledNaming,
  preamble: true,
  units: 'row',
  statusWords: ['OFF', 'ON'],
  missing: '---',
  newline: '\r\n',
};

/** Continental: semicolons, decimal commas, dotted dates, °C and bar. */
export const continentalDialect: Dialect = {
  ...plainDialect,
  delimiter: ';',
  decimal: ',',
  time: 'dotted',
  naming: ownerLastNaming,
  logging: {
    ...usualLogging,
    temperature: 'degC',
    pressure: 'bar',
    temperatureStep: 0.1,
    pressureStep: 0.01,
  },
  byteOrderMark: true,
  newline: '\r\n',
};

/** One row a reading. */
export const longDialect: Dialect = {
  ...plainDialect,
  layout: 'long',
  time: 'iso-offset',
  naming: upperNaming,
  units: 'row',
  statusWords: ['Off', 'On'],
};

/** One row a change. */
export const changesDialect: Dialect = {
  ...longDialect,
  layout: 'change-of-value',
  time: 'us',
  delimiter: '\t',
};

/** A dialect of its own for every seed; `intervalMinutes` may be asked for. */
export function drawDialect(random: Random, wishes: { readonly intervalMinutes?: number } = {}): Dialect {
  const metric = random.chance(0.35);
  const continental = metric && random.chance(0.6);
  const step = random.pick([0.1, 0.1, 0.1, 0.5, 1]);
  return {
    ...plainDialect,
    layout: random.pick(['wide', 'wide', 'wide', 'long', 'file-a-circuit', 'change-of-value']),
    delimiter: continental ? random.pick([';', '\t']) : random.pick([',', ',', '\t']),
    decimal: continental ? ',' : '.',
    time: continental
      ? 'dotted'
      : random.pick(metric ? ['iso', 'day-first', 'iso-offset'] : ['iso', 'us', 'us-ampm', 'iso-offset']),
    logging: {
      temperature: metric ? 'degC' : 'degF',
      pressure: metric ? random.pick(['bar', 'kPa']) : 'psig',
      temperatureStep: metric ? Math.min(step, 0.5) : step,
      pressureStep: metric ? 0.1 : random.pick([0.1, 0.5, 1]),
      intervalMinutes: wishes.intervalMinutes ?? random.pick([1, 1, 2, 5]),
    },
    naming: random.pick(namings),
    preamble: random.chance(0.4),
    units: random.pick(['header', 'row', 'none']),
    statusWords: random.pick([
      ['0', '1'],
      ['OFF', 'ON'],
      ['Off', 'On'],
    ]),
    missing: random.pick(['', '---', 'N/A']),
    newline: random.pick(['\n', '\r\n']),
    byteOrderMark: random.chance(0.2),
    without: drawAbsent(random),
  };
}

/** Points that a system does not log: rarely the valve or the defrost state, usually the finer ones. */
function drawAbsent(random: Random): PointRole[] {
  const absent = random.pick<readonly PointRole[]>([
    ['coil-out', 'superheat', 'return-air', 'defrost-termination'],
    ['coil-out', 'return-air', 'defrost-termination', 'superheat', 'liquid-level', 'not-connected'],
    ['return-air', 'superheat'],
    ['coil-out', 'superheat', 'return-air', 'defrost-termination', 'set-point'],
  ]);
  return [
    ...absent,
    ...(random.chance(0.15) ? (['valve'] as const) : []),
    ...(random.chance(0.2) ? (['defrost'] as const) : []),
  ];
}

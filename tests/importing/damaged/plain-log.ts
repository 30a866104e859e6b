/** A plain log of an invented store, and a writer that writes it in any dialect. */

export const zone = 'America/Denver';

export interface PlainRow {
  /** Ms since 1970 on the store's clock. */
  readonly wallMs: number;
  readonly cells: readonly (number | string | null)[];
}

export const header = [
  'M01 air A (°F)',
  'M01 air B (°F)',
  'M01 set (°F)',
  'M01 dfr',
  'M01 liquid',
  'S1 suction (psig)',
  'Receiver (%)',
];

export const firstWallMs = Date.UTC(2026, 8, 3);
export const stepMs = 300_000;
export const rowCount = 864;

/** Three days at five minutes: two probes, a set point, two states, a pressure, a level; some cells empty. */
export function plainRows(): PlainRow[] {
  let seed = 20_260_903;
  const random = (): number => {
    seed = (seed * 1_664_525 + 1_013_904_223) % 4_294_967_296;
    return seed / 4_294_967_296;
  };
  return Array.from({ length: rowCount }, (_, index) => {
    const minute = (index * 5) % 1440;
    const defrost = minute % 360 < 40;
    const swing = 1.5 * Math.sin(index / 2.2) + (defrost ? 9 : 0);
    const cells = [
      Number((34.2 + swing + random()).toFixed(1)),
      random() < 0.01 ? null : Number((35.1 + swing + random()).toFixed(1)),
      36,
      defrost ? 'ON' : 'OFF',
      !defrost && index % 3 > 0 ? 'OPEN' : 'CLOSED',
      Number((45 + 3 * random()).toFixed(2)),
      Number((38 + 4 * Math.sin(index / 90)).toFixed(1)),
    ];
    return { wallMs: firstWallMs + index * stepMs, cells };
  });
}

export interface Writing {
  readonly delimiter?: string;
  readonly lineEnd?: string | ((line: number) => string);
  readonly time?: (wallMs: number) => string;
  readonly timeHeader?: string;
  readonly cell?: (value: number | string | null, row: number, column: number) => string;
  readonly headers?: readonly string[];
  readonly before?: readonly string[];
  readonly after?: readonly string[];
  readonly changeLines?: (lines: string[]) => string[];
}

export function two(value: number): string {
  return String(value).padStart(2, '0');
}

export interface Parts {
  year: number;
  month: number;
  day: number;
  hour: number;
  minute: number;
  second: number;
}

export function partsOf(wallMs: number): Parts {
  const date = new Date(wallMs);
  return {
    year: date.getUTCFullYear(),
    month: date.getUTCMonth() + 1,
    day: date.getUTCDate(),
    hour: date.getUTCHours(),
    minute: date.getUTCMinutes(),
    second: date.getUTCSeconds(),
  };
}

export function isoTime(wallMs: number): string {
  const { year, month, day, hour, minute, second } = partsOf(wallMs);
  return `${year}-${two(month)}-${two(day)} ${two(hour)}:${two(minute)}:${two(second)}`;
}

export function plainCell(value: number | string | null): string {
  return value === null ? '' : String(value);
}

export function written(writing: Writing = {}, rows: readonly PlainRow[] = plainRows()): string {
  const { delimiter = ',', lineEnd = '\n', time = isoTime, cell = plainCell } = writing;
  const lines = [
    ...(writing.before ?? []),
    [writing.timeHeader ?? 'Time', ...(writing.headers ?? header)].join(delimiter),
    ...rows.map(({ wallMs, cells }, row) =>
      [time(wallMs), ...cells.map((value, column) => cell(value, row, column))].join(delimiter),
    ),
    ...(writing.after ?? []),
  ];
  const changed = writing.changeLines?.(lines) ?? lines;
  return changed
    .map((line, index) => line + (typeof lineEnd === 'string' ? lineEnd : lineEnd(index)))
    .join('');
}

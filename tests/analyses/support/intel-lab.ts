import { readFileSync } from 'node:fs';
import type { Circuit, Log } from '../../../src/model/log.ts';

/** One mote: its name in the data set and its readings every 15 minutes, Celsius. */
export interface Mote {
  readonly name: string;
  readonly values: Float64Array;
}

const stepMs = 15 * 60_000;
const startMs = Date.UTC(2004, 1, 29);
const perDay = 96;

/** The ten motes of one week (tests/golden/de-bruijn/SOURCES.md). */
export function motesOf(week: 'clean' | 'bias'): Mote[] {
  const url = new URL(`../../golden/de-bruijn/intel-${week}-15min.csv`, import.meta.url);
  const [header, ...rows] = readFileSync(url, 'utf8').trim().split('\n');
  const names = header!.split(',');
  return names
    .map((name, column) => ({
      name,
      values: Float64Array.from(rows, (row) => Number(row.split(',')[column])),
    }))
    .filter(({ name }) => name.startsWith('T_'));
}

/** The motes that stood nearest to each other in the list, as three line-ups would. */
export function inThrees<T>(motes: readonly T[]): T[][] {
  return [motes.slice(0, 3), motes.slice(3, 6), motes.slice(6)];
}

/** Line-ups of motes as a log without set points, defrosts and racks. */
export function labLog(lineUps: readonly (readonly Mote[])[]): Log {
  const count = lineUps[0]![0]!.values.length;
  return {
    site: 'Intel lab',
    units: { temperature: 'degC', pressure: 'bar' },
    atmosphere: 101.325,
    grid: { startMs, stepMs, count },
    calendar: {
      timeZone: 'UTC',
      days: Array.from({ length: count / perDay }, (_, d) => ({
        date: new Date(startMs + d * 86_400_000).toISOString().slice(0, 10),
        weekday: d % 7,
        from: d * perDay,
        to: (d + 1) * perDay,
        hours: 24,
      })),
      offsets: [{ from: 0, offsetMinutes: 0 }],
    },
    suctionGroups: [],
    circuits: lineUps.map(
      (motes, i): Circuit => ({
        id: `L${i + 1}`,
        name: `L${i + 1}`,
        suctionGroup: null,
        setPoint: null,
        differential: null,
        controls: 'average',
        probes: motes.map(({ name, values }, position) => ({
          point: name,
          position,
          record: {
            point: name,
            quantity: 'temperature',
            exportUnit: 'Cel',
            values,
            resolution: 0.01,
            intervalMs: stepMs,
            logging: 'sampled',
            changes: null,
            first: startMs,
            last: startMs + (count - 1) * stepMs,
          },
        })),
        returnAir: [],
        coilOut: [],
        product: [],
        defrostTermination: [],
        valve: null,
        superheat: null,
        defrost: { kind: null, status: null, perDay: null, minutes: null, starts: null },
        limits: null,
      }),
    ),
    unassigned: [],
  };
}

/** The mote with a step of `size` from `day` on. */
export function withStep({ name, values }: Mote, size: number, day: number): Mote {
  return { name, values: values.map((value, i) => value + (i >= day * perDay ? size : 0)) };
}

export const labStartMs = startMs;

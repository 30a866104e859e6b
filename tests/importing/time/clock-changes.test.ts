import { describe, expect, it } from 'vitest';
import { codesOf, normalized, readContent } from '../support.ts';

/** Local minutes of one autumn night in Denver: 00:00 to 02:59 with the hour from 01:00 twice. */
const hour = 3_600_000;
const night = Date.UTC(2026, 10, 1);
const stamp = (wallMs: number): string => new Date(wallMs).toISOString().slice(0, 19).replace('T', ' ');
const autumn = (step: number): number[] => {
  const walls: number[] = [];
  for (let at = 0; at < 4 * hour; at += step) walls.push(night + (at < 2 * hour ? at : at - hour));
  return walls;
};
const utc = (index: number, step: number): string =>
  `${new Date(Date.UTC(2026, 10, 1, 6) + index * step).toISOString().slice(0, 19)}Z`;
const wide = (walls: readonly number[]): string =>
  `Time,Air\n${walls.map((wall, index) => `${stamp(wall)},${30 + index}.5`).join('\n')}\n`;
const timesOf = async (content: string): Promise<string[]> =>
  normalized(await readContent(content))
    .split('\n')
    .slice(1, -1)
    .map((line) => line.split(',')[0]!);

describe('the hour that comes twice in autumn', () => {
  it.each([60_000, 300_000, 900_000, 1_800_000, hour])(
    'is told apart by order, every %i ms',
    async (step) => {
      const walls = autumn(step);
      const content = wide(walls);
      expect(await timesOf(content)).toEqual(walls.map((_, index) => utc(index, step)));
      expect(codesOf(await readContent(content))).toContain('repeated-hour');
    },
  );

  it('is told apart in a file with the newest row first', async () => {
    const lines = wide(autumn(300_000)).trim().split('\n');
    const turned = [lines[0], ...lines.slice(1).reverse()].join('\n');
    expect(await timesOf(turned)).toEqual(await timesOf(wide(autumn(300_000))));
  });

  it('is told apart in a long log of changes by the order of all its rows', async () => {
    const rows = ['time,point,value'];
    const told: string[] = [];
    for (const [index, wall] of autumn(300_000).entries()) {
      const point = index % 5 === 0 ? 'M01 air' : 'M02 air';
      rows.push(`${stamp(wall)},${point},${30 + index}.5`);
      told.push(`${utc(index, 300_000)},${point}`);
    }
    const found = normalized(await readContent(rows.join('\n')))
      .split('\n')
      .slice(1, -1);
    expect(found.map((line) => line.split(',').slice(0, 2).join(','))).toEqual(told);
  });

  it('is left as the first hour, and said so, where it is there once', async () => {
    const once = autumn(300_000).filter((_, index) => index < 24 || index >= 36);
    expect(codesOf(await readContent(wide(once)))).toContain('repeated-hour-once');
  });

  it('needs no telling where the export has offsets', async () => {
    const walls = autumn(300_000);
    const rows = walls.map(
      (wall, index) => `${stamp(wall).replace(' ', 'T')}${index < 24 ? '-06:00' : '-07:00'},${30 + index}.5`,
    );
    const readings = await readContent(`Time,Air\n${rows.join('\n')}\n`);
    expect(normalized(readings)).toBe(normalized(await readContent(wide(walls))));
    expect(readings.report.timeZoneSource).toBe('offsets-in-export');
    expect(codesOf(readings)).toEqual([]);
  });

  it('needs no telling where the export names the zone', async () => {
    const walls = autumn(300_000);
    const rows = walls.map((wall, index) => `${stamp(wall)} ${index < 24 ? 'MDT' : 'MST'},${30 + index}.5`);
    expect(normalized(await readContent(`Time,Air\n${rows.join('\n')}\n`))).toBe(
      normalized(await readContent(wide(walls))),
    );
  });
});

describe('the hour that is missing in spring', () => {
  it('leaves no gap', async () => {
    const walls = Array.from(
      { length: 36 },
      (_, index) => Date.UTC(2026, 2, 8) + index * 300_000 + (index < 24 ? 0 : hour),
    );
    const found = await timesOf(wide(walls));
    expect(found.map((time, index) => Date.parse(time) - index * 300_000)).toEqual(
      found.map(() => Date.UTC(2026, 2, 8, 7)),
    );
  });

  it('is named where a logger writes it all the same', async () => {
    const walls = Array.from({ length: 60 }, (_, index) => Date.UTC(2026, 2, 8) + index * 300_000);
    expect(codesOf(await readContent(wide(walls)))).toContain('skipped-hour');
  });
});

describe('a clock that was set', () => {
  const regular = Array.from({ length: 200 }, (_, index) => Date.UTC(2026, 5, 1) + index * 60_000);

  it('back is named, and the stretch that comes twice is kept once', async () => {
    const walls = regular.map((wall, index) => (index < 100 ? wall : wall - 20 * 60_000));
    const readings = await readContent(wide(walls));
    expect(codesOf(readings)).toEqual(['clock-set-back', 'row-in-conflict']);
    const report = readings.report.files[0]!;
    expect(report.rowsRejected).toBe(20);
    expect(report.issues.find(({ code }) => code === 'clock-set-back')!.line).toBe(102);
  });

  it('forward leaves a gap that is named', async () => {
    const walls = regular.map((wall, index) => (index < 100 ? wall : wall + 6 * hour));
    expect(codesOf(await readContent(wide(walls)))).toEqual(['gap']);
  });

  it('to another interval is named', async () => {
    const walls = Array.from(
      { length: 400 },
      (_, index) => Date.UTC(2026, 5, 1) + (index < 200 ? index : 200 + (index - 200) * 5) * 60_000,
    );
    expect(codesOf(await readContent(wide(walls)))).toEqual(['interval-changes']);
  });
});

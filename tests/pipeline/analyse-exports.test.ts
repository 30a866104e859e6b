import { describe, expect, test } from 'vitest';
import type { ExportSource } from '../../src/importing/readings.ts';
import { analyseExports } from '../../src/pipeline/analyse-exports.ts';
import { gatherReadings, type Progress } from '../../src/pipeline/gather-readings.ts';
import { smallExport } from '../cli/support/small-export.ts';

function sourceOf(name: string, text: string): ExportSource {
  const bytes = new TextEncoder().encode(text);
  return {
    name,
    size: bytes.length,
    async *open() {
      yield bytes;
    },
  };
}

const siteText = `
site: Larkspur Street Market
timeZone: America/Denver
units: { temperature: degF, pressure: psig }
circuits:
  - { id: M01, name: Cut fruit, setPoint: 36, probes: ["M01 air A (°F)", "M01 air B (°F)"] }
`;

describe('from exports to findings', () => {
  test('gives log, account, signals and diagnosis of the same circuits', async () => {
    const { log, report, signals, diagnosis } = await analyseExports({
      exports: [sourceOf('store.csv', smallExport())],
      siteFile: { name: 'site.yaml', text: siteText },
    });
    expect(log.circuits.map(({ id }) => id)).toEqual(['M01']);
    expect(signals.circuits.map(({ circuit }) => circuit.id)).toEqual(['M01']);
    expect(diagnosis.circuits.map(({ id }) => id)).toEqual(['M01']);
    expect(report.files[0]).toMatchObject({ name: 'store.csv', rows: 576, rowsRejected: 0 });
  });

  test('tells how far it is, from reading to judging, never backwards', async () => {
    const seen: Progress[] = [];
    await analyseExports({
      exports: [sourceOf('store.csv', smallExport())],
      onProgress: (progress) => seen.push(progress),
    });
    const stages = [...new Set(seen.map(({ stage }) => stage))];
    expect(stages).toEqual(['reading', 'arranging', 'looking for defrosts and cycles', 'judging']);
    const shares = seen.filter(({ stage }) => stage === 'reading').map(({ share }) => share ?? 0);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(Math.max(...shares)).toBeLessThanOrEqual(1);
  });

  test('keeps to the span that is asked for', async () => {
    const { log } = await analyseExports({
      exports: [sourceOf('store.csv', smallExport(4))],
      timeZone: 'America/Denver',
      from: '2026-09-02',
      to: '2026-09-03T12:00',
    });
    expect(log.calendar.days.map(({ date }) => date)).toEqual(['2026-09-02', '2026-09-03']);
  });

  test.each([
    ['the site file', siteText, 'Europe/Berlin', 'site', 'America/Denver'],
    ['the call, where the site file is silent', null, 'Europe/Berlin', 'option', 'Europe/Berlin'],
    [
      'this machine, where nobody says',
      null,
      null,
      'machine',
      Intl.DateTimeFormat().resolvedOptions().timeZone,
    ],
  ] as const)('takes the time zone from %s', async (_, text, asked, source, zone) => {
    const { readings } = await gatherReadings({
      exports: [sourceOf('store.csv', smallExport())],
      siteFile: text === null ? null : { name: 'site.yaml', text },
      timeZone: asked,
    });
    expect(readings.report).toMatchObject({ timeZone: zone, timeZoneSource: source });
  });

  test('gives the same findings for the same export', async () => {
    const once = async () =>
      JSON.stringify((await analyseExports({ exports: [sourceOf('store.csv', smallExport())] })).diagnosis);
    expect(await once()).toBe(await once());
  });
});

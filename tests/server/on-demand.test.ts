import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { runCli } from '../cli/support/run-cli.ts';
import { expectDescribed } from '../support/described.ts';
import { sampleParts } from '../support/sample-export.ts';
import { type TestServer, testServer } from '../support/test-server.ts';
import { codeOf, eventsAt, eventsOf, type Part, upload } from '../support/upload.ts';

const sample = fileURLToPath(new URL('../../sample-logs/iced-end', import.meta.url));
const serviced = '2026-09-22T10:00';

let server: TestServer;
let whole = '';
let again = '';
let elsewhere = '';

async function sent(parts: readonly Part[]): Promise<string> {
  const { id } = (await (await upload(server.base, parts)).json()) as { id: string };
  expect((await eventsOf(server.base, id)).at(-1)!.name).toBe('ready');
  return id;
}

/** Two days of a store whose names nothing else here has. */
function foreignExport(): Part {
  const rows = Array.from({ length: 576 }, (_, i) => {
    const time = new Date(Date.UTC(2026, 8, 1) + i * 300_000).toISOString().slice(0, 19).replace('T', ' ');
    const air = 36 + 2 * Math.sin((2 * Math.PI * i) / 5);
    return `${time},${air.toFixed(1)},${(air + 0.4).toFixed(1)}`;
  });
  const content = `Time,Q71 air A (°F),Q71 air B (°F)\n${rows.join('\n')}\n`;
  return { field: 'export', name: 'elsewhere.csv', content };
}

beforeAll(async () => {
  server = await testServer();
  whole = await sent(sampleParts('iced-end'));
  again = await sent(sampleParts('iced-end'));
  elsewhere = await sent([foreignExport()]);
}, 180_000);
afterAll(() => server.close());

const addressOf = (path: string, id = whole): string => `${server.base}/api/v1/exports/${id}/${path}`;
const repairPath = '/api/v1/exports/{id}/circuits/{circuit}/repair';
const comparisonPath = '/api/v1/exports/{id}/comparisons/{against}';

describe('Did the repair hold', () => {
  const at = (time: string, circuit = 'M01'): string =>
    addressOf(`circuits/${circuit}/repair?serviced=${encodeURIComponent(time)}`);

  test('is answered as the command line answers it', async () => {
    const answered = await expectDescribed(await fetch(at(serviced)), repairPath);
    const { out } = await runCli(['verify', sample, '--circuit', 'M01', '--serviced', serviced, '--json']);
    expect(answered).toEqual(JSON.parse(out));
  });

  test('tells how far it is, and where the answer lies', async () => {
    const address = at('2026-09-23T10:00').replace('/repair?', '/repair/events?');
    const events = await eventsAt(address);
    expect(events.map(({ name }) => name)).toContain('progress');
    const { name, data } = events.at(-1)!;
    expect(name).toBe('ready');
    const { result } = data as { result: string };
    expect((await fetch(server.base + result)).status).toBe(200);
  });

  test.each([
    ['a circuit that is not there', at, '2026-09-23T10:00', 'nowhere', 404, 'unknown-circuit'],
    ['a time outside the export', at, '2020-01-01', 'M01', 400, 'bad-service-time'],
    ['a time that is none', at, 'Tuesday', 'M01', 400, 'bad-service-time'],
  ] as const)('%s is refused with a way out', async (_, __, time, circuit, status, code) => {
    const response = await fetch(at(time, circuit));
    expect(response.status).toBe(status);
    expect(await expectDescribed(response, repairPath)).toMatchObject({ error: { code } });
    const events = await eventsAt(at(time, circuit).replace('/repair?', '/repair/events?'));
    expect(events.at(-1)).toMatchObject({ name: 'failed', data: { code } });
  });
});

describe('Two exports compared', () => {
  test('an export against itself under another id: nothing changed', async () => {
    const response = await fetch(addressOf(`comparisons/${again}`));
    const comparison = await expectDescribed(response, comparisonPath);
    expect(comparison).toMatchObject({ summary: expect.stringMatching(/^Nothing changed/) });
  });

  test('is refused with itself, with a stranger, and with one that is not there', async () => {
    for (const [against, status, code] of [
      [whole, 400, 'same-export'],
      [elsewhere, 422, 'nothing-in-common'],
      ['0'.repeat(16), 404, 'unknown-export'],
    ] as const) {
      const response = await fetch(addressOf(`comparisons/${against}`));
      expect(response.status).toBe(status);
      expect(await expectDescribed(response, comparisonPath)).toMatchObject({ error: { code } });
    }
  });
});

describe('A month', () => {
  test('that the export holds whole is made once, followed on its way, and kept; all days are too, and any other is refused', async () => {
    const { fullMonths } = (await (await fetch(addressOf('report'))).json()) as { fullMonths: string[] };
    expect(fullMonths).toHaveLength(1);
    const path = `months/${fullMonths[0]}`;
    const [events, first, second] = await Promise.all([
      eventsAt(addressOf(`${path}/events`)),
      fetch(addressOf(path)),
      fetch(addressOf(path)),
    ]);
    const stages = events.flatMap(({ name, data }) =>
      name === 'progress' ? [(data as { stage: string }).stage] : [],
    );
    expect(stages).toContain('making the tables');
    expect(events.at(-1)).toEqual({ name: 'ready', data: { result: new URL(addressOf(path)).pathname } });
    expect([first.status, second.status]).toEqual([200, 200]);
    const page = await first.text();
    expect(page).toContain('The month in refrigeration');
    expect(await second.text()).toBe(page);
    expect(await (await fetch(addressOf(path))).text()).toBe(page);
    expect((await eventsAt(addressOf(`${path}/events`))).at(-1)!.name).toBe('ready');
    const all = await (await fetch(addressOf('months/all'))).text();
    expect(all).toContain('All days of the export');
    expect(all).not.toContain('The month in refrigeration');
    for (const month of ['1999-01', '2026-13', '..%2F..%2Fexport.json']) {
      const other = await fetch(addressOf(`months/${month}`));
      expect([other.status, await codeOf(other)]).toEqual([404, 'no-month']);
    }
  });
});

import { rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { analysedFixture } from '../support/fixture-site.ts';
import { storeAnalysed, type TestServer, temporaryFolder, testServer } from '../support/test-server.ts';

let server: TestServer;
let id = '';

beforeAll(async () => {
  const dataFolder = await temporaryFolder();
  id = await storeAnalysed(dataFolder, analysedFixture());
  server = await testServer({ dataFolder });
});
afterAll(() => server.close());

test('clients that go away leave nothing open', async () => {
  const series = `${server.base}/api/v1/exports/${id}/circuits/M01/series`;
  const events = `${server.base}/api/v1/exports/${id}/events`;
  const open = (): number =>
    process.getActiveResourcesInfo().filter((kind) => !kind.startsWith('TCP')).length;
  const round = async (): Promise<void> => {
    const asked = Array.from({ length: 20 }, async (_, turn) => {
      const leave = new AbortController();
      const asking = fetch(turn % 2 === 0 ? series : events, { signal: leave.signal });
      if (turn % 3 === 0) setTimeout(() => leave.abort(), turn);
      await asking.then((response) => response.arrayBuffer()).catch(() => undefined);
    });
    await Promise.all(asked);
  };
  await round();
  const before = open();
  for (let turn = 0; turn < 5; turn++) await round();
  await expect.poll(open, { timeout: 5000 }).toBeLessThanOrEqual(before + 1);
});

test('a fault is answered without stack or path, logged on one line, and ends nothing', async () => {
  await writeFile(join(server.dataFolder, 'exports', id, 'result', 'records.f32'), 'torn\r\n');
  const response = await fetch(`${server.base}/api/v1/exports/${id}/circuits/M01/series`);
  const body = await response.text();
  expect(response.status).toBe(500);
  expect(Object.keys(JSON.parse(body).error)).toEqual(['code', 'message', 'remedy', 'reference']);
  expect(body).not.toMatch(/\bat |\.ts|\/tmp|RangeError|node_modules/);
  const { reference } = JSON.parse(body).error;
  const lines = server.log.filter((line) => line.includes(reference));
  expect(lines).toHaveLength(1);
  expect(lines[0]).not.toMatch(/[\r\n]/);
  expect((await fetch(`${server.base}/health`)).status).toBe(200);
});

test('a result whose file is gone is a fault of this answer alone', async () => {
  for (const [file, path] of [
    ['findings.json', 'findings'],
    ['report.html', 'report.html'],
  ] as const) {
    await rm(join(server.dataFolder, 'exports', id, 'result', file));
    const response = await fetch(`${server.base}/api/v1/exports/${id}/${path}`);
    expect(response.status).toBe(500);
    expect(response.headers.get('content-type')).toBe('application/json; charset=utf-8');
    expect(response.headers.get('content-disposition')).toBeNull();
  }
  expect((await fetch(`${server.base}/health`)).status).toBe(200);
});

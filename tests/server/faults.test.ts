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

test('a fault is answered without stack or path, logged on one line, and ends nothing', async () => {
  const log = join(server.dataFolder, 'exports', id, 'result', 'log.json');
  await rm(log);
  await writeFile(log, '{broken\r\n');
  const response = await fetch(`${server.base}/api/v1/exports/${id}/records`);
  const body = await response.text();
  expect(response.status).toBe(500);
  expect(Object.keys(JSON.parse(body).error)).toEqual(['code', 'message', 'remedy', 'reference']);
  expect(body).not.toMatch(/\bat |\.ts|\/tmp|SyntaxError|node_modules/);
  const { reference } = JSON.parse(body).error;
  const lines = server.log.filter((line) => line.includes(reference));
  expect(lines).toHaveLength(1);
  expect(lines[0]).not.toMatch(/[\r\n]/);
  expect((await fetch(`${server.base}/health`)).status).toBe(200);
});

test('a result whose file is gone is a fault of this answer alone', async () => {
  await rm(join(server.dataFolder, 'exports', id, 'result', 'findings.json'));
  const outcome = await fetch(`${server.base}/api/v1/exports/${id}/findings`).then(
    (response) => response.status,
    () => 'cut off',
  );
  expect(outcome).toBe(500);
  expect((await fetch(`${server.base}/health`)).status).toBe(200);
});

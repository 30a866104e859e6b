import { readFileSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { CircuitBackground } from '../../src/reporting/background/circuit-background.ts';
import { analysedFixture } from '../support/fixture-site.ts';
import { sampleParts } from '../support/sample-export.ts';
import {
  storeAnalysed,
  storeState,
  type TestServer,
  temporaryFolder,
  testServer,
} from '../support/test-server.ts';
import { codeOf, eventsOf, upload } from '../support/upload.ts';

const correctedSite = readFileSync(
  fileURLToPath(new URL('../../sample-logs/iced-end/site.yaml', import.meta.url)),
  'utf8',
);

let server: TestServer;
let stored = '';
let earlier = '';
let sent = '';

beforeAll(async () => {
  const dataFolder = await temporaryFolder();
  stored = await storeAnalysed(dataFolder, analysedFixture());
  earlier = await storeAnalysed(dataFolder, analysedFixture());
  await rm(join(dataFolder, 'exports', earlier, 'result', 'background.json'));
  await rm(join(dataFolder, 'exports', earlier, 'result', 'visit.html'));
  await storeState(dataFolder, { state: 'failed' });
  server = await testServer({ dataFolder });
  const response = await upload(server.base, sampleParts('iced-end', { site: false }));
  sent = ((await response.json()) as { id: string }).id;
  expect((await eventsOf(server.base, sent)).at(-1)!.name).toBe('ready');
});
afterAll(() => server.close());

const of = (id: string, path: string): Promise<Response> =>
  fetch(`${server.base}/api/v1/exports/${id}/${path}`);
const sendSite = (id: string, body: string): Promise<Response> =>
  fetch(`${server.base}/api/v1/exports/${id}/site`, {
    method: 'POST',
    body,
    headers: { 'Content-Type': 'application/yaml' },
  });

describe('Beside the findings', () => {
  test('a circuit says what is normal, what alarms would have said and how long its air was above', async () => {
    const { normal, alarm, exposure } = (await (
      await of(stored, 'circuits/M01/background')
    ).json()) as CircuitBackground;
    const [probe] = normal.points;
    expect(normal.note).toMatch(/^Learnt from \d+ quiet days/);
    expect(probe!.unit).toBe('°F');
    for (const { low, p10, p90, high, rests } of probe!.ranges) {
      expect(low).toBeLessThanOrEqual(p10);
      expect(p10).toBeLessThanOrEqual(p90);
      expect(p90).toBeLessThanOrEqual(high);
      expect(rests).toMatch(/from \d+ quiet days\)$/);
    }
    expect(alarm.alarms.map(({ title }) => title).join('\n')).toMatch(
      /M01 air A alone, above .* for 60 minutes/,
    );
    expect(alarm.findings[0]!.title).toContain('M01 air A');
    expect(exposure!.rows.map((row) => row.probe)).toContain('M01 air A');
    expect(exposure!.note).toContain('the local code decide');
  });

  test('what an earlier rimelog did not keep is refused with a way out; no other circuit answers', async () => {
    for (const path of ['circuits/M01/background', 'visit.html']) {
      const response = await of(earlier, path);
      expect([response.status, await codeOf(response)]).toEqual([409, 'made-earlier']);
    }
    expect((await of(stored, 'circuits/nowhere/background')).status).toBe(404);
  });
});

describe('Pages to print', () => {
  test('the visit sheet opens with its own style sheet allowed, and nothing else', async () => {
    const response = await of(stored, 'visit.html');
    expect(response.headers.get('content-type')).toBe('text/html; charset=utf-8');
    expect(response.headers.get('content-disposition')).toBeNull();
    expect(response.headers.get('content-security-policy')).toMatch(
      /^default-src 'none'; style-src 'sha256-[\w+/=]+'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'$/,
    );
    expect(await response.text()).toContain('Before driving out');
  });
});

describe('A corrected site file', () => {
  test('analyses the stored upload under a new id and leaves what was found before', async () => {
    const before = await (await of(sent, 'findings')).text();
    const response = await sendSite(sent, correctedSite);
    expect(response.status).toBe(202);
    const { id } = (await response.json()) as { id: string };
    expect(id).not.toBe(sent);
    expect((await eventsOf(server.base, id)).at(-1)!.name).toBe('ready');
    const entry = (await (await fetch(`${server.base}/api/v1/exports/${id}`)).json()) as {
      siteFile: string;
      summary: { guessedSite: boolean };
    };
    expect(entry).toMatchObject({ siteFile: 'site.yaml', summary: { guessedSite: false } });
    expect(await (await of(sent, 'findings')).text()).toBe(before);
    await fetch(`${server.base}/api/v1/exports/${sent}`, { method: 'DELETE' });
    const again = await sendSite(id, correctedSite);
    const { id: third } = (await again.json()) as { id: string };
    expect((await eventsOf(server.base, third)).at(-1)!.name).toBe('ready');
  });

  test('is read before anything is stored', async () => {
    const list = async () => (await (await fetch(`${server.base}/api/v1/exports`)).text()).length;
    const count = await list();
    const wrong = await sendSite(stored, 'circuits: [');
    expect([wrong.status, await codeOf(wrong)]).toEqual([422, 'bad-site-file']);
    const large = await sendSite(stored, '#'.repeat(1_100_000));
    expect([large.status, await codeOf(large)]).toEqual([413, 'too-large']);
    const foreign = await fetch(`${server.base}/api/v1/exports/${stored}/site`, {
      method: 'POST',
      body: correctedSite,
      headers: { Origin: 'http://elsewhere.example' },
    });
    expect(foreign.status).toBe(403);
    expect(await list()).toBe(count);
  });
});

import { existsSync } from 'node:fs';
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterEach, expect, test } from 'vitest';
import { z } from 'zod';
import { findingsSchema } from '../../src/reporting/findings-schema.ts';
import { ExportStore } from '../../src/store/export-store.ts';
import { sampleParts } from '../support/sample-export.ts';
import { storeState, type TestServer, temporaryFolder, testServer } from '../support/test-server.ts';
import { codeOf, eventsOf, upload } from '../support/upload.ts';

let server: TestServer;
afterEach(() => server.close());

async function accepted(response: Response): Promise<string> {
  expect(response.status).toBe(202);
  const { id } = (await response.json()) as { id: string };
  expect(response.headers.get('location')).toBe(`/api/v1/exports/${id}`);
  return id;
}

/** An answer as loose JSON: its shape is the OpenAPI test's. */
// biome-ignore lint/suspicious/noExplicitAny: each test looks at its own corner of it
const get = async (path: string): Promise<any> => (await fetch(server.base + path)).json();

test('an upload becomes the findings document, and the server answers all the while', async () => {
  server = await testServer();
  const id = await accepted(await upload(server.base, sampleParts('iced-end')));
  const early = await fetch(`${server.base}/api/v1/exports/${id}/findings`);
  expect([early.status, await codeOf(early)]).toEqual([409, 'not-ready']);

  let answers = 0;
  let done = false;
  const events = eventsOf(server.base, id).finally(() => {
    done = true;
  });
  while (!done) {
    expect((await fetch(`${server.base}/health`)).status).toBe(200);
    answers++;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  const names = (await events).map(({ name }) => name);
  expect(new Set(names.slice(0, -1))).toEqual(new Set(['progress']));
  expect(names.at(-1)).toBe('ready');
  // A server that analysed in its own thread would give one answer before the last event, or two.
  expect(answers).toBeGreaterThan(5);

  const findings = await get(`/api/v1/exports/${id}/findings`);
  const validate = new Ajv2020({ strict: false }).compile(z.toJSONSchema(findingsSchema));
  expect(validate(findings), JSON.stringify(validate.errors)).toBe(true);
  expect(findings.findings[0]).toMatchObject({ circuit: 'M01', kind: 'upward-drift' });

  const series = await get(`/api/v1/exports/${id}/circuits/M01/series?pixels=300`);
  const { span } = series;
  const zoom = `from=${new Date(span.from).toISOString()}&to=${new Date(span.from + 86_400_000).toISOString()}`;
  const day = await get(`/api/v1/exports/${id}/circuits/M01/series?pixels=300&${zoom}`);
  expect(series.probes[0].line.values.length).toBeLessThanOrEqual(600);
  expect(day.span).toEqual({ from: span.from, to: span.from + 86_400_000 });
  expect(day.probes[0].line.times.at(-1)).toBeLessThanOrEqual(span.from + 86_400_000);
  const peak = (line: { values: (number | null)[] }): number =>
    Math.max(...line.values.map((value) => value ?? -99));
  const record = await get(
    `/api/v1/exports/${id}/records/${encodeURIComponent(series.probes[0].point)}?pixels=4000`,
  );
  expect(peak(series.probes[0].line)).toBe(peak(record.line));
});

test('without a site file the guess is there to be saved; a file that is no export says what it is', async () => {
  server = await testServer();
  const id = await accepted(await upload(server.base, sampleParts('iced-end', { site: false })));
  expect((await eventsOf(server.base, id)).at(-1)!.name).toBe('ready');
  const site = await fetch(`${server.base}/api/v1/exports/${id}/site-file`);
  expect(site.headers.get('content-disposition')).toBe('attachment; filename=site.yaml');
  expect(await site.text()).toContain('circuits:');

  const kinds = {
    'photo.csv': '\u0089PNG\r\n\u001a\n',
    'page.csv': '<!doctype html><title>x</title>',
    'empty.csv': '',
  };
  for (const [name, content] of Object.entries(kinds)) {
    const bytes = new Uint8Array(Buffer.from(content, 'latin1'));
    const wrong = await accepted(
      await upload(server.base, [{ field: 'export', name, content: bytes, type: 'text/csv' }]),
    );
    const last = (await eventsOf(server.base, wrong)).at(-1)!;
    expect(last.name).toBe('failed');
    expect((last.data as { message: string }).message).toContain(name);
    expect(JSON.stringify(last.data)).not.toMatch(/upload-001|\/tmp|\.ts\b/);
    expect((await fetch(`${server.base}/api/v1/exports/${wrong}/report`)).status).toBe(422);
  }
});

test('deleting an export stops its analysis and leaves nothing', async () => {
  server = await testServer();
  const id = await accepted(await upload(server.base, sampleParts('iced-end')));
  const deleted = await fetch(`${server.base}/api/v1/exports/${id}`, { method: 'DELETE' });
  expect(deleted.status).toBe(204);
  expect(existsSync(join(server.dataFolder, 'exports', id))).toBe(false);
  expect((await fetch(`${server.base}/api/v1/exports/${id}`)).status).toBe(404);
  const next = await accepted(await upload(server.base, [{ field: 'export', name: 'a.csv', content: '' }]));
  expect((await eventsOf(server.base, next)).at(-1)!.name).toBe('failed');
  expect(existsSync(join(server.dataFolder, 'exports', id))).toBe(false);
});

test('an analysis that a stop interrupted is taken up again, once', async () => {
  const dataFolder = await temporaryFolder();
  const again = await storeState(dataFolder, { state: 'analysing', attempts: 1 });
  const never = await storeState(dataFolder, { state: 'analysing', attempts: 2 });
  await writeFile(join(dataFolder, 'exports', again, 'upload-001.csv'), '');
  await mkdir(join(dataFolder, 'incoming', 'half'), { recursive: true });
  await mkdir(join(dataFolder, 'exports', again, 'result.tmp'));
  server = await testServer({ dataFolder });
  expect(existsSync(join(dataFolder, 'incoming', 'half'))).toBe(false);
  expect(existsSync(join(dataFolder, 'exports', again, 'result.tmp'))).toBe(false);
  expect((await get(`/api/v1/exports/${never}`)).problem.code).toBe('interrupted');
  const last = (await eventsOf(server.base, again)).at(-1)!;
  expect([last.name, (last.data as { code: string }).code]).toEqual([
    'failed',
    expect.not.stringMatching('interrupted'),
  ]);
});

test('an analysis that takes too long is ended with the limit named', async () => {
  server = await testServer({ limits: { analysisMs: 1 } });
  const id = await accepted(await upload(server.base, sampleParts('iced-end')));
  const last = (await eventsOf(server.base, id)).at(-1)!;
  expect(last).toMatchObject({ name: 'failed', data: { code: 'analysis-too-long' } });
});

test('two servers do not share a data folder', async () => {
  server = await testServer();
  await expect(testServer({ dataFolder: server.dataFolder })).rejects.toThrow(
    /Another rimelog server .* --data/,
  );
  await expect(ExportStore.open(server.dataFolder)).rejects.toMatchObject({ code: 'folder-in-use' });
});

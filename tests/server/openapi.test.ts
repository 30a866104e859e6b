import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openApiDocument } from '../../server/openapi/document.ts';
import { problems } from '../../server/problem.ts';
import { expectDescribed, written } from '../support/described.ts';
import { analysedFixture } from '../support/fixture-site.ts';
import {
  storeAnalysed,
  storeState,
  type TestServer,
  temporaryFolder,
  testServer,
} from '../support/test-server.ts';

/** What is made when it is asked for needs the upload itself, which this export has not: here only its refusals. */
const refusedHere: readonly (readonly [RegExp, number])[] = [
  [/site-file|months/, 404],
  [/repair|comparisons/, 400],
];

let server: TestServer;
let ready = '';
let failed = '';
let point = '';

beforeAll(async () => {
  const dataFolder = await temporaryFolder();
  const analysed = analysedFixture();
  point = analysed.log.circuits[0]!.probes[0]!.point;
  ready = await storeAnalysed(dataFolder, analysed);
  const problem = { code: 'not-text', message: 'photo.csv is a PNG image; choose the export.', remedy: '' };
  failed = await storeState(dataFolder, { state: 'failed', problem });
  server = await testServer({ dataFolder });
});
afterAll(() => server.close());

const paths = Object.entries(written.paths).flatMap(([path, methods]) =>
  Object.keys(methods).map((method) => ({ path, method })),
);

describe('OpenAPI', () => {
  test('the written document is the one that the server gives (npx tsx server/openapi/write.ts writes it anew)', async () => {
    expect(written).toEqual(JSON.parse(JSON.stringify(openApiDocument())));
    expect(await (await fetch(`${server.base}/api/v1/openapi.json`)).json()).toEqual(written);
  });

  test.each(paths.filter(({ method }) => method === 'get'))(
    '$path answers as described',
    async ({ path }) => {
      const address = path
        .replace('{id}', ready)
        .replace('{circuit}', 'M01')
        .replace('{group}', 'S1')
        .replace('{month}', '2026-13')
        .replace('{against}', ready)
        .replace('{point}', encodeURIComponent(point));
      const response = await fetch(server.base + address);
      const [, refused] = refusedHere.find(([pattern]) => pattern.test(path)) ?? [];
      expect(response.status).toBe(refused ?? 200);
      await expectDescribed(response, path);
    },
  );

  test.each(paths.filter(({ path }) => path.includes('{id}')))(
    '$method $path refuses an unknown id as described',
    async ({ path, method }) => {
      const address = path
        .replace('{id}', '0'.repeat(16))
        .replace('{circuit}', 'M01')
        .replace('{group}', 'S1')
        .replace('{point}', 'x');
      const response = await fetch(server.base + address, { method: method.toUpperCase() });
      expect(response.status).toBe(404);
      await expectDescribed(response, path, method);
    },
  );

  test('refusals of every kind of address are described', async () => {
    const circuit = '/api/v1/exports/{id}/circuits/{circuit}/series';
    const at = (id: string, name: string, query = ''): Promise<Response> =>
      fetch(`${server.base}${circuit.replace('{id}', id).replace('{circuit}', name)}${query}`);
    for (const [response, status] of [
      [await at(ready, 'nowhere'), 404],
      [await at(failed, 'M01'), 422],
      [await at(ready, 'M01', '?pixels=many'), 400],
    ] as const) {
      expect(response.status).toBe(status);
      await expectDescribed(response, circuit);
    }
    const put = await fetch(`${server.base}/api/v1/exports`, { method: 'PUT' });
    expect(put.status).toBe(405);
    expect(put.headers.get('allow')).toBe('GET, POST, HEAD');
  });

  test('every refusal that the server knows is described in docs/reference/http.md, and no other', () => {
    const page = readFileSync(new URL('../../docs/reference/http.md', import.meta.url), 'utf8');
    const listed = [...page.matchAll(/^\| `([a-z-]+)` *\| (\d{3}) *\|/gm)].map(([, code, status]) => [
      code,
      Number(status),
    ]);
    expect(listed).toEqual(Object.entries(problems).map(([code, [status]]) => [code, status]));
  });
});

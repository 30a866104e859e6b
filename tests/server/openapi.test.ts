import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openApiDocument } from '../../server/openapi/document.ts';
import { problems } from '../../server/problem.ts';
import { analysedFixture } from '../support/fixture-site.ts';
import {
  storeAnalysed,
  storeState,
  type TestServer,
  temporaryFolder,
  testServer,
} from '../support/test-server.ts';

type Operation = { responses: Record<string, { content?: Record<string, { schema: object }> }> };

const file = new URL('../../docs/reference/openapi.json', import.meta.url);
const written = JSON.parse(readFileSync(file, 'utf8')) as ReturnType<typeof openApiDocument>;
const ajv = new Ajv2020({ strict: false, allErrors: true, validateFormats: false });
ajv.addSchema(written, 'rimelog');

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

function operation(path: string, method: string): Operation {
  const found = (written.paths as Record<string, Record<string, unknown>>)[path]?.[method];
  if (found === undefined) throw new Error(`${method} ${path} is not described`);
  return found as Operation;
}

/** The answer holds to what the written document says of this path, method and status. */
async function expectDescribed(response: Response, path: string, method = 'get'): Promise<void> {
  const described = operation(path, method).responses[String(response.status)];
  expect(described, `${method} ${path} answered ${response.status}, which is not described`).toBeDefined();
  const [type, media] = Object.entries(described!.content ?? {})[0] ?? [];
  if (type === undefined) {
    expect(await response.text()).toBe('');
    return;
  }
  expect(response.headers.get('content-type')).toMatch(new RegExp(`^${type}\\b.*charset=utf-8`));
  if (type !== 'application/json') return;
  const { $ref } = media!.schema as { $ref?: string };
  const schema = $ref === undefined ? media!.schema : { $ref: `rimelog${$ref}` };
  const validate = ajv.compile(schema);
  expect(validate(await response.json()), JSON.stringify(validate.errors?.slice(0, 3))).toBe(true);
}

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
        .replace('{point}', encodeURIComponent(point));
      const response = await fetch(server.base + address);
      expect(response.status).toBe(/site-file|months/.test(path) ? 404 : 200);
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

import { request } from 'node:http';
import { connect } from 'node:net';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { hostNameOf } from '../../server/guards/host.ts';
import { oneLine } from '../../server/one-line.ts';
import { analysedFixture } from '../support/fixture-site.ts';
import { storeAnalysed, type TestServer, temporaryFolder, testServer } from '../support/test-server.ts';
import { codeOf } from '../support/upload.ts';

let server: TestServer;
let ready = '';

beforeAll(async () => {
  const dataFolder = await temporaryFolder();
  ready = await storeAnalysed(dataFolder, analysedFixture());
  server = await testServer({
    dataFolder,
    allowedHosts: ['rimelog.example'],
    limits: { headersMs: 500, requestMs: 1000 },
  });
});
afterAll(() => server.close());

interface Answer {
  readonly status: number;
  readonly headers: Record<string, string | string[] | undefined>;
  readonly body: string;
}

/** Like fetch, but with any header and any method. */
function ask(
  path: string,
  options: { method?: string; headers?: Record<string, string> } = {},
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const sending = request(server.base + path, options, (response) => {
      let body = '';
      response.on('data', (chunk) => (body += chunk));
      response.on('end', () => resolve({ status: response.statusCode!, headers: response.headers, body }));
    });
    sending.on('error', reject);
    sending.end();
  });
}

/** Bytes straight onto the socket; resolves with all that came back when the server closes. */
function raw(text: string): Promise<string> {
  return new Promise((resolve) => {
    const socket = connect(Number(new URL(server.base).port), '127.0.0.1');
    let answer = '';
    socket.on('data', (chunk) => (answer += chunk));
    socket.on('close', () => resolve(answer));
    socket.on('error', () => resolve(answer));
    socket.write(text);
  });
}

describe('The name that was asked for', () => {
  test.each([
    'localhost',
    'LOCALHOST:4180',
    '127.0.0.1',
    '[::1]:80',
    '192.168.1.20:4180',
    'rimelog.example',
    'a.localhost',
  ])('%s passes', async (host) => {
    expect((await ask('/health', { headers: { Host: host } })).status).toBe(200);
  });

  test.each(['evil.example', '127.0.0.1.evil.example', 'rimelog.example.evil', 'localhost@evil', ' '])(
    '%j is refused with the setting to change',
    async (host) => {
      const { status, body } = await ask('/health', { headers: { Host: host } });
      expect(status).toBe(403);
      expect(JSON.parse(body).error).toMatchObject({ code: 'foreign-host' });
      expect(JSON.parse(body).error.remedy).toContain('RIMELOG_ALLOWED_HOSTS');
    },
  );

  test('a Host header is read without guessing', () => {
    expect(hostNameOf('A.Example.:80')).toBe('a.example');
    expect(hostNameOf('[::1]:8')).toBe('[::1]');
    expect(hostNameOf('a b')).toBeNull();
    expect(hostNameOf(undefined)).toBeNull();
  });
});

describe('Changes', () => {
  const remove = (headers: Record<string, string>): Promise<Answer> =>
    ask(`/api/v1/exports/${'0'.repeat(16)}`, { method: 'DELETE', headers });

  test.each([
    { 'Sec-Fetch-Site': 'cross-site' },
    { 'Sec-Fetch-Site': 'same-site' },
    { Origin: 'https://evil.example' },
    { Origin: 'null' },
  ])('from another page are refused: %j', async (headers) => {
    const { status, body } = await remove(headers);
    expect([status, JSON.parse(body).error.code]).toEqual([403, 'foreign-origin']);
  });

  test('from these pages and from programs are taken', async () => {
    for (const headers of [{ 'Sec-Fetch-Site': 'same-origin' }, { Origin: server.base }, {}] as Record<
      string,
      string
    >[]) {
      expect((await remove(headers)).status).toBe(404);
    }
  });

  test('GET and HEAD change nothing', async () => {
    const before = (await ask('/api/v1/exports')).body;
    for (const path of ['', '/events', '/findings', '/report', '/records']) {
      for (const method of ['GET', 'HEAD']) await ask(`/api/v1/exports/${ready}${path}`, { method });
    }
    expect((await ask('/api/v1/exports')).body).toBe(before);
  });

  test('no answer allows another origin', async () => {
    const { headers } = await ask('/api/v1/exports', { headers: { Origin: 'https://evil.example' } });
    expect(headers['access-control-allow-origin']).toBeUndefined();
  });
});

describe('Methods and queries', () => {
  test.each([
    ['TRACE', '/api/v1/exports', 405],
    ['PUT', '/health', 405],
    ['OPTIONS', '/api/v1/sites', 405],
    ['DELETE', '/', 405],
    ['PROPFIND', '/health', 501],
  ])('%s %s is answered with %i', async (method, path, status) => {
    expect((await ask(path, { method })).status).toBe(status);
  });

  test.each([
    '?pixels=1',
    '?pixels=1e3',
    '?pixels=300&pixels=400',
    '?pixels[a]=300',
    '?from=yesterday',
    '?to=2026-02-30',
    '?__proto__=1',
    '?from=2026-09-03T00:00:00Z&to=2026-09-02T00:00:00Z',
  ])('the query %s is refused, not a crash', async (query) => {
    const { status, body } = await ask(`/api/v1/exports/${ready}/circuits/M01/series${query}`);
    expect([status, JSON.parse(body).error.code]).toEqual([400, 'bad-query']);
  });

  test('addresses that are badly encoded or lead out of the pages find nothing', async () => {
    for (const path of [
      '/api/v1/exports/%E0%A4%A',
      '/api/v1/exports/..%2F..%2Fetc',
      '/assets/..%2f..%2fpackage.json',
      '/assets/%2e%2e/%2e%2e/package.json',
      '/package.json',
    ]) {
      const { status, body } = await ask(path);
      expect([400, 404]).toContain(status);
      expect(body).not.toContain('devDependencies');
    }
  });
});

describe('Answers', () => {
  test('all carry the safe headers, errors and pages alike', async () => {
    for (const path of [
      '/',
      '/health',
      '/nowhere',
      `/api/v1/exports/${ready}/findings`,
      '/api/v1/exports?x=1',
    ]) {
      const { headers } = await ask(path);
      const policy = String(headers['content-security-policy']);
      expect(policy).not.toMatch(/unsafe|https?:|\*/);
      for (const rule of [
        "default-src 'none'",
        "object-src 'none'",
        "base-uri 'none'",
        "frame-ancestors 'none'",
      ]) {
        expect(policy).toContain(rule);
      }
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['referrer-policy']).toBe('no-referrer');
      expect(headers['cache-control']).toBe('no-store');
      expect(headers['content-type']).toMatch(/charset=utf-8/i);
      expect(headers['x-powered-by']).toBeUndefined();
    }
  });

  test('a request that is not HTTP, or drips, is cut off', async () => {
    expect(await raw('NONSENSE\r\n\r\n')).toMatch(/^HTTP\/1.1 400/);
    expect(await raw('GET /health HTTP/1.1\r\nHost: localhost\r\nX: ')).toMatch(/^(HTTP\/1.1 408|$)/);
  }, 60_000);

  test('text for a log stays one line', () => {
    expect(oneLine('a\r\nforged line\u2028b\u001b[31m')).toBe(
      'a\\u000d\\u000aforged line\\u2028b\\u001b[31m',
    );
  });

  test('an unknown address is refused with a way on', async () => {
    const response = await fetch(`${server.base}/api/v1/nothing`);
    expect([response.status, await codeOf(response)]).toEqual([404, 'not-found']);
  });
});

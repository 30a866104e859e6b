import { readdir, readFile } from 'node:fs/promises';
import { request } from 'node:http';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterEach, describe, expect, test } from 'vitest';
import type { ServerLimits } from '../../server/settings.ts';
import { type TestServer, testServer } from '../support/test-server.ts';
import { codeOf, upload } from '../support/upload.ts';

let server: TestServer;
afterEach(() => server.close());

/** Small limits, and no threads: what is tested here happens before any analysis. */
async function start(limits: Partial<ServerLimits> = {}): Promise<string> {
  server = await testServer({ limits });
  return server.base;
}

const stored = (): Promise<string[]> => readdir(join(server.dataFolder, 'exports'));
const incoming = (): Promise<string[]> => readdir(join(server.dataFolder, 'incoming'));
const text = (bytes: number): string => 'x'.repeat(bytes);

async function settled(check: () => Promise<boolean>): Promise<boolean> {
  for (let attempt = 0; attempt < 100; attempt++) {
    if (await check()) return true;
    await new Promise((resolve) => setTimeout(resolve, 30));
  }
  return false;
}

describe('Limits of an upload', () => {
  test('a file at the limit is taken, one byte more is refused by name, and nothing stays', async () => {
    const base = await start({ fileBytes: 1000 });
    expect((await upload(base, [{ field: 'export', name: 'a.csv', content: text(1000) }])).status).toBe(202);
    const refused = await upload(base, [{ field: 'export', name: 'a.csv', content: text(1001) }]);
    expect(refused.status).toBe(413);
    expect(await refused.json()).toMatchObject({
      error: {
        code: 'too-large',
        message: 'The file "a.csv" is larger than 1000 bytes, the most this server takes.',
      },
    });
    expect(await stored()).toHaveLength(1);
    expect(await incoming()).toEqual([]);
  });

  test('a body over its limit is refused whether or not its length was said', async () => {
    const base = await start({ bodyBytes: 5000 });
    const said = await upload(base, [{ field: 'export', name: 'a.csv', content: text(6000) }]);
    expect([said.status, await codeOf(said)]).toEqual([413, 'too-large']);

    const chunked = await new Promise<number>((resolve, reject) => {
      const sending = request(`${base}/api/v1/exports`, {
        method: 'POST',
        headers: { 'Content-Type': 'multipart/form-data; boundary=b', 'Transfer-Encoding': 'chunked' },
      });
      sending.on('response', (response) => resolve(response.statusCode!));
      sending.on('error', reject);
      sending.write('--b\r\nContent-Disposition: form-data; name="export"; filename="a.csv"\r\n\r\n');
      for (let i = 0; i < 10; i++) sending.write(text(1000));
      sending.end('\r\n--b--\r\n');
    });
    expect(chunked).toBe(413);
    expect(await stored()).toEqual([]);
    expect(await incoming()).toEqual([]);
  });

  test('memory stays flat while a large body is refused', async () => {
    const base = await start({ bodyBytes: 1_000_000 });
    const before = process.memoryUsage().rss;
    const refused = await new Promise<number>((resolve) => {
      const sending = request(`${base}/api/v1/exports`, {
        method: 'POST',
        headers: { 'Content-Type': 'multipart/form-data; boundary=b' },
      });
      sending.on('response', (response) => {
        response.resume();
        resolve(response.statusCode!);
      });
      sending.on('error', () => undefined);
      sending.write('--b\r\nContent-Disposition: form-data; name="export"; filename="a.csv"\r\n\r\n');
      const chunk = Buffer.alloc(1_000_000, 'x');
      let left = 200;
      const more = (): void => {
        while (left-- > 0) if (!sending.write(chunk)) return void sending.once('drain', more);
        sending.end();
      };
      more();
    });
    expect(refused).toBe(413);
    expect(process.memoryUsage().rss - before).toBeLessThan(80_000_000);
  });

  test('more files than are taken, a large site file and unknown fields are refused', async () => {
    const base = await start({ files: 2, siteFileBytes: 100 });
    const file = (field: string, size = 10) => ({ field, name: 'a.csv', content: text(size) });
    const cases = [
      [[file('export'), file('export'), file('export')], 413, 'too-many-files'],
      [[file('export'), file('site', 101)], 413, 'too-large'],
      [[file('export'), file('site'), file('site')], 400, 'unknown-field'],
      [[file('export'), file('__proto__')], 400, 'unknown-field'],
      [[file('site')], 400, 'no-export'],
    ] as const;
    for (const [parts, status, code] of cases) {
      const response = await upload(base, parts);
      expect([response.status, await codeOf(response)]).toEqual([status, code]);
    }
    expect(await stored()).toEqual([]);
    expect(await incoming()).toEqual([]);
  });

  test('the number of exports kept is limited', async () => {
    const base = await start({ storedExports: 1 });
    expect((await upload(base, [{ field: 'export', name: 'a.csv', content: 'a' }])).status).toBe(202);
    const refused = await upload(base, [{ field: 'export', name: 'a.csv', content: 'a' }]);
    expect([refused.status, await codeOf(refused)]).toEqual([507, 'storage-quota']);
  });

  test('with no room for another analysis the answer is 503 with Retry-After', async () => {
    const base = await start({ analysesAtOnce: 1, analysesWaiting: 0 });
    const one = [{ field: 'export', name: 'a.csv', content: 'time,a\n2026-09-01T00:00:00Z,1\n' }];
    const answers = await Promise.all([upload(base, one), upload(base, one), upload(base, one)]);
    const refused = answers.filter(({ status }) => status === 503);
    expect(answers.filter(({ status }) => status === 202)).toHaveLength(1);
    expect(refused).toHaveLength(2);
    expect(refused[0]!.headers.get('retry-after')).toBe('30');
    expect(await codeOf(refused[0]!)).toBe('busy');
  });
});

describe('The form of an upload', () => {
  test.each([
    ['text/plain', 415, 'not-multipart'],
    ['application/json', 415, 'not-multipart'],
    ['multipart/form-data', 415, 'not-multipart'],
    ['multipart/form-data; charset=x', 400, 'bad-form'],
  ])('a body of type %s changes nothing', async (type, status, code) => {
    const base = await start();
    const response = await fetch(`${base}/api/v1/exports`, {
      method: 'POST',
      body: 'export=a',
      headers: { 'Content-Type': type },
    });
    expect([response.status, await codeOf(response)]).toEqual([status, code]);
    expect(await stored()).toEqual([]);
  });

  test('a body that is compressed as a whole is refused, so that no limit can be passed by unpacking', async () => {
    const base = await start();
    const response = await fetch(`${base}/api/v1/exports`, {
      method: 'POST',
      body: new Uint8Array(gzipSync(text(100_000))),
      headers: { 'Content-Type': 'multipart/form-data; boundary=b', 'Content-Encoding': 'gzip' },
    });
    expect([response.status, await codeOf(response)]).toEqual([415, 'encoded-body']);
  });

  test('a form that breaks off is refused', async () => {
    const base = await start();
    const response = await fetch(`${base}/api/v1/exports`, {
      method: 'POST',
      body: '--b\r\nContent-Disposition: form-data; name="export"; filename="a.csv"\r\n\r\nabc',
      headers: { 'Content-Type': 'multipart/form-data; boundary=b' },
    });
    expect([response.status, await codeOf(response)]).toEqual([400, 'bad-form']);
    expect(await incoming()).toEqual([]);
  });

  test('an upload that the client aborts leaves no file', async () => {
    const base = await start();
    const sending = request(`${base}/api/v1/exports`, {
      method: 'POST',
      headers: { 'Content-Type': 'multipart/form-data; boundary=b' },
    });
    sending.on('error', () => undefined);
    sending.write('--b\r\nContent-Disposition: form-data; name="export"; filename="a.csv"\r\n\r\n');
    sending.write(text(100_000));
    expect(await settled(async () => (await incoming()).length === 1)).toBe(true);
    sending.destroy();
    expect(await settled(async () => (await incoming()).length === 0)).toBe(true);
    expect(await stored()).toEqual([]);
  });
});

describe('Names of an upload', () => {
  test.each([
    '../../x.csv',
    '..\\..\\x.csv',
    `${'n'.repeat(300)}.csv`,
    '<script>.csv',
    '/etc/passwd',
    '.',
    'CON',
  ])('a file called %j changes no path', async (name) => {
    const base = await start();
    const response = await upload(base, [{ field: 'export', name, content: 'abc', type: 'text/html' }]);
    expect(response.status).toBe(202);
    const { id } = (await response.json()) as { id: string };
    expect(await readdir(server.dataFolder)).toEqual(['exports', 'incoming', 'server.lock']);
    const names = await readdir(join(server.dataFolder, 'exports', id));
    expect(names.filter((each) => each.startsWith('upload'))).toEqual(['upload-001.csv']);
    expect(await readFile(join(server.dataFolder, 'exports', id, 'upload-001.csv'), 'utf8')).toBe('abc');
    const entry = (await (await fetch(`${base}/api/v1/exports/${id}`)).json()) as {
      files: { name: string }[];
    };
    expect(entry.files[0]!.name).not.toMatch(/[\p{Cc}/\\]/u);
    expect(entry.files[0]!.name.length).toBeLessThanOrEqual(120);
  });
});

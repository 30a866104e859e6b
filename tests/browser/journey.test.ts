import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { builtPages } from '../support/built-pages.ts';
import { launchChromium } from '../support/chromium.ts';
import { type TestServer, testServer } from '../support/test-server.ts';
import { plotDrawn, type WatchedPage, watchedPage } from '../support/watched-page.ts';

const sample = fileURLToPath(new URL('../../sample-logs/iced-end/', import.meta.url));

const exportsIn = (folder: string): string[] =>
  readdirSync(folder)
    .filter((name) => /\.csv(\.gz)?$/.test(name))
    .map((name) => folder + name);

let browser: Browser;
let server: TestServer;
let watched: WatchedPage;

beforeAll(async () => {
  server = await testServer({ webFolder: await builtPages() });
  browser = await launchChromium();
});
afterAll(async () => {
  await browser.close();
  await server.close();
});
beforeEach(async () => {
  watched = await watchedPage(browser, server.base, { viewport: { width: 1600, height: 1000 } });
});
afterEach(async () => {
  expect(watched.outside).toEqual([]);
  expect(watched.complaints).toEqual([]);
  await watched.close();
});

test('an export goes in, the planted fault comes out first, and its plot is asked again on zoom', async () => {
  const { page, asked } = watched;
  await page.goto('/');
  await page.getByLabel('Drop exports here').setInputFiles([...exportsIn(sample), `${sample}site.yaml`]);
  await page.getByText('site.yaml as the site file').waitFor();
  await page.getByRole('button', { name: 'Analyse' }).click();
  await page.getByRole('heading', { name: 'Worst first' }).waitFor({ timeout: 60_000 });
  const first = page.locator('.place').first();
  expect(await first.locator('h3').textContent()).toMatch(/^M01/);
  expect(await first.locator('.badge').first().textContent()).toMatch(/^[▲◆] (Act|Watch)$/);
  for (const label of ['it is', 'since', 'how sure'])
    expect(await first.locator('dt').allTextContents()).toContain(label);
  expect(await page.locator('body').textContent()).toContain('not food temperatures');
  expect(asked.filter((path) => path.includes('plotly'))).toEqual([]);

  await first.locator('h3 a').click();
  await plotDrawn(page);
  const series = (): string[] => asked.filter((path) => path.includes('/series?'));
  expect(series()).toHaveLength(1);
  expect(series()[0]).not.toContain('from=');
  expect(await page.locator('.plot').textContent()).toMatch(/Act since|Watch since/);

  await page.getByRole('button', { name: 'Zoom in' }).click();
  await page.waitForURL(/from=.*to=/);
  await plotDrawn(page);
  expect(series().at(-1)).toMatch(/from=.*to=/);

  const box = (await page.locator('.plot .nsewdrag').first().boundingBox())!;
  await page.mouse.move(box.x + box.width * 0.4, box.y + 100);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width * 0.6, box.y + 140, { steps: 8 });
  await page.mouse.up();
  await expect.poll(() => series().length).toBe(3);
  await plotDrawn(page);

  const address = page.url();
  const text = await page.locator('.span-text').textContent();
  await page.goto('about:blank');
  await page.goto(address);
  await plotDrawn(page);
  expect(await page.locator('.span-text').textContent()).toBe(text);

  await page.getByRole('button', { name: 'whole span' }).click();
  await plotDrawn(page);
  expect(page.url()).not.toContain('from=');
});

test('a wrong file ends in one sentence that says what it is and what to do', async () => {
  const { page } = watched;
  await page.goto('/');
  const png = Buffer.from('89504e470d0a1a0a0000000d49484452', 'hex');
  await page
    .getByLabel('Drop exports here')
    .setInputFiles({ name: 'photo.csv', mimeType: 'text/csv', buffer: png });
  await page.getByRole('button', { name: 'Analyse' }).click();
  const alert = page.getByRole('alert');
  await alert.waitFor({ timeout: 60_000 });
  const sentence = (await alert.textContent())!;
  expect(sentence).toContain('photo.csv');
  expect(sentence).toContain('PNG');
  expect(sentence).not.toMatch(/\bat |\/tmp|Error|undefined/);
  await page.getByRole('link', { name: 'Choose another file' }).click();
  await page.getByRole('button', { name: 'Delete photo.csv' }).click();
  await page.getByText('Really delete it?').click();
  await page.getByRole('button', { name: 'Delete photo.csv' }).waitFor({ state: 'detached' });
});

test('files are taken where they are dropped', async () => {
  const { page } = watched;
  await page.goto('/');
  const content = readFileSync(`${sample}site.yaml`, 'utf8');
  const data = await page.evaluateHandle((yaml) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File(['time,a\n'], 'dropped.csv'));
    transfer.items.add(new File([yaml], 'site.yaml'));
    return transfer;
  }, content);
  await page.dispatchEvent('.drop', 'drop', { dataTransfer: data });
  await page.getByText('dropped.csv').waitFor();
  await page.getByText('site.yaml as the site file').waitFor();
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Analyse');
});

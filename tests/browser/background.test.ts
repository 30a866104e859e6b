import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { builtPages } from '../support/built-pages.ts';
import { launchChromium } from '../support/chromium.ts';
import { sampleParts } from '../support/sample-export.ts';
import { type TestServer, testServer } from '../support/test-server.ts';
import { eventsOf, upload } from '../support/upload.ts';
import { plotDrawn, scrollsSideways, type WatchedPage, watchedPage } from '../support/watched-page.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const siteFile = fileURLToPath(new URL('../../sample-logs/iced-end/site.yaml', import.meta.url));

let browser: Browser;
let server: TestServer;
let watched: WatchedPage;
let id = '';

beforeAll(async () => {
  server = await testServer({ webFolder: await builtPages() });
  const response = await upload(server.base, sampleParts('iced-end', { site: false }));
  id = ((await response.json()) as { id: string }).id;
  expect((await eventsOf(server.base, id)).at(-1)!.name).toBe('ready');
  browser = await launchChromium();
});
afterAll(async () => {
  await browser.close();
  await server.close();
});
beforeEach(async () => {
  watched = await watchedPage(browser, server.base, { viewport: { width: 1280, height: 900 } });
});
afterEach(async () => {
  expect(watched.outside).toEqual([]);
  expect(watched.complaints).toEqual([]);
  await watched.close();
});

test('a circuit answers in one line whether a reading is normal, and why the average hid its warm end', async () => {
  const { page } = watched;
  await page.goto(`/#/exports/${id}/circuits/M01`);
  await plotDrawn(page);
  const answer = page.locator('.answer');
  await page.getByLabel('Hours').selectOption('08–12 h');
  await page.getByLabel('Reading', { exact: true }).fill('45');
  expect(await answer.textContent()).toMatch(
    /^45 °F at M01 air A \(°F\) is unusual here, above its range: .* 08–12 h on a weekday, from \d+ quiet days\)\. Its 4 peers on S1: /,
  );
  await page.getByLabel('Reading', { exact: true }).fill('36,5');
  expect(await answer.textContent()).toContain('36,5 °F at M01 air A (°F) is usual here: ');
  await page.getByLabel('Reading', { exact: true }).fill('warm');
  expect(await answer.textContent()).toBe('Type the reading as a number.');
  expect(await page.locator('.hidden-why').textContent()).toMatch(/is all that the alarm saw\.$/);
  const text = await page.locator('.background').textContent();
  expect(text).toContain('a calibrated thermometer in the goods and the local code decide');
  expect(text).toMatch(/Never came in the \d+ days since the onset/);
});

test('its tables are cut neither on paper nor on a phone', async () => {
  const { page } = watched;
  await page.goto(`/#/exports/${id}/circuits/M01`);
  await plotDrawn(page);
  await page.setViewportSize({ width: 390, height: 844 });
  expect(await scrollsSideways(page)).toBe(false);
  // A4 less its margins, at 96 to the inch.
  await page.setViewportSize({ width: 688, height: 1000 });
  await page.emulateMedia({ media: 'print' });
  const widest = await page
    .locator('.background table')
    .evaluateAll((tables) => Math.max(...tables.map((table) => table.getBoundingClientRect().right)));
  expect(widest).toBeLessThanOrEqual(688);
  expect(await page.locator('.reading').isVisible()).toBe(false);
});

test('the visit sheet opens from the site page under its own policy, and axe finds nothing on it', async () => {
  const { page } = watched;
  await page.goto(`/#/exports/${id}`);
  const link = page.getByRole('link', { name: /^Visit sheet/ });
  const month = page.getByRole('link', { name: /^The month of September 2026/ });
  expect(await month.getAttribute('href')).toBe(`#/exports/${id}/months/2026-09`);
  await page.goto((await link.getAttribute('href'))!);
  expect(await page.locator('h1').evaluate((heading) => getComputedStyle(heading).fontFamily)).toContain(
    'serif',
  );
  await page.evaluate(axe);
  const violations = await page.evaluate(async () => {
    const { axe } = globalThis as unknown as { axe: typeof import('axe-core') };
    return (await axe.run(document)).violations.map((each) => each.id);
  });
  expect(violations).toEqual([]);
});

test('a corrected site file is analysed without the export being sent again; the list at home follows', async () => {
  const { page, asked } = watched;
  await page.goto(`/#/exports/${id}`);
  await page.getByLabel('A corrected site file').setInputFiles(siteFile);
  await page.getByRole('button', { name: 'Analyse again' }).click();
  await page.getByRole('heading', { name: 'Analysing' }).waitFor();
  await page.goto('/#/');
  await page
    .locator('.exports')
    .getByText(/being analysed|waiting/)
    .waitFor();
  await page.getByRole('link', { name: 'Quillan Row Foods' }).waitFor({ timeout: 60_000 });
  expect(await page.locator('.exports > li').count()).toBe(2);
  const lists = (): number => asked.filter((path) => path === '/api/v1/exports').length;
  const before = lists();
  await page.waitForTimeout(3000);
  expect(lists()).toBe(before);
});

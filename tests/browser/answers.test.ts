import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { builtPages } from '../support/built-pages.ts';
import { launchChromium } from '../support/chromium.ts';
import { sampleParts } from '../support/sample-export.ts';
import { type TestServer, testServer } from '../support/test-server.ts';
import { eventsOf, upload } from '../support/upload.ts';
import { plotDrawn, scrollsSideways, type WatchedPage, watchedPage } from '../support/watched-page.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let browser: Browser;
let server: TestServer;
let watched: WatchedPage;
const ids: string[] = [];

beforeAll(async () => {
  server = await testServer({ webFolder: await builtPages() });
  for (const scenario of ['iced-end', 'iced-end', 'suction-rise']) {
    const response = await upload(server.base, sampleParts(scenario));
    const { id } = (await response.json()) as { id: string };
    expect((await eventsOf(server.base, id)).at(-1)!.name).toBe('ready');
    ids.push(id);
  }
  browser = await launchChromium();
}, 180_000);
afterAll(async () => {
  await browser.close();
  await server.close();
});
beforeEach(async () => {
  watched = await watchedPage(browser, server.base, { viewport: { width: 1280, height: 900 } });
});
afterEach(async () => {
  expect(watched.outside).toEqual([]);
  await watched.close();
});

async function axeViolations(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    for (const details of document.querySelectorAll('details')) details.open = true;
    const { axe } = globalThis as unknown as { axe: typeof import('axe-core') };
    const { violations } = await axe.run(document, { rules: { 'color-contrast': { enabled: true } } });
    return violations.map((each) => `${each.id}: ${each.nodes.map(({ html }) => html.slice(0, 120))}`);
  });
}

const repair = (time: string): string =>
  `/#/exports/${ids[0]}/circuits/M01/repair?serviced=${encodeURIComponent(time)}`;
const compare = (other = 1): string => `/#/exports/${ids[0]}/compare/${ids[other]}`;

describe('Did the repair hold', () => {
  test('is reached from the circuit, asked by the keyboard alone, and answered in the words of the reports', async () => {
    const { page } = watched;
    await page.goto(`/#/exports/${ids[0]}/circuits/M01`);
    await plotDrawn(page);
    await page.getByRole('link', { name: 'Did a repair hold?' }).press('Enter');
    await page.getByLabel('Serviced', { exact: true }).fill('2026-09-22T10:00');
    await page.getByLabel('Serviced', { exact: true }).press('Enter');
    await page.getByRole('heading', { name: 'Before and after' }).waitFor({ timeout: 60_000 });
    expect(page.url()).toContain('serviced=2026-09-22T10');
    expect(await page.locator('.verdict').textContent()).toMatch(
      /Unchanged: .* is no better, and has got worse since the service/,
    );
    expect(await page.locator('.answered').textContent()).toContain('Everything back on:');
    const change = page.locator('.worded tbody tr').first().locator('td').nth(3);
    expect(await change.textContent()).toMatch(/ \(.*\sto\s.*\)$/);
    await page.getByRole('link', { name: 'These days on the plot' }).click();
    await plotDrawn(page);
    expect(page.url()).toMatch(/from=2026-09-(19|2\d)/);
    expect(watched.complaints).toEqual([]);
  });

  test('a time outside the export is refused by name, with the way out', async () => {
    const { page } = watched;
    await page.goto(repair('2020-01-01T10:00'));
    const alert = page.getByRole('alert');
    await alert.waitFor({ timeout: 60_000 });
    expect(await alert.textContent()).toMatch(/2020-01-01T10:00 lies outside the export, which runs from/);
  });
});

describe('Two exports', () => {
  test('are compared from the page of the site; nothing changed between twins', async () => {
    const { page } = watched;
    await page.goto(`/#/exports/${ids[0]}`);
    await page.getByRole('link', { name: 'This export with another' }).click();
    const choices = await page.getByLabel('With').locator('option').allTextContents();
    expect(choices).toHaveLength(2);
    expect(choices[0]).toMatch(/^Quillan Row Foods, 2026-09-01 to 2026-09-30$/);
    await page.getByRole('button', { name: 'Compare' }).press('Enter');
    await page.getByText('Nothing changed by more than it does from day to day').waitFor({ timeout: 60_000 });
    expect(await page.locator('.answered').textContent()).toContain('The two spans overlap');
    expect(watched.complaints).toEqual([]);
  });

  test('of two stores show what differs, each place leading to its own page', async () => {
    const { page } = watched;
    await page.goto(compare(2));
    const place = page.locator('.compared h3 a').first();
    await place.waitFor({ timeout: 60_000 });
    expect(await page.locator('.compared .lead').textContent()).toContain(
      'By their names these are two sites',
    );
    expect(await place.getAttribute('href')).toMatch(new RegExp(`^#/exports/${ids[0]}/(circuits|groups)/`));
    expect(await page.locator('.compared .worded').count()).toBeGreaterThan(0);
  });
});

describe.each([
  ['light', 1280],
  ['dark', 1280],
  ['light', 390],
] as const)('In %s at %i pixels', (colorScheme, width) => {
  test('axe finds nothing on the answers, and they never scroll sideways', async () => {
    const own = await watchedPage(browser, server.base, { colorScheme, viewport: { width, height: 844 } });
    for (const address of [repair('2026-09-22T10:00'), compare(2)]) {
      await own.page.goto(address);
      await own.page.locator('.work:not([aria-busy]) section').first().waitFor({ timeout: 60_000 });
      expect(await axeViolations(own.page)).toEqual([]);
      expect(await scrollsSideways(own.page)).toBe(false);
    }
    expect(own.complaints).toEqual([]);
    await own.close();
  });
});

test('a circuit that goes with its rack leads to the rack, and is not said to be without a finding', async () => {
  const { page } = watched;
  await page.goto(`/#/exports/${ids[2]}`);
  const covered = page.locator('.circuits tr', { hasText: 'M01' });
  await covered.getByRole('link', { name: 'with suction group S1' }).click();
  await page.getByRole('heading', { level: 1, name: 'Suction group S1' }).waitFor({ timeout: 60_000 });
  expect(watched.complaints).toEqual([]);
});

test('a rack at the head of the list shows its suction, a day at a time, against its target', async () => {
  const { page } = watched;
  await page.goto(`/#/exports/${ids[2]}`);
  const picture = page.locator('.place').first().locator('.spark');
  expect(await picture.getByRole('img').getAttribute('aria-label')).toMatch(
    /^Daily suction, ending at S1 suction \d+\.\d psig$/,
  );
  expect(await picture.textContent()).toMatch(/^\d+\.\d to \d+\.\d psigsuction, a median a day$/);
  expect(await picture.locator('path.set').getAttribute('d')).not.toBe('');
  expect(await axeViolations(page)).toEqual([]);
});

test('the list at home puts the store that needs somebody first, by the keyboard, and says why', async () => {
  const { page } = watched;
  await page.goto('/');
  const order = page.getByLabel('Order');
  await order.selectOption('worst');
  const rows = page.locator('.exports li');
  expect(await rows.count()).toBe(3);
  expect(await rows.first().locator('.first-stop').textContent()).toMatch(/^▲ M01 Produce line-up: /);
  // Two exports of one store: the earlier one is old news, and comes last.
  const ends = await rows.locator('a').evaluateAll((links) => links.map((link) => link.getAttribute('href')));
  expect(ends.map((href) => ids.findIndex((id) => href!.includes(id)))).toEqual([1, 2, 0]);
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('order');
  expect(await axeViolations(page)).toEqual([]);
  expect(watched.complaints).toEqual([]);
});

test('on paper the answers are not cut and the form is left out', async () => {
  const { page } = watched;
  await page.setViewportSize({ width: 688, height: 1000 });
  for (const address of [repair('2026-09-22T10:00'), compare(2)]) {
    await page.goto(address);
    await page.locator('.work:not([aria-busy]) section').first().waitFor({ timeout: 60_000 });
    await page.emulateMedia({ media: 'print' });
    const widest = await page
      .locator('.worded')
      .evaluateAll((tables) => Math.max(...tables.map((table) => table.getBoundingClientRect().right)));
    expect(widest).toBeLessThanOrEqual(688);
    expect(await page.locator('.ask').isVisible()).toBe(false);
    await page.emulateMedia({ media: 'screen' });
  }
});

test('a month shows how far it is and gives way to its report', async () => {
  const { page } = watched;
  await page.goto(`/#/exports/${ids[0]}/months/2026-09`);
  await page.getByRole('heading', { name: 'September 2026' }).waitFor();
  await page.waitForURL(/\/api\/v1\/exports\/\w+\/months\/2026-09$/, { timeout: 60_000 });
  expect(await page.locator('body').textContent()).toContain('The month in refrigeration');
  await page.goto(`/#/exports/${ids[0]}`);
  await page.getByRole('link', { name: /^The month of September 2026/ }).waitFor();
  expect(await page.getByRole('link', { name: /^All days of the export/ }).count()).toBe(0);
  await page.goto(`/#/exports/${ids[0]}/months/1999-01`);
  await page.getByRole('alert').waitFor({ timeout: 60_000 });
  expect(await page.getByRole('link', { name: 'Back to' }).count()).toBe(1);
});

test('an export that is no whole month has the report of all its days', async () => {
  const { page } = watched;
  await page.goto(`/#/exports/${ids[2]}`);
  await page.getByRole('link', { name: 'All days of the export: tables and plots' }).waitFor();
  await page.goto(`/#/exports/${ids[2]}/months/all`);
  await page.waitForURL(/api.*\/months\/all$/, { timeout: 60_000 });
  expect(await page.locator('body').textContent()).toContain('All days of the export');
});

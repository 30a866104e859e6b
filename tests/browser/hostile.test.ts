import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { builtPages } from '../support/built-pages.ts';
import { launchChromium } from '../support/chromium.ts';
import { analysedFixture, hostileNames } from '../support/fixture-site.ts';
import { storeAnalysed, type TestServer, temporaryFolder, testServer } from '../support/test-server.ts';
import { plotDrawn, scrollsSideways, watchedPage } from '../support/watched-page.ts';

let browser: Browser;
let server: TestServer;

beforeAll(async () => {
  const dataFolder = await temporaryFolder();
  await storeAnalysed(dataFolder, analysedFixture({ hostile: true }));
  server = await testServer({ dataFolder, webFolder: await builtPages() });
  browser = await launchChromium();
});
afterAll(async () => {
  await browser.close();
  await server.close();
});

const seen = (text: string): string => text.replace('\u202e', '\ufffd');

test('names from an export that are markup, paths or formulas show as text and do nothing', async () => {
  const { page, outside, complaints, close } = await watchedPage(browser, server.base, {
    viewport: { width: 390, height: 844 },
  });
  await page.goto('/');
  await page.getByRole('link', { name: seen(hostileNames.site) }).click();
  await page.getByRole('heading', { name: 'Worst first' }).waitFor();
  expect(await page.locator('h1').textContent()).toBe(seen(hostileNames.site));
  expect(await page.locator('main').textContent()).toContain(hostileNames.probe);
  expect(await scrollsSideways(page)).toBe(false);

  await page.locator('.place h3 a').first().click();
  await plotDrawn(page);
  expect(await page.locator('h1').textContent()).toContain(hostileNames.circuit);
  expect(await page.locator('.legend').textContent()).toContain(hostileNames.probe);
  expect(await scrollsSideways(page)).toBe(false);

  await page.setViewportSize({ width: 1600, height: 1000 });
  await page.locator('.plot text', { hasText: '"><svg' }).first().waitFor();
  await page.mouse.move(700, 420);
  await page.locator('.plot .hoverlayer text').first().waitFor();
  expect(await page.locator('main script, main img, main svg script, .plot svg svg[onload]').count()).toBe(0);
  expect(await page.evaluate(() => 'harmed' in globalThis)).toBe(false);
  expect(complaints).toEqual([]);
  expect(outside).toEqual([]);
  await close();
});

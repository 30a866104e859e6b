import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { builtPages } from '../support/built-pages.ts';
import { launchChromium } from '../support/chromium.ts';
import { analysedFixture } from '../support/fixture-site.ts';
import {
  storeAnalysed,
  storeState,
  type TestServer,
  temporaryFolder,
  testServer,
} from '../support/test-server.ts';
import { plotDrawn, scrollsSideways, type WatchedPage, watchedPage } from '../support/watched-page.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let browser: Browser;
let server: TestServer;
const addresses: Record<string, string> = { home: '/#/' };

beforeAll(async () => {
  const dataFolder = await temporaryFolder();
  const ready = await storeAnalysed(dataFolder, analysedFixture());
  const other = await storeAnalysed(dataFolder, analysedFixture());
  const problem = { code: 'not-text', message: 'photo.csv is a PNG image; choose the export.', remedy: '' };
  const failed = await storeState(dataFolder, { state: 'failed', problem });
  addresses['site'] = `/#/exports/${ready}`;
  addresses['circuit'] = `/#/exports/${ready}/circuits/M01`;
  addresses['quiet circuit'] = `/#/exports/${ready}/circuits/M04`;
  addresses['group'] = `/#/exports/${ready}/groups/S1`;
  addresses['repair form'] = `/#/exports/${ready}/circuits/M01/repair`;
  addresses['compare form'] = `/#/exports/${other}/compare`;
  addresses['failed'] = `/#/exports/${failed}`;
  server = await testServer({ dataFolder, webFolder: await builtPages() });
  browser = await launchChromium();
});
afterAll(async () => {
  await browser.close();
  await server.close();
});

/** Goes there within the page that is open, so that the plot's code is loaded once. */
async function open(page: Page, name: string): Promise<void> {
  await page.evaluate(() => document.querySelector('h1')?.remove()).catch(() => undefined);
  if (page.url().endsWith(addresses[name]!)) await page.reload();
  else await page.goto(addresses[name]!);
  await page.locator('h1').waitFor();
  if (/circuit|group/.test(name)) await plotDrawn(page);
}

const pages = [
  ...['home', 'site', 'circuit', 'quiet circuit', 'group'],
  ...['repair form', 'compare form', 'failed'],
];

describe.each(['light', 'dark'] as const)('In %s', (colorScheme) => {
  let watched: WatchedPage;
  beforeAll(async () => {
    watched = await watchedPage(browser, server.base, { colorScheme });
    await watched.page.goto('/');
    await watched.page.evaluate(axe);
  });
  afterAll(() => watched.close());

  test.each(pages)(
    'axe finds nothing on the page %s, contrast included, everything unfolded',
    async (name) => {
      const { page, complaints } = watched;
      await open(page, name);
      const violations = await page.evaluate(async () => {
        for (const details of document.querySelectorAll('details')) details.open = true;
        const { axe } = globalThis as unknown as { axe: typeof import('axe-core') };
        const { violations } = await axe.run(document, { rules: { 'color-contrast': { enabled: true } } });
        return violations.map(
          ({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`,
        );
      });
      expect(violations).toEqual([]);
      expect(complaints).toEqual([]);
    },
  );
});

describe.each([390, 320])('At %i pixels', (width) => {
  test('no page scrolls sideways', async () => {
    const phone = { viewport: { width, height: 844 }, isMobile: true, hasTouch: true };
    const { page, close } = await watchedPage(browser, server.base, phone);
    for (const name of pages) {
      await open(page, name);
      expect(await scrollsSideways(page), name).toBe(false);
    }
    await close();
  });
});

describe('With one page', () => {
  let page: Page;
  let close: () => Promise<void>;
  beforeAll(async () => {
    ({ page, close } = await watchedPage(browser, server.base));
  });
  afterAll(() => close());

  test('the keyboard alone leads from the first key to a finding', async () => {
    await page.goto('/');
    await page.locator('h1').waitFor();
    const focused = (): Promise<string> =>
      page.evaluate(() => {
        const { activeElement } = document;
        const label =
          activeElement instanceof HTMLInputElement ? activeElement.labels?.[0]?.textContent : null;
        return label ?? activeElement?.textContent ?? '';
      });
    const seen: string[] = [];
    for (let step = 0; step < 8; step++) {
      await page.keyboard.press('Tab');
      seen.push(await focused());
    }
    expect(seen[0]).toBe('Skip to the content');
    expect(seen).toContain('Drop exports here, or choose them');
    expect(seen).toContain('I have a site file that says what the columns are');
    await page.getByRole('link', { name: 'Simulated store' }).first().focus();
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Worst first' }).waitFor();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('main');
    await page.locator('.place h3 a').first().focus();
    await page.keyboard.press('Enter');
    await plotDrawn(page);
  });

  test('arrow keys turn from circuit to circuit, but not inside a control', async () => {
    await open(page, 'circuit');
    await page.keyboard.press('ArrowRight');
    await page.waitForURL(/circuits\/M02/);
    await page.getByRole('heading', { level: 1, name: 'M02' }).waitFor();
    await plotDrawn(page);
    await page.keyboard.press('ArrowLeft');
    await page.waitForURL(/circuits\/M01/);
    await page.getByRole('heading', { level: 1, name: 'M01' }).waitFor();
    await plotDrawn(page);
    await page.getByLabel('Show', { exact: true }).focus();
    await page.keyboard.press('ArrowRight');
    expect(page.url()).toContain('circuits/M01');
  });

  test('zoom and shift of the plot have buttons', async () => {
    await open(page, 'circuit');
    const text = (): Promise<string | null> => page.locator('.span-text').textContent();
    const whole = await text();
    for (const name of ['Zoom in', 'Earlier', 'Later', 'Zoom out', 'Show the days around the onset']) {
      const before = await text();
      await page.getByRole('button', { name }).focus();
      await page.keyboard.press('Enter');
      await page.waitForFunction((old) => document.querySelector('.span-text')?.textContent !== old, before);
      await plotDrawn(page);
    }
    await page.getByLabel('Show', { exact: true }).selectOption('every reading');
    await page.waitForURL(/view=all/);
    await page.reload();
    await plotDrawn(page);
    expect(await page.getByLabel('Show', { exact: true }).inputValue()).toBe('all');
    await page.getByLabel('Show', { exact: true }).selectOption('by the span');
    await page.getByRole('button', { name: 'Show the whole span' }).press('Enter');
    await page.waitForFunction((old) => document.querySelector('.span-text')?.textContent === old, whole);
  });

  test('the plot has its numbers as a table', async () => {
    await open(page, 'circuit');
    await page.getByText('The same as a table').click();
    expect(await page.locator('.numbers tbody tr').count()).toBe(12);
    expect(await page.locator('.numbers tbody tr').first().locator('td').first().textContent()).toMatch(
      /^\d+\.\d$/,
    );
  });

  test('no line is known by its colour alone', async () => {
    await open(page, 'circuit');
    const inAirPanel = page.locator('.legend li', { hasNotText: 'suction' }).locator('line');
    const dashes = await inAirPanel.evaluateAll((lines) =>
      lines.map((line) => line.getAttribute('stroke-dasharray')),
    );
    expect(dashes.length).toBeGreaterThan(3);
    expect(new Set(dashes).size).toBe(dashes.length);
    expect(await page.locator('.plot').textContent()).toContain('M01 air A');
  });
});

test('on paper the plot fits, the cautions are open and the colours are the light ones', async () => {
  const { page, close } = await watchedPage(browser, server.base, {
    colorScheme: 'dark',
    viewport: { width: 1600, height: 1000 },
  });
  await open(page, 'circuit');
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  await page.waitForFunction(
    () => Number(document.querySelector('.plot .main-svg')?.getAttribute('width')) <= 690,
  );
  const ink = await page.evaluate(() =>
    getComputedStyle(document.documentElement).getPropertyValue('--card'),
  );
  expect(ink.trim()).toMatch(/^#fff(fff)?$/);
  await page.evaluate(() => dispatchEvent(new Event('afterprint')));
  await open(page, 'site');
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  expect(await page.locator('details.care:not([open])').count()).toBe(0);
  await close();
});

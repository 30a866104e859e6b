import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { htmlReport } from '../../src/reporting/html-report.ts';
import { troubledExample } from '../reporting/support/example.ts';
import { launchChromium } from '../support/chromium.ts';

const folder = mkdtempSync(join(tmpdir(), 'rimelog-report-'));
const address = pathToFileURL(join(folder, 'report.html')).href;
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
let browser: Browser;

beforeAll(async () => {
  writeFileSync(join(folder, 'report.html'), htmlReport(troubledExample()));
  browser = await launchChromium();
});
afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

async function open(width: number, options: Parameters<Browser['newPage']>[0] = {}): Promise<Page> {
  const page = await browser.newPage({ viewport: { width, height: 900 }, ...options });
  await page.goto(address);
  return page;
}

async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
    };
    const found = await axe.run();
    return found.violations.map(
      ({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`,
    );
  });
}

describe('the one-file report in a browser', () => {
  test.each([
    ['a phone', 390, 'light'],
    ['a desk', 1280, 'light'],
    ['a desk in the dark', 1280, 'dark'],
  ] as const)('passes axe on %s', async (_, width, colorScheme) => {
    const page = await open(width, { colorScheme });
    for (const details of await page.$$('details'))
      await details.evaluate((each) => each.setAttribute('open', ''));
    expect(await violations(page)).toEqual([]);
    await page.close();
  });

  test.each([320, 390, 768, 1600])('never scrolls sideways at %i px', async (width) => {
    const page = await open(width);
    const spare = await page.evaluate(() => innerWidth - document.documentElement.scrollWidth);
    expect(spare).toBeGreaterThanOrEqual(0);
    await page.close();
  });

  test('asks the network for nothing and breaks no policy of its own, with scripts off', async () => {
    const page = await browser.newPage({ javaScriptEnabled: false });
    const requests: string[] = [];
    const complaints: string[] = [];
    page.on('request', (request) => requests.push(request.url()));
    page.on('console', (message) => complaints.push(message.text()));
    await page.goto(address);
    await page.getByText('The plot as a table').first().click();
    expect(await page.getByRole('row', { name: '2026-09-10' }).first().isVisible()).toBe(true);
    expect(requests).toEqual([address]);
    expect(complaints).toEqual([]);
    await page.close();
  });

  test('draws every line of a chart inside its panel, over the whole width', async () => {
    const page = await open(1280);
    const sizes = await page.$$eval('.chart .row .plot > svg', (plots) =>
      plots.map((plot) => {
        const frame = plot.getBoundingClientRect();
        const lines = [...plot.querySelectorAll('.line')].map((line) => line.getBoundingClientRect());
        return lines.map((line) => ({
          above: frame.top - line.top,
          below: line.bottom - frame.bottom,
          share: line.width / frame.width,
        }));
      }),
    );
    expect(sizes.flat().length).toBeGreaterThanOrEqual(8);
    for (const { above, below, share } of sizes.flat()) {
      expect(above).toBeLessThanOrEqual(1);
      expect(below).toBeLessThanOrEqual(1);
      expect(share).toBeGreaterThan(0.9);
    }
    await page.close();
  });

  test.each(['A4', 'Letter'] as const)('prints on %s in light colours without a cut plot', async (format) => {
    const page = await open(1280, { colorScheme: 'dark' });
    const pdf = await page.pdf({ format });
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    await page.emulateMedia({ media: 'print' });
    const printed = await page.evaluate(() => ({
      paper: getComputedStyle(document.documentElement).getPropertyValue('--card'),
      breaks: [...document.querySelectorAll('.chart')].map((chart) => getComputedStyle(chart).breakInside),
    }));
    expect(printed.paper.trim()).toBe('#ffffff');
    expect(new Set(printed.breaks)).toEqual(new Set(['avoid']));
    await page.close();
  });
});

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Finding } from '../../src/model/finding.ts';
import type { Log } from '../../src/model/log.ts';
import { auditReport } from '../../src/reporting/audit/audit-report.ts';
import { visitPage } from '../../src/reporting/visit/visit-page.ts';
import { visitSheet } from '../../src/visit/visit-sheet.ts';
import { auditOf } from '../audit/support.ts';
import { exampleOf, finding, troubledExample } from '../reporting/support/example.ts';
import { launchChromium } from '../support/chromium.ts';
import { axeViolations, pageFile, sheetsOf } from '../support/opened-page.ts';

/** Every circuit in trouble, and the rack: more than any sheet should have to hold. */
function everywhere(log: Log): readonly Finding[] {
  const stops = log.circuits.map(({ id, probes }) =>
    finding(log, { id, circuit: id, probe: probes[0]!.point, severity: 'watch' }),
  );
  const rack = finding(log, {
    id: 'rack',
    circuit: null,
    probe: null,
    kind: 'rack-pressure',
    origin: 'rack',
  });
  return [
    ...stops,
    ...stops.map((one) => ({ ...one, id: `${one.id} again`, kind: 'superheat' as const })),
    rack,
  ];
}

const crowded = exampleOf(everywhere);
const pages: { readonly [name: string]: Promise<string> } = {
  'the visit sheet': Promise.resolve(visitPage(visitSheet(crowded.signals, crowded.diagnosis), crowded)),
  'the report of the month': (async () => {
    const example = troubledExample();
    return auditReport(await auditOf(example.log, null, example.diagnosis), example.report);
  })(),
};
const names = Object.keys(pages);
const addresses = new Map<string, string>();
let browser: Browser;

beforeAll(async () => {
  for (const name of names) addresses.set(name, pageFile(await pages[name]!));
  browser = await launchChromium();
});
afterAll(async () => browser?.close());

async function open(name: string, options: Parameters<Browser['newPage']>[0] = {}): Promise<Page> {
  const page = await browser.newPage(options);
  await page.goto(addresses.get(name)!);
  return page;
}

describe.each(names)('%s', (name) => {
  test.each([
    ['a phone', 390, 'light'],
    ['a desk', 1280, 'light'],
    ['a desk in the dark', 1280, 'dark'],
  ] as const)('passes axe on %s and never scrolls sideways', async (_, width, colorScheme) => {
    const page = await open(name, { viewport: { width, height: 900 }, colorScheme });
    expect(await axeViolations(page)).toEqual([]);
    const spare = await page.evaluate(() => innerWidth - document.documentElement.scrollWidth);
    expect(spare).toBeGreaterThanOrEqual(0);
    await page.close();
  });

  test('runs no script and asks the network for nothing', async () => {
    const page = await browser.newPage({ javaScriptEnabled: false });
    const requests: string[] = [];
    const complaints: string[] = [];
    page.on('request', (request) => requests.push(request.url()));
    page.on('console', (message) => complaints.push(message.text()));
    await page.goto(addresses.get(name)!);
    expect({ requests, complaints }).toEqual({ requests: [addresses.get(name)], complaints: [] });
    await page.close();
  });

  /** Printable widths with the margins of the style sheets, at 96 px an inch. */
  test.each([
    ['A4', 688],
    ['Letter', 710],
  ] as const)('prints on %s with nothing cut off', async (_, width) => {
    const page = await open(name, { viewport: { width, height: 1000 } });
    await page.emulateMedia({ media: 'print' });
    const cut = await page.evaluate(
      (limit) =>
        [...document.querySelectorAll('table, figure, section, p, li')]
          .filter((each) => each.getBoundingClientRect().right > limit + 1)
          .map((each) => each.outerHTML.slice(0, 90)),
      width,
    );
    expect(cut).toEqual([]);
    const splits = await page.evaluate(() =>
      [...document.querySelectorAll('figure')].map((each) => getComputedStyle(each).breakInside),
    );
    expect(new Set(splits).size === 0 || [...new Set(splits)].join() === 'avoid').toBe(true);
    await page.close();
  });
});

test.each(['A4', 'Letter'])(
  'the visit sheet is one sheet of %s, however much stands on it',
  async (format) => {
    const page = await open('the visit sheet');
    expect(sheetsOf(await page.pdf({ format }))).toBe(1);
    await page.close();
  },
);

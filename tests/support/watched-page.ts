import type { Browser, BrowserContextOptions, Page } from 'playwright-core';

export interface WatchedPage {
  readonly page: Page;
  /** Requests to anywhere but the server. */
  readonly outside: readonly string[];
  /** Errors, warnings and refusals of the content security policy. */
  readonly complaints: readonly string[];
  /** Paths with their query that were asked of the server. */
  readonly asked: readonly string[];
  close(): Promise<void>;
}

/** A page in a context of its own, of which everything that should not happen is written down. */
export async function watchedPage(
  browser: Browser,
  base: string,
  options: BrowserContextOptions = {},
): Promise<WatchedPage> {
  const context = await browser.newContext({
    baseURL: base,
    locale: 'en-US',
    timezoneId: 'Europe/Paris',
    ...options,
  });
  const page = await context.newPage();
  const outside: string[] = [];
  const complaints: string[] = [];
  const asked: string[] = [];
  page.on('request', (request) => {
    const { origin, pathname, search, protocol } = new URL(request.url());
    if (protocol === 'data:') return;
    if (origin === base) asked.push(pathname + search);
    else outside.push(request.url());
  });
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.addInitScript(() => {
    addEventListener('securitypolicyviolation', (event) => {
      console.error(`content security policy: ${event.violatedDirective} ${event.blockedURI}`);
    });
  });
  return { page, outside, complaints, asked, close: () => context.close() };
}

/** True when the page can be scrolled sideways. */
export function scrollsSideways(page: Page): Promise<boolean> {
  return page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth);
}

/** Waits until the plot stands and asks for nothing more. */
export async function plotDrawn(page: Page): Promise<void> {
  await page.locator('.plot .main-svg').first().waitFor();
  await page.locator('.plot:not([aria-busy])').waitFor();
}
